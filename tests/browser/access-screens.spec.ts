import { expect } from '@playwright/test';
import { builtIn } from '../../src/reference/built-in.ts';
import { ahead } from '../../src/words/en/ahead.ts';
import { common } from '../../src/words/en/common.ts';
import { machineKindWords } from '../../src/words/en/choices.ts';
import { history } from '../../src/words/en/history.ts';
import { home } from '../../src/words/en/home.ts';
import { itemName } from '../../src/words/en/items.ts';
import { machineForm } from '../../src/words/en/machine.ts';
import { pad } from '../../src/words/en/pad.ts';
import { beforeStart, step as stepWords, walk } from '../../src/words/en/walk.ts';
import { reachFaults, readingFaults } from './access-faults.ts';
import { test } from './walk-phone.ts';
import type { Walker } from './walker.ts';

interface Look {
  readonly name: string;
  readonly path: string;
  /** What is done on the screen before it is looked at. */
  readonly then?: (walker: Walker) => Promise<void>;
}

const row = ({ page }: Walker, item: string) =>
  page
    .locator('main li')
    .getByRole('button')
    .filter({ hasText: itemName(item) });
const bookOf = (table: object): string => Object.keys(table)[0]?.split('/')[1] ?? '';

/** Every screen, and those of its states that look different. */
const looks = (machine: string, rubber: string): readonly Look[] => [
  { name: 'first screen', path: '/' },
  { name: 'new machine', path: '/machine/new' },
  {
    name: 'new machine with faults and shape',
    path: '/machine/new',
    then: async (walker) => {
      const { page } = walker;
      await page.getByRole('radio', { name: machineKindWords.dozer }).click();
      await walker.trackKind('steel').click();
      await page.getByRole('button', { name: machineForm.save }).click();
      await page.locator('main details').evaluateAll((folds) => {
        for (const fold of folds) fold.setAttribute('open', '');
      });
    },
  },
  { name: 'machine', path: machine },
  { name: 'machine to edit', path: `${machine}/edit` },
  {
    name: 'before the walk',
    path: `${machine}/start`,
    then: (walker) => walker.button(beforeStart.moreDetails).click(),
  },
  { name: 'work', path: `${machine}/work` },
  { name: 'map', path: `${rubber}/map` },
  { name: 'look', path: `${rubber}/front-left/idler` },
  { name: 'look at numbered parts', path: `${rubber}/side-left/bottom-roller` },
  {
    name: 'finding with help and reasons',
    path: `${rubber}/side-left/tread`,
    then: async (walker) => {
      await row(walker, 'cord').click();
      await walker.page.getByRole('radio', { name: 'showing, dry' }).click();
      await walker.page.getByRole('button', { name: common.help }).click();
      await walker.button(walk.couldNot).click();
    },
  },
  {
    name: 'crack',
    path: `${rubber}/side-left/tread`,
    then: (walker) => row(walker, 'crack').click(),
  },
  { name: 'pad', path: `${rubber}/side-left/lug-depth/s2` },
  {
    name: 'pad with a question, tools and more',
    path: `${rubber}/side-left/lug-depth/s2`,
    then: async (walker) => {
      await walker.page.getByRole('textbox').fill('-3');
      await walker.button(pad.next).click();
      await walker.page.getByRole('button', { name: stepWords.toolAsk }).click();
      await walker.button(stepWords.opensMore).click();
      await walker.button(common.help).click();
    },
  },
  { name: 'caution', path: `${rubber}/raised-left/sag` },
  { name: 'verdict', path: `${rubber}/verdict` },
  {
    name: 'verdict with hours left and plan',
    path: '/walk/demo/steel-last/verdict',
    then: async ({ page }) => {
      await page.getByRole('heading', { name: ahead.mend }).waitFor();
      await page.locator('main details').evaluateAll((folds) => {
        for (const fold of folds) fold.setAttribute('open', '');
      });
    },
  },
  {
    name: 'wear history',
    path: '/machine/demo/steel/history',
    then: ({ page }) => page.getByRole('img').waitFor(),
  },
  {
    name: 'wear history as a table',
    path: '/machine/demo/steel/history',
    then: (walker) => walker.button(history.asTable).click(),
  },
  { name: 'hauling', path: '/machine/demo/steel/hauling' },
  { name: 'prices and rates', path: '/prices' },
  { name: 'price list', path: `/prices/${bookOf(builtIn.prices)}` },
  { name: 'rates', path: `/rates/${bookOf(builtIn.rates)}` },
  { name: 'sheets', path: '/sheets' },
  { name: 'sheet', path: `/sheets/${bookOf(builtIn.limits)}` },
  { name: 'rule sets', path: '/rules' },
  { name: 'rule set', path: `/rules/${bookOf(builtIn.rules)}` },
  { name: 'settings', path: '/settings' },
  { name: 'about', path: '/about' },
  { name: 'no such screen', path: '/walk/0' },
];

async function ownWalk(walker: Walker): Promise<readonly Look[]> {
  const { page } = walker;
  await walker.button(home.demo).click();
  await expect(walker.button(home.removeDemo)).toBeVisible();
  await walker.addMachine('yard 3', 'excavator', 'rubber-cored', '1700');
  const machine = new URL(page.url()).pathname;
  await walker.startWalk('full');
  const rubber = new URL(page.url()).pathname.replace(/(\/walk\/[^/]+).*/, '$1');
  await walker.pastCautions();
  await page.goto(`${rubber}/side-left/lug-depth/s1`);
  await walker.answer({ type: ['6'] });
  await page.goto(`${rubber}/side-left/inner`);
  await walker.answer({ found: [{ item: 'cores', is: 'bent', count: 2 }] });
  return looks(machine, rubber);
}

async function open(walker: Walker, { path, then }: Look): Promise<void> {
  await walker.page.goto(path);
  await walker.settled();
  await then?.(walker);
}

test('[B50] no screen has a fault that axe finds, and every text has 7 to 1, in light and dark', async ({
  walker,
  browserName,
}) => {
  test.skip(browserName !== 'chromium', 'axe reads the same tree in every engine');
  test.setTimeout(300_000);
  const { page } = walker;
  const found: Record<string, unknown> = {};
  for (const look of await ownWalk(walker)) {
    await open(walker, look);
    Object.assign(found, await readingFaults(page, look.name));
  }
  expect(found).toEqual({});
});

test('[B51] every target is large enough at 320, 360 and 412 px, and nothing scrolls sideways', async ({
  walker,
  browserName,
}) => {
  test.skip(browserName !== 'chromium', 'sizes come from the same sheets in every engine');
  test.setTimeout(300_000);
  const { page } = walker;
  const found: Record<string, unknown> = {};
  for (const look of await ownWalk(walker)) {
    await open(walker, look);
    Object.assign(found, await reachFaults(page, look.name));
  }
  expect(found).toEqual({});
});
