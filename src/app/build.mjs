// Builds everything that runs: app and service worker into dist/, server and command line into build/.
import { build as bundle } from 'esbuild';
import { appendFile, chmod, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { build as buildPages, createLogger } from 'vite';
import { buildId } from './build-id.mjs';
import { compress } from './compress.mjs';
import { root } from './install.mjs';
import { precacheInto } from './precache.mjs';

// A folder and a label of its own let a test build "the next version" of the app beside this one.
const beside = process.env.APP_DIR;
const dist = beside || join(root, 'dist');
const id = (await buildId()) + (process.env.BUILD_LABEL ?? '');
const define = { __BUILD_ID__: JSON.stringify(id) };

const logger = createLogger('warn');
await buildPages({
  configFile: join(root, 'src/app/vite.config.ts'),
  logLevel: 'warn',
  customLogger: logger,
  define,
  build: { outDir: dist, emptyOutDir: true },
});
if (logger.hasWarned) throw new Error('the page build warned: see above');
await browserScript('src/app/boot.ts', join(dist, 'boot.js'));
const worker = join(root, `build/sw${process.env.BUILD_LABEL ?? ''}.js`);
await browserScript('service-worker/sw.ts', worker);
// The page build lists the licences of what it bundles; Workbox is bundled into the worker alone.
const workboxLicence = await readFile(join(root, 'node_modules/workbox-core/LICENSE'), 'utf8');
await appendFile(join(dist, 'licenses.txt'), `\n## workbox (MIT)\n\n${workboxLicence}`);
// The font of the PDF is an asset, and no code that the page build would see.
const fontLicence = await readFile(join(root, 'src/app/reporting/report-font-licence.txt'), 'utf8');
await appendFile(join(dist, 'licenses.txt'), `\n## DejaVu Sans Condensed, a part of it\n\n${fontLicence}`);
const precached = await precacheInto(dist, worker);
await compress(dist);
if (!beside) {
  await nodeProgram('src/server/main.ts', 'build/server.js', { packages: 'external' });
  await nodeProgram('src/cli/main.ts', 'build/cli.js', { banner: { js: '#!/usr/bin/env node' } });
}
console.log(`built ${id}: ${precached.count} files precached, ${precached.size} bytes`);

/**
 * @param {string} from
 * @param {string} to
 */
async function browserScript(from, to) {
  await bundleStrictly({
    entryPoints: [join(root, from)],
    outfile: to,
    minify: true,
    format: 'iife',
    target: 'es2022',
  });
}

/**
 * @param {string} from
 * @param {string} to
 * @param {import('esbuild').BuildOptions} options
 */
async function nodeProgram(from, to, options) {
  const outfile = join(root, to);
  await bundleStrictly({
    entryPoints: [join(root, from)],
    outfile,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    ...options,
  });
  await chmod(outfile, 0o755);
}

/** @param {import('esbuild').BuildOptions} options */
async function bundleStrictly(options) {
  const { warnings } = await bundle({ bundle: true, logLevel: 'warning', define, ...options });
  if (warnings.length > 0) throw new Error('the bundler warned: see above');
}
