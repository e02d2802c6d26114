import { chromium, expect, firefox, test as base, type BrowserContext, type Page } from '@playwright/test';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { findEngines } from '../engines.mjs';
import { browserOptions } from './browsers.ts';
import { ask, serveStorage } from './storage-page.ts';
import type { LocalOrigin } from './local-origin.ts';

const megabyte = 1024 * 1024;

type Prefs = Record<string, string | number | boolean>;

const test = base.extend<
  { profile: string; launch: (prefs?: Prefs) => Promise<BrowserContext> },
  { origin: LocalOrigin }
>({
  origin: [
    // eslint-disable-next-line no-empty-pattern -- Playwright reads the names of the fixtures out of the pattern
    async ({}, use) => {
      const origin = await serveStorage();
      await use(origin);
      await origin.close();
    },
    { scope: 'worker' },
  ],
  // eslint-disable-next-line no-empty-pattern -- as above
  profile: async ({}, use) => {
    const profile = mkdtempSync(join(tmpdir(), 'sagline-profile-'));
    await use(profile);
    rmSync(profile, { recursive: true, force: true });
  },
  /** A browser with a profile, and preferences, of this test's own. */
  launch: async ({ profile, browserName }, use) => {
    const open: BrowserContext[] = [];
    await use(async (prefs = {}) => {
      if (browserName === 'webkit') throw new Error('not an engine of ours');
      const options = browserOptions(browserName, findEngines(process.env)[browserName]?.path ?? '');
      const launched = {
        ...options.launchOptions,
        ...(options.channel !== undefined && { channel: options.channel }),
      };
      const context =
        browserName === 'chromium'
          ? await chromium.launchPersistentContext(profile, launched)
          : await firefox.launchPersistentContext(profile, { ...launched, firefoxUserPrefs: prefs });
      open.push(context);
      return context;
    });
    for (const context of open) await context.close();
  },
});

/** A page of an origin that may store about this much. */
async function smallPage(
  context: BrowserContext,
  url: string,
  browserName: string,
  bytes: number,
): Promise<Page> {
  const page = await context.newPage();
  await page.goto(url);
  if (browserName === 'chromium') {
    const devtools = await context.newCDPSession(page);
    await devtools.send('Storage.overrideQuotaForOrigin', { origin: new URL(url).origin, quotaSize: bytes });
  }
  await ask(page, 'open');
  return page;
}

// Firefox gives one origin a fifth of this, and 10 MiB at least.
const smallFirefox = { 'dom.quotaManager.temporaryStorage.fixedLimit': 51_200 };

test('[S102] on a full disk photos are refused and said so, readings go into the reserve, and saving goes on', async ({
  launch,
  origin,
  browserName,
}) => {
  const context = await launch(smallFirefox);
  const page = await smallPage(context, origin.url, browserName, 12 * megabyte);
  expect(await ask(page, 'write', 'first')).toBe('saved');
  expect(await ask(page, 'ensureReserve')).toBe('saved');
  for (const bytes of [megabyte, 64 * 1024, 4 * 1024]) {
    expect((await ask(page, 'fill', bytes)).why).toBe('quota');
    expect(await ask(page, 'status')).toBe('full');
  }
  const saved = ['limits/first'];
  const writeSome = async (count: number, length: number): Promise<string> => {
    for (let at = 0; at < count; at += 1) {
      const name = `note-${length}-${at}`;
      const said = await ask(page, 'write', name, length);
      if (said !== 'saved') return said;
      saved.push(`limits/${name}`);
    }
    return 'saved';
  };
  expect(await writeSome(40, 20_000)).toBe('saved');
  expect(await ask(page, 'draft', '13')).toBe('saved');
  // Then even that is used up: refused, and what was saved stays.
  expect(await writeSome(100, 400_000)).toBe('quota');
  expect(await ask(page, 'status')).toBe('full');
  expect([...(await ask(page, 'keys'))].sort()).toEqual([...saved].sort());
  await page.reload();
  await ask(page, 'open');
  expect([...(await ask(page, 'keys'))].sort()).toEqual([...saved].sort());
});

test('[PH11] on a full disk a photo is refused whole, and those before it are whole', async ({
  launch,
  origin,
  browserName,
}) => {
  const page = await smallPage(await launch(smallFirefox), origin.url, browserName, 12 * megabyte);
  expect(await ask(page, 'ensureReserve')).toBe('saved');
  const [why, taken, ...here] = await ask(page, 'takePhotos', 500_000);
  expect(why).toBe('quota');
  expect(taken).toBeGreaterThan(2);
  expect(here).toEqual([taken, taken, taken]);
  expect(await ask(page, 'write', 'reading')).toBe('saved');
});

/** A page with the store open on it. */
async function openedPage(context: BrowserContext, url: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(url);
  await ask(page, 'open');
  return page;
}

test('[S103] where site data is blocked, it says at once that nothing can be kept', async ({
  launch,
  origin,
  profile,
}) => {
  // Chromium: a setting of the profile. Firefox: a preference.
  mkdirSync(join(profile, 'Default'), { recursive: true });
  const blocked = { profile: { default_content_setting_values: { cookies: 2 } } };
  writeFileSync(join(profile, 'Default/Preferences'), JSON.stringify(blocked));
  const page = await openedPage(await launch({ 'network.cookie.cookieBehavior': 2 }), origin.url);
  expect(await ask(page, 'write', 'first')).toBe('denied');
  expect(await ask(page, 'status')).toBe('denied');
  expect(await ask(page, 'keys')).toEqual([]);
});

test('[S104] a private window keeps what it is given or says that it cannot', async ({
  launch,
  origin,
  browserName,
}) => {
  // Firefox as it was before it learnt to keep data in private windows; Chromium's private windows do keep it.
  const prefs = { 'browser.privatebrowsing.autostart': true, 'dom.indexedDB.privateBrowsing.enabled': false };
  const page = await openedPage(await launch(prefs), origin.url);
  const [said, status, keys] =
    browserName === 'firefox' ? ['denied', 'denied', []] : ['saved', 'open', ['limits/first']];
  expect(await ask(page, 'write', 'first')).toBe(said);
  expect(await ask(page, 'status')).toBe(status);
  expect(await ask(page, 'keys')).toEqual(keys);
});

test('[S105] a database that the browser cannot open is told, never kept in memory instead', async ({
  launch,
  origin,
  profile,
}) => {
  // A file stands where the engine wants its folder.
  const places = [join(profile, 'Default/IndexedDB'), join(profile, 'storage/default')];
  for (const place of places) {
    mkdirSync(dirname(place), { recursive: true });
    writeFileSync(place, 'not a folder');
  }
  const page = await openedPage(await launch(), origin.url);
  expect(await ask(page, 'write', 'first')).toBe('corrupt');
  expect(await ask(page, 'status')).toBe('corrupt');
  expect(await ask(page, 'keys')).toEqual([]);
  for (const place of places) rmSync(place);
  // Once it can, it does, at the next call.
  expect(await ask(page, 'write', 'first')).toBe('saved');
  expect(await ask(page, 'status')).toBe('open');
});
