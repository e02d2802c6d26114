import { expect, type Page } from '@playwright/test';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Reading } from '../../src/core/readings.ts';
import { cautionTick } from '../../src/words/en/cautions.ts';
import { common } from '../../src/words/en/common.ts';
import { pad } from '../../src/words/en/pad.ts';
import { killProfile, openProfile } from './browsers.ts';
import { keptOffline } from './fixtures.ts';
import { recordsOn, type Kept } from './walk-phone.ts';
import type { Origin } from './server.ts';
import { Walker } from './walker.ts';

/** Numbers that look random and come again with the same seed (mulberry32). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** What the person saw until the browser died. */
interface Seen {
  /** Readings after whose Next the screen said that they are saved: what was typed, by the address of the step. */
  readonly saved: Map<string, string>;
  /** Every number that was typed in full and sent off with Next, by the address of its step. */
  readonly sent: Map<string, Set<string>>;
  /** The address that was on the screen for certain. */
  url: string;
  /** What stood in the field there when a key was last seen to work. */
  typed: string;
  /** True from the tap on Next until the next screen stands: it may be either. */
  leaving: boolean;
  /** When the address came to stand, in milliseconds. */
  since: number;
}

export interface Tally {
  kills: number;
  saved: number;
  drafts: number;
  resumed: number;
}

/** What is not yet on disk may be missing this long: the place in the walk, the last key. */
const settleMs = 250;

const measuring = /\/lug-depth\/s\d$/;
const receiptOn = (page: Page) =>
  page.getByRole('main').getByRole('status').filter({ hasText: common.saved });

/** What stands for a group passed in one tap, where others have a number. */
const passed = 'passed';

/** Groups that are not looked at from the side. */
const stopOf: Readonly<Record<string, string>> = {
  idler: 'front',
  adjuster: 'front',
  sprocket: 'rear',
  motor: 'rear',
};

function sentFrom({ sent }: Seen, url: string): Set<string> {
  const here = sent.get(url) ?? new Set();
  sent.set(url, here);
  return here;
}

const heading = (page: Page) => page.getByRole('heading', { level: 1 });

/** Walks until the browser dies under it: cautions, looks, and numbers of one to three keys. */
async function walkOn(walker: Walker, seen: Seen, random: () => number): Promise<void> {
  const { page } = walker;
  for (;;) {
    await expect(heading(page)).not.toHaveText(common.loading);
    if (/^(raised|end|verdict)/.test(walker.step)) await toSomeLug(walker, seen, random);
    Object.assign(seen, { url: page.url(), typed: '', leaving: false, since: Date.now() });
    if ((await walker.button(cautionTick).count()) > 0) await walker.pastCautions();
    await sleep(random() * 300);
    if (measuring.test(page.url())) await readLug(walker, seen, random);
    else await passGroup(walker, seen);
  }
}

async function passGroup(walker: Walker, seen: Seen): Promise<void> {
  const { page } = walker;
  const url = page.url();
  sentFrom(seen, url).add(passed);
  seen.leaving = true;
  await walker.tap(walker.main);
  await expect.poll(() => page.url()).not.toBe(url);
  await expect(receiptOn(page)).toContainText(common.saved);
  seen.saved.set(url, passed);
}

/** The loop on the ground is read: some lug is read again. */
async function toSomeLug(walker: Walker, seen: Seen, random: () => number): Promise<void> {
  const side = random() < 0.5 ? 'left' : 'right';
  seen.leaving = true;
  const { page } = walker;
  await page.goto(page.url().replace(/(\/walk\/[^/]+).*/, `$1/side-${side}/lug-depth/s1`));
  await expect(heading(page)).toContainText('lug depth');
}

async function readLug(walker: Walker, seen: Seen, random: () => number): Promise<void> {
  const { page } = walker;
  const field = page.getByRole('textbox');
  while ((await field.inputValue()) !== '') await walker.button(pad.erase).click();
  const text = String(10 + Math.floor(random() * 14));
  for (const each of text) {
    await walker.button(each).click();
    seen.typed += each;
    await sleep(random() * 100);
  }
  const url = page.url();
  sentFrom(seen, url).add(text);
  seen.leaving = true;
  await walker.next();
  await expect(receiptOn(page)).toContainText(`lug depth ${text}/32 in`);
  seen.saved.set(url, text);
}

/** The readings on disk by the address of their step. */
function readIn(records: readonly Kept[], base: string): Map<string, string> {
  const read = new Map<string, string>();
  for (const { key, value } of records) {
    const lug = /^reading\/([^/]+)\/(left|right)\.track\/lug-depth\/(\d)$/.exec(key);
    const pass = /^reading\/([^/]+)\/(left|right)\.[\w-]+\/pass-([\w-]+)\/1$/.exec(key);
    const { what } = value as unknown as Reading;
    if (lug && what.kind === 'length')
      read.set(`${base}/walk/${lug[1]}/side-${lug[2]}/lug-depth/s${lug[3]}`, what.typed);
    const [, walkId, side, group = ''] = pass ?? [];
    if (pass) read.set(`${base}/walk/${walkId}/${stopOf[group] ?? 'side'}-${side}/${group}`, passed);
  }
  return read;
}

/** After each start: nothing that was shown as saved is missing, nothing half typed is scored. */
async function check(page: Page, seen: Seen, base: string, killedAt: number, tally: Tally): Promise<void> {
  const kept = readIn(await recordsOn(page), base);
  for (const [url, text] of seen.saved) {
    const now = kept.get(url);
    expect(now, `${url} was shown as saved`).toBeDefined();
    // A later number for the same lug may have reached the disk before the screen could say so.
    if (now !== text) expect(seen.sent.get(url), `${url}: ${now} stands for ${text}`).toContain(now);
    tally.saved += 1;
  }
  for (const [url, text] of kept) expect(seen.sent.get(url), `${url} holds ${text}`).toContain(text);
  await expect(page).toHaveURL(/\/walk\/[^/]+\/./);
  if (seen.leaving && page.url() !== seen.url) {
    // Next had been tapped: gone on means that what it made is on disk.
    if (seen.url !== '') expect([...kept.keys()], 'went on without saving').toContain(seen.url);
    return;
  }
  if (seen.leaving || killedAt - seen.since < settleMs) return;
  expect(page.url(), 'goes on at the step where it was').toBe(seen.url);
  tally.resumed += 1;
  const typed = seen.typed;
  if (typed === '' || !measuring.test(seen.url)) return;
  // The last key may have been on its way to the disk.
  await expect(page.getByRole('textbox')).toHaveValue(new RegExp(`^${typed}|^${typed.slice(0, -1)}$`));
  await expect(page.getByText(pad.draft)).toHaveCount(
    typed.length > 1 ? 1 : await page.getByText(pad.draft).count(),
  );
  tally.drafts += 1;
}

/** Kills the browser again and again in the middle of a walk and looks at what is left. */
export async function killAgainAndAgain(
  browserName: string,
  origin: Origin,
  kills: number,
  seed: number,
): Promise<Tally> {
  const engine = browserName === 'firefox' ? 'firefox' : 'chromium';
  const profile = await mkdtemp(join(tmpdir(), 'sagline-killed-'));
  const random = seeded(seed);
  const tally: Tally = { kills: 0, saved: 0, drafts: 0, resumed: 0 };
  const seen: Seen = { saved: new Map(), sent: new Map(), url: '', typed: '', leaving: true, since: 0 };
  // Firefox takes about twice as long over each tap of a driver: it lives twice as long, to get as far.
  const pace = engine === 'firefox' ? 2 : 1;
  let walkUrl: string | undefined;
  let killedAt = 0;
  while (tally.kills < kills) {
    const context = await openProfile(engine, profile);
    const page = context.pages()[0] ?? (await context.newPage());
    page.setDefaultTimeout(20_000);
    const walker = new Walker(page);
    if (walkUrl === undefined) {
      walkUrl = await firstVisit(walker, origin);
      await origin.stop();
    } else {
      await page.goto(walkUrl);
      await expect(heading(page)).not.toHaveText(common.loading);
      await check(page, seen, origin.url, killedAt, tally);
    }
    const closed = new Promise((resolve) => context.once('close', resolve));
    const walking = walkOn(walker, seen, random).then(
      () => undefined,
      (error: unknown) => (error instanceof Error ? error : new Error(String(error))),
    );
    const early = await Promise.race([walking, sleep(pace * (200 + random() * 1800))]);
    if (early !== undefined && !isForgotten(early)) throw early;
    killedAt = Date.now();
    await killProfile(profile);
    await Promise.all([closed, walking]);
    tally.kills += 1;
  }
  await rm(profile, { recursive: true, force: true });
  return tally;
}

/** After thousands of answers the driver may let one go that it still tells of: nothing that the page did. */
const isForgotten = ({ message }: Error): boolean => message.includes('was not bound in the connection');

async function firstVisit(walker: Walker, origin: Origin): Promise<string> {
  await walker.page.goto(origin.url);
  await keptOffline(walker.page);
  await walker.addMachine('yard 1', 'excavator', 'rubber-cored', '1700');
  await walker.startWalk('full');
  await walker.pastCautions();
  return walker.page.url().replace(/(\/walk\/[^/]+).*/, '$1');
}

export const tallyLine = (browserName: string, { kills, saved, drafts, resumed }: Tally): string =>
  `${browserName} killed ${kills} times: ${saved} looks at a saved reading, ${drafts} drafts offered again, ${resumed} times at the same step`;
