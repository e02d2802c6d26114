import type { Page } from '@playwright/test';
import { join } from 'node:path';
import { build } from 'vite';
import { securityHeaders } from '../../src/server/security-headers.ts';
import { serveLocally, type LocalOrigin } from './local-origin.ts';
import type { PhotosPage } from './photos-page.ts';

/** The page and the worker, bundled as the app is. */
async function bundled(): Promise<ReadonlyMap<string, string | Uint8Array>> {
  const built = await build({
    configFile: false,
    root: import.meta.dirname,
    logLevel: 'error',
    publicDir: false,
    worker: { format: 'es' },
    build: {
      write: false,
      modulePreload: false,
      assetsInlineLimit: 0,
      rolldownOptions: {
        input: join(import.meta.dirname, 'photos-page.ts'),
        output: { entryFileNames: 'page.js' },
      },
    },
  });
  if (!('output' in built)) throw new Error('no output');
  return new Map(
    built.output.map((file) => [`/${file.fileName}`, file.type === 'chunk' ? file.code : file.source]),
  );
}

/** Serves the photo worker and a page that calls it, under the headers of the real server. */
export async function servePhotos(): Promise<LocalOrigin> {
  const files = await bundled();
  return serveLocally(({ url = '' }, answer) => {
    const script = files.get(url);
    for (const [name, value] of Object.entries(securityHeaders(false))) answer.setHeader(name, value);
    answer.setHeader('content-type', script === undefined ? 'text/html' : 'text/javascript');
    answer.end(
      script ??
        '<!doctype html><title>photos</title><input type="file" /><script type="module" src="/page.js"></script>',
    );
  });
}

/** Calls a function of the page by name. */
export async function askPhotos<Name extends keyof PhotosPage>(
  page: Page,
  name: Name,
  ...args: Parameters<PhotosPage[Name]>
): Promise<Awaited<ReturnType<PhotosPage[Name]>>> {
  await page.waitForFunction(() => 'photosPage' in globalThis);
  const answer: unknown = await page.evaluate(
    ([wanted, given]) => {
      const here = (globalThis as unknown as { photosPage: Record<string, (...all: unknown[]) => unknown> })
        .photosPage;
      return here[wanted]?.(...given);
    },
    [name, args] as [string, unknown[]],
  );
  return answer as Awaited<ReturnType<PhotosPage[Name]>>;
}
