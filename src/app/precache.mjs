import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { injectManifest } from 'workbox-build';

/**
 * Writes dist/sw.js: the bundled worker with its list of files. Each carries the hash of its bytes, so that a file
 * of another build never ends up in this build's cache. A list that would leave the app without a part is a fault.
 * @param {string} dist
 * @param {string} worker
 */
export async function precacheInto(dist, worker) {
  const { count, size, warnings } = await injectManifest({
    swSrc: worker,
    swDest: join(dist, 'sw.js'),
    globDirectory: dist,
    globPatterns: ['**/*.{html,js,css,json,svg,png,ttf,txt,webmanifest}'],
    globIgnores: ['sw.js', 'robots.txt', 'screenshots/**', '.vite/**'],
    dontCacheBustURLsMatching: /^assets\//,
    modifyURLPrefix: { '': '/' },
    manifestTransforms: [
      async (entries) => {
        const manifest = await Promise.all(
          entries.map(async (entry) => ({ ...entry, integrity: await integrityOf(join(dist, entry.url)) })),
        );
        await refuseGaps(dist, new Set(manifest.map(({ url }) => url)));
        return { manifest, warnings: [] };
      },
    ],
  });
  if (warnings.length > 0) throw new Error(warnings.join('\n'));
  return { count, size };
}

/** @param {string} path */
async function integrityOf(path) {
  return `sha384-${createHash('sha384')
    .update(await readFile(path))
    .digest('base64')}`;
}

/**
 * Everything that index.html and the install manifest name, and every script and style of the build.
 * @param {string} dist
 * @param {Set<string>} urls
 */
async function refuseGaps(dist, urls) {
  /** @type {{ file: string, css?: string[], assets?: string[] }[]} */
  const chunks = Object.values(JSON.parse(await readFile(join(dist, '.vite/manifest.json'), 'utf8')));
  /** @type {{ src: string }[]} */
  const icons = JSON.parse(await readFile(join(dist, 'manifest.webmanifest'), 'utf8')).icons;
  const page = await readFile(join(dist, 'index.html'), 'utf8');
  const needed = [
    '/index.html',
    ...chunks.flatMap(({ file, css = [], assets = [] }) =>
      [file, ...css, ...assets].map((name) => `/${name}`),
    ),
    ...icons.map(({ src }) => src),
    ...[...page.matchAll(/(?:src|href)="([^"]+)"/g)].flatMap(([, url]) => url ?? []),
  ];
  if (!needed.some((url) => url.endsWith('.css'))) throw new Error('the build has no style sheet');
  const gaps = needed.filter((url) => !urls.has(url));
  if (gaps.length > 0) throw new Error(`not in the precache list: ${gaps.join(', ')}`);
}
