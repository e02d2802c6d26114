// What a phone has to load, in brotli bytes; fails over budget. Run after a build.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';
import { root } from '../src/app/install.mjs';

const dist = join(root, 'dist');

/** @typedef {{ file: string, isEntry?: boolean, imports?: string[], css?: string[] }} Chunk */
/** @type {Record<string, Chunk>} */
const chunks = JSON.parse(readFileSync(join(dist, '.vite/manifest.json'), 'utf8'));
const assets = readdirSync(join(dist, 'assets')).map((name) => `assets/${name}`);
const scripts = [...assets.filter((name) => name.endsWith('.js')), 'boot.js'];
const styles = assets.filter((name) => name.endsWith('.css'));

// A file that only asks for one of these is named after its screen, and goes with it.
/** @type {Record<string, string[]>} */
const entries = {
  charging: ['charge-screen'],
  'book-screens': ['book-shelf'],
  appraisal: ['appraisal-screen'],
  photos: ['photo-bar', 'photo-screens'],
  handover: ['hand-over', 'inbox', 'bundle'],
  options: ['hauling-screen'],
  ordering: ['order-screen', 'order-page', 'order-paper', 'order-table', 'give-order'],
};

// What is loaded when it is first asked for, each with a budget of its own.
const later = [
  { chunk: 'ahead', what: 'hours left and plan JS', limit: 35_000 },
  { chunk: 'book-screens', what: 'limit sheets and rule sets JS', limit: 20_000 },
  { chunk: 'photos', what: 'photos and measuring JS', limit: 25_000 },
  { chunk: 'shrink-worker', what: 'photo worker JS', limit: 4_000 },
  { chunk: 'sealing', what: 'seal JS', limit: 20_000 },
  { chunk: 'charging', what: 'charge list JS', limit: 15_000 },
  { chunk: 'reporting', what: 'report JS', limit: 20_000 },
  { chunk: 'appraisal', what: 'appraisal JS', limit: 15_000 },
  { chunk: 'qr', what: 'QR code JS', limit: 8_000 },
  { chunk: 'pdf', what: 'PDF JS', limit: 200_000 },
  { chunk: 'rental', what: 'rental walks and contract JS', limit: 15_000 },
  { chunk: 'handover', what: 'files for others JS', limit: 20_000 },
  { chunk: 'options', what: 'what to put on and hauling JS', limit: 30_000 },
  { chunk: 'ordering', what: 'parts to order JS', limit: 15_000 },
].map(({ chunk, what, limit }) => ({
  what,
  files: scripts.filter((name) =>
    [chunk, ...(entries[chunk] ?? [])].some((each) => name.startsWith(`assets/${each}-`)),
  ),
  limit,
}));
const asked = later.flatMap(({ files }) => files);

const budgets = [
  { what: 'first-load JS', files: ['boot.js', ...firstLoad()], limit: 40_000 },
  {
    what: 'app JS that no one has to ask for',
    files: scripts.filter((name) => !asked.includes(name)),
    limit: 90_000,
  },
  ...later,
  { what: 'PDF font', files: assets.filter((name) => name.endsWith('.ttf')), limit: 50_000 },
  { what: 'CSS', files: styles, limit: 10_000 },
  { what: 'service worker', files: ['sw.js'], limit: 12_000 },
];

for (const { what, files, limit } of budgets) {
  const bytes = files.reduce(
    (sum, file) => sum + brotliCompressSync(readFileSync(join(dist, file))).length,
    0,
  );
  const over = bytes > limit;
  console.log(`${what}: ${bytes} of ${limit} bytes${over ? ' — over budget' : ''}`);
  if (over) process.exitCode = 1;
}

/** The entries and the start of the app, with what they import without being asked. */
function firstLoad() {
  const files = new Set();
  /** @param {string} key */
  const add = (key) => {
    const chunk = chunks[key];
    if (chunk === undefined || files.has(chunk.file)) return;
    files.add(chunk.file);
    chunk.imports?.forEach(add);
  };
  for (const [key, chunk] of Object.entries(chunks)) if (chunk.isEntry || key === 'start.tsx') add(key);
  return [...files];
}
