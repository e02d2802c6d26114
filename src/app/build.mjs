// Builds everything that runs: app and service worker into dist/, server and command line into build/.
import { build as bundle } from 'esbuild';
import { existsSync } from 'node:fs';
import { chmod, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { build as buildPages } from 'vite';
import { buildId } from './build-id.mjs';
import { compress } from './compress.mjs';
import { root } from './install.mjs';
import { precacheInto } from './precache.mjs';

// A second folder and label let a test build "the next version" beside this one.
const dist = process.env.APP_DIR || join(root, 'dist');
const id = (await buildId()) + (process.env.BUILD_LABEL ?? '');
const define = { __BUILD_ID__: JSON.stringify(id) };

await buildPages({
  configFile: join(root, 'src/app/vite.config.ts'),
  logLevel: 'warn',
  define,
  build: { outDir: dist, emptyOutDir: true },
});
await browserScript('src/app/boot.ts', join(dist, 'boot.js'));
const worker = join(root, `build/sw${process.env.BUILD_LABEL ?? ''}.js`);
await browserScript('service-worker/sw.ts', worker);
const precached = await precacheInto(dist, worker);
await compress(dist);
await nodeProgram('src/server/main.ts', 'build/server.js', { packages: 'external' });
await nodeProgram('src/cli/main.ts', 'build/cli.js', { banner: { js: '#!/usr/bin/env node' } });
console.log(`built ${id}: ${precached.count} files precached, ${precached.size} bytes`);

function browserScript(from, to) {
  const options = {
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    logLevel: 'warning',
    define,
  };
  return bundle({ ...options, entryPoints: [join(root, from)], outfile: to }).then(refuseWarnings);
}

async function nodeProgram(from, to, options) {
  if (!existsSync(join(root, from))) return;
  const common = { bundle: true, platform: 'node', format: 'esm', target: 'node20', logLevel: 'warning' };
  const version = JSON.parse(await readFile(join(root, 'package.json'), 'utf8')).version;
  const outfile = join(root, to);
  await bundle({
    ...common,
    ...options,
    entryPoints: [join(root, from)],
    outfile,
    define: { ...define, __VERSION__: JSON.stringify(version) },
  }).then(refuseWarnings);
  await chmod(outfile, 0o755);
}

function refuseWarnings({ warnings }) {
  if (warnings.length > 0) throw new Error('the bundler warned: see above');
}
