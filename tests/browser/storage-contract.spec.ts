import { expect, test as base } from '@playwright/test';
import { contract } from '../storage/contract.ts';
import { ask, serveStorage } from './storage-page.ts';
import type { LocalOrigin } from './local-origin.ts';

const test = base.extend<object, { origin: LocalOrigin }>({
  origin: [
    // eslint-disable-next-line no-empty-pattern -- Playwright reads the names of the fixtures out of the pattern
    async ({}, use) => {
      const origin = await serveStorage();
      await use(origin);
      await origin.close();
    },
    { scope: 'worker' },
  ],
});

test('[S100] every rule of the storage contract holds in this engine, as many as in any other', async ({
  page,
  origin,
  browserName,
}) => {
  await page.goto(origin.url);
  const outcomes = await ask(page, 'runContract');
  expect(outcomes.filter(({ error }) => error !== undefined)).toEqual([]);
  expect(outcomes.map(({ title }) => title)).toEqual(contract.map(({ title }) => title));
  console.log(`storage contract in ${browserName}: ${outcomes.length} of ${contract.length}`);
});

test('[S101] another tab hears of a change and reads it', async ({ context, origin }) => {
  const [one, two] = [await context.newPage(), await context.newPage()];
  for (const tab of [one, two]) {
    await tab.goto(origin.url);
    await ask(tab, 'open');
  }
  expect(await ask(one, 'write', 'first')).toBe('saved');
  expect(await ask(two, 'write', 'second')).toBe('saved');
  expect(await ask(one, 'keys')).toEqual(['limits/first', 'limits/second']);
  await two.close();
  await one.reload();
  await ask(one, 'open');
  expect(await ask(one, 'keys')).toEqual(['limits/first', 'limits/second']);
});
