import type { Page } from '@playwright/test';
import { build } from 'esbuild';
import { join } from 'node:path';
import { serveLocally, type LocalOrigin } from './local-origin.ts';
import type { StoragePage } from '../storage/page.ts';

const entry = join(import.meta.dirname, '../storage/page.ts');

/** Serves the storage room alone, with nothing of the app around it. */
export async function serveStorage(): Promise<LocalOrigin> {
  const built = await build({
    entryPoints: [entry],
    bundle: true,
    write: false,
    format: 'iife',
    logLevel: 'error',
  });
  const script = built.outputFiles[0]?.text ?? '';
  return serveLocally(({ url }, answer) => {
    const isScript = url === '/page.js';
    answer.setHeader('content-type', isScript ? 'text/javascript' : 'text/html');
    answer.end(isScript ? script : '<!doctype html><title>storage</title><script src="/page.js"></script>');
  });
}

/** Calls a function of the page by name. */
export const ask = <Name extends keyof StoragePage>(
  page: Page,
  name: Name,
  ...args: Parameters<StoragePage[Name]>
): Promise<Awaited<ReturnType<StoragePage[Name]>>> =>
  page.evaluate(
    ([wanted, given]) => {
      const here = (globalThis as unknown as { storagePage: Record<string, (...all: unknown[]) => unknown> })
        .storagePage;
      return here[wanted]?.(...given);
    },
    [name, args] as [string, unknown[]],
  ) as Promise<Awaited<ReturnType<StoragePage[Name]>>>;
