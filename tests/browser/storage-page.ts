import type { Page } from '@playwright/test';
import { build } from 'esbuild';
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { StoragePage } from '../storage/page.ts';

/** An origin that serves the storage room alone, with nothing of the app around it. */
export type StorageOrigin = { readonly url: string; close(): Promise<void> };

const entry = join(import.meta.dirname, '../storage/page.ts');

export async function serveStorage(): Promise<StorageOrigin> {
  const built = await build({
    entryPoints: [entry],
    bundle: true,
    write: false,
    format: 'iife',
    logLevel: 'error',
  });
  const script = built.outputFiles[0]?.text ?? '';
  const server = createServer(({ url }, answer) => {
    const isScript = url === '/page.js';
    answer.setHeader('content-type', isScript ? 'text/javascript' : 'text/html');
    answer.end(isScript ? script : '<!doctype html><title>storage</title><script src="/page.js"></script>');
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const close = async (): Promise<void> => {
    server.closeAllConnections();
    server.close();
    await once(server, 'close');
  };
  return { url: `http://localhost:${(server.address() as AddressInfo).port}/`, close };
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
