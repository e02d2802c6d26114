import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, type Page } from '@playwright/test';
import { build } from 'esbuild';
import { injectManifest } from 'workbox-build';
import { pad } from '../../src/words/en/pad.ts';
import { home } from '../../src/words/en/home.ts';
import { openProfile } from '../browser/browsers.ts';
import { keptOffline } from '../browser/fixtures.ts';
import { startOrigin } from '../browser/server.ts';
import { test } from '../browser/walk-phone.ts';

test.skip(({ browserName }) => browserName !== 'chromium', 'only Chromium can be throttled');

const throttle = 4;
// Even, so that as many digits are erased as were typed.
const rounds = 10;

/** Gloves bounce: a second tap within this time counts as the first one's echo. */
const echoMs = 460;
const median = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[times.length >> 1] ?? NaN;

async function slow(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: throttle });
}

/** Notes when a transaction that writes a store is complete. */
function watchDisk(): void {
  const done: { stores: string[]; at: number }[] = [];
  Object.assign(globalThis, { onDisk: done });
  const begin = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (this: IDBDatabase, stores, mode, options) {
    const transaction = begin.call(this, stores, mode, options);
    const names = typeof stores === 'string' ? [stores] : [...stores];
    if (mode === 'readwrite') {
      transaction.addEventListener('complete', () => done.push({ stores: names, at: performance.now() }));
    }
    return transaction;
  };
}

/** Milliseconds from a click on a button, by its name, to the completed write of a store. */
const untilWritten = (page: Page, name: string, store: string): Promise<number> =>
  page.evaluate(
    async ({ name: wanted, store: into }) => {
      const { onDisk } = globalThis as unknown as { onDisk: { stores: string[]; at: number }[] };
      const button = [...document.querySelectorAll('button')].find(
        (each) => (each.getAttribute('aria-label') ?? each.textContent) === wanted,
      );
      if (!button) throw new Error(`no button ${wanted}`);
      const start = performance.now();
      button.click();
      for (;;) {
        const hit = onDisk.find(({ stores, at }) => at >= start && stores.includes(into));
        if (hit) return hit.at - start;
        await new Promise((resolve) => setTimeout(resolve, 1));
      }
    },
    { name, store },
  );

/** The floor: an empty record put in a strict transaction of a database of its own. */
const emptyWrites = (page: Page): Promise<readonly number[]> =>
  page.evaluate(async (count) => {
    const open = indexedDB.open('floor', 1);
    open.addEventListener('upgradeneeded', () => open.result.createObjectStore('empty'));
    await new Promise((resolve) => open.addEventListener('success', resolve));
    const times: number[] = [];
    for (let i = 0; i < count; i += 1) {
      const start = performance.now();
      const transaction = open.result.transaction('empty', 'readwrite', { durability: 'strict' });
      transaction.objectStore('empty').put({}, i);
      await new Promise((resolve) => transaction.addEventListener('complete', resolve));
      times.push(performance.now() - start);
    }
    return times;
  }, rounds);

test('[BE2] the pad writes in a few empty writes, on a slow phone', async ({ walker }) => {
  const { page } = walker;
  await page.addInitScript(watchDisk);
  await page.reload();
  await walker.addMachine('Bench', 'excavator', 'rubber-cored');
  await walker.startWalk('full');
  await walker.pastCautions();
  const atSpot = (spot: string): string =>
    page.url().replace(/(\/walk\/[^/]+).*/, `$1/side-left/lug-depth/${spot}`);
  await page.goto(atSpot('s1'));
  await page.getByRole('button', { name: pad.next }).waitFor();
  await slow(page);
  const floor = median(await emptyWrites(page));
  const keys: number[] = [];
  for (let i = 0; i < rounds; i += 1) {
    keys.push(await untilWritten(page, i % 2 === 0 ? pad.digit('1') : pad.erase, 'drafts'));
    await page.waitForTimeout(echoMs);
  }
  const saves: number[] = [];
  for (const spot of ['s1', 's2', 's3']) {
    await page.goto(atSpot(spot));
    await page.getByRole('button', { name: pad.digit('1'), exact: true }).click();
    await page.getByRole('button', { name: pad.digit('5'), exact: true }).click();
    await page.waitForTimeout(echoMs);
    saves.push(await untilWritten(page, pad.next, 'versions'));
  }
  const [key, save] = [median(keys) / floor, median(saves) / floor];
  console.log(
    `keystroke to draft on disk: ${key.toFixed(1)} × an empty strict write (${floor.toFixed(1)} ms), ${throttle}× slower`,
  );
  console.log(`Next to saved on disk: ${save.toFixed(1)} × the same`);
  expect(key).toBeLessThan(20);
  expect(save).toBeLessThan(60);
});

/** An empty page drawn by Preact and served offline by the same worker. */
async function emptyApp(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'sagline-empty-'));
  await mkdir(join(folder, 'assets'));
  await build({
    stdin: {
      contents: `import { h, render } from 'preact'; render(h('h1', null, 'Empty'), document.getElementById('app')); const address = '/sw.js'; const types = globalThis.trustedTypes?.createPolicy('sagline-worker', { createScriptURL: () => address }); navigator.serviceWorker.register(types?.createScriptURL(address) ?? address);`,
      resolveDir: import.meta.dirname,
    },
    bundle: true,
    minify: true,
    format: 'esm',
    outfile: join(folder, 'assets/empty-00000000.js'),
  });
  const page = `<!doctype html><html lang="en"><head><title>Empty</title><script type="module" src="/assets/empty-00000000.js"></script></head><body><div id="app"></div></body></html>`;
  await writeFile(join(folder, 'index.html'), page);
  await cp(join(import.meta.dirname, '../../build/sw.js'), join(folder, 'worker.js'));
  await injectManifest({
    swSrc: join(folder, 'worker.js'),
    swDest: join(folder, 'sw.js'),
    globDirectory: folder,
    globPatterns: ['index.html', 'assets/*.js'],
    modifyURLPrefix: { '': '/' },
  });
  return folder;
}

/** Milliseconds from a fresh browser process on a warm profile to a heading, the server gone. */
async function coldStarts(appDir: string | undefined, heading: string): Promise<number> {
  const origin = await startOrigin();
  if (appDir !== undefined) await origin.start(appDir);
  const profile = await mkdtemp(join(tmpdir(), 'sagline-profile-'));
  const times: number[] = [];
  for (let i = 0; i < 4; i += 1) {
    const context = await openProfile('chromium', profile);
    const page = context.pages()[0] ?? (await context.newPage());
    if (i > 0) await slow(page);
    const start = Date.now();
    await page.goto(origin.url);
    await page.getByRole('heading', { name: heading }).waitFor();
    if (i > 0) times.push(Date.now() - start);
    else await keptOffline(page);
    await context.close();
    if (i === 0) await origin.stop();
  }
  await origin.close();
  await rm(profile, { recursive: true, force: true });
  return median(times);
}

test('[BE3] a cold start offline takes a few starts of an empty page', async () => {
  const folder = await emptyApp();
  const floor = await coldStarts(folder, 'Empty');
  const app = await coldStarts(undefined, home.machines);
  await rm(folder, { recursive: true, force: true });
  console.log(
    `cold start offline to usable: ${(app / floor).toFixed(2)} × an empty page (${floor} ms), ${throttle}× slower`,
  );
  expect(app / floor).toBeLessThan(6);
});
