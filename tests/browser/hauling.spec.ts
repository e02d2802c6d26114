import { expect, type Page } from '@playwright/test';
import type { HaulField } from '../../src/core/hauling.ts';
import { contactWords, groundPressure, groundSizeWords } from '../../src/words/en/ground.ts';
import {
  haulCautions,
  haulFieldWords,
  hauling,
  haulOnWords,
  regionWords,
  stepWords,
  tieFieldWords,
} from '../../src/words/en/hauling.ts';
import { home } from '../../src/words/en/home.ts';
import { machine as machineWords } from '../../src/words/en/machine.ts';
import { common } from '../../src/words/en/common.ts';
import { openFolds, reachFaults, readingFaults } from './access-faults.ts';
import { test } from './walk-phone.ts';
import type { Walker } from './walker.ts';

test.use({ viewport: { width: 360, height: 740 } });
test.skip(({ browserName }) => browserName !== 'chromium', 'sums as typed are the same in every engine');

const field = (page: Page, label: string) => page.getByRole('textbox', { name: new RegExp(`^${label}`) });
const mass = (page: Page, name: HaulField) => field(page, haulFieldWords[name].label);
const fill = async (page: Page, masses: Readonly<Partial<Record<HaulField, string>>>): Promise<void> => {
  for (const [name, text] of Object.entries(masses)) await mass(page, name as HaulField).fill(text);
};
const summary = (page: Page) => page.getByRole('status', { name: hauling.comesTo });
const card = (page: Page, title: string) =>
  page.locator('main div').filter({ has: page.locator('> h3').filter({ hasText: title }) });

async function onYardMachine(walker: Walker): Promise<void> {
  await walker.addMachine('yard 3', 'excavator', 'rubber-cored', '2625');
  await walker.tap(walker.page.getByRole('link', { name: machineWords.hauling }));
  await expect(walker.page.getByRole('heading', { name: hauling.title })).toBeVisible();
}

test('[HL10] a machine’s mass comes from its record, what is empty stays open, and answers come as one types, offline', async ({
  walker,
}) => {
  const { page } = walker;
  await onYardMachine(walker);
  await expect(mass(page, 'machine')).toHaveValue('2625');
  await expect(summary(page)).toContainText(/2,550\skg at least/);
  await expect(summary(page)).toContainText(hauling.lawOpen);
  await expect(summary(page)).toContainText(hauling.noRatingYet);
  await fill(page, { attachments: '100', fuel: '0', chains: '25', trailer: '700', 'trailer-gross': '3500' });
  await expect(card(page, hauling.ratings)).toContainText(/Within the rating, 125\skg to spare/);
  await fill(page, { truck: '2400', 'truck-gross': '3500' });
  await expect(summary(page)).toContainText(stepWords.b);
  await fill(page, { chains: '200' });
  await expect(summary(page)).toContainText(/Over its rating by 50\skg/);
  await expect(summary(page)).toContainText(hauling.overStop);
  // A field that is emptied is open again, and certain answers stay.
  await fill(page, { 'trailer-gross': '' });
  await expect(summary(page)).not.toContainText(/Over its rating/);
  await expect(summary(page)).toContainText(hauling.lawOpen);
});

test('[HL11] what is typed is there after a reload; the rig goes on to the next machine, the load does not', async ({
  walker,
}) => {
  const { page } = walker;
  await onYardMachine(walker);
  await fill(page, { attachments: '123', trailer: '700' });
  await expect(summary(page)).toContainText(/3,373\skg at least/);
  await page.reload();
  await expect(mass(page, 'attachments')).toHaveValue('123');
  await page.goto('/hauling');
  await expect(mass(page, 'trailer')).toHaveValue('700');
  await expect(mass(page, 'attachments')).toHaveValue('');
  await walker.tap(walker.button(hauling.clear));
  await expect(mass(page, 'trailer')).toHaveValue('');
  await walker.tap(walker.button(common.undo));
  await expect(mass(page, 'trailer')).toHaveValue('700');
});

test('[HL12] cautions and “local law decides” stand on the screen, and on the truck itself no trailer is asked for', async ({
  walker,
}) => {
  const { page } = walker;
  await page.goto('/hauling');
  for (const line of haulCautions) await expect(page.getByText(line)).toBeVisible();
  const cards = page.locator('main h3');
  await expect(page.getByText(hauling.localLaw)).toHaveCount((await cards.count()) + 1);
  await walker.tap(page.getByRole('radio', { name: haulOnWords.truck.label }));
  await expect(mass(page, 'trailer')).toHaveCount(0);
  await expect(mass(page, 'truck')).toBeVisible();
});

test.describe('in pounds', () => {
  test.use({ locale: 'en-US' });

  test('[HL13] 26,001 lb with a trailer of 10,001 lb needs a CDL, of 10,000 lb none; four ties hold 12,000 lb', async ({
    walker,
  }) => {
    const { page } = walker;
    await page.goto('/hauling');
    await expect(page.getByRole('radio', { name: regionWords.us.label })).toBeChecked();
    await walker.tap(page.getByRole('button', { name: hauling.operator }));
    await walker.tap(page.getByRole('button', { name: hauling.noCombination }));
    await fill(page, {
      machine: '5000',
      attachments: '0',
      fuel: '0',
      chains: '0',
      trailer: '2000',
      truck: '9000',
    });
    await fill(page, { 'trailer-gross': '10001', 'truck-gross': '16000' });
    await expect(summary(page)).toContainText(stepWords['cdl-a']);
    await fill(page, { 'trailer-gross': '10000', 'truck-gross': '16001' });
    await expect(summary(page)).toContainText(stepWords['no-cdl']);
    await fill(page, { machine: '12000' });
    await field(page, tieFieldWords['direct-count'].label).fill('4');
    await field(page, `${tieFieldWords['direct-wll'].label},`).fill('5000');
    await expect(card(page, hauling.tieSum)).toContainText(/you have 10,000\slb, at least 6,000\slb/);
    await expect(card(page, hauling.tieCount)).toContainText('you have 4, at least 4');
  });
});

test('[HL14] ground pressure is worked out line by line from the demo’s tracks, its length by the way that is named', async ({
  walker,
}) => {
  const { page } = walker;
  await walker.button(home.demo).click();
  await expect(walker.button(home.removeDemo)).toBeVisible();
  await page.goto('/machine/demo/steel/hauling');
  await page.locator('summary').filter({ hasText: groundPressure.title }).click();
  await field(page, groundSizeWords.width.label).fill('600');
  await field(page, groundSizeWords.centres.label).fill('3275');
  await field(page, groundSizeWords.height.label).fill('940');
  await mass(page, 'machine').fill('19500');
  await expect(card(page, groundPressure.mean)).toContainText(/44.2\skPa/);
  await expect(card(page, groundPressure.mean)).toContainText(/3,275\smm \+ 0.35 × 940\smm = 3,604\smm/);
  await field(page, groundSizeWords.pitch.label).fill('190');
  await field(page, groundSizeWords.diameter.label).fill('150');
  await expect(card(page, groundPressure.peaks)).toContainText(/times the average/);
  await walker.tap(page.getByRole('radio', { name: contactWords.measured.label }));
  await expect(card(page, groundPressure.mean)).toContainText(groundSizeWords.length.name);
});

test('[HL15] it has no fault that axe finds, texts of 7 to 1 in light and dark, and targets to tap at every width', async ({
  walker,
}) => {
  test.setTimeout(120_000);
  const { page } = walker;
  const found: Record<string, unknown> = {};
  for (const region of ['us', 'eu'] as const) {
    await page.goto('/hauling');
    await walker.tap(page.getByRole('radio', { name: regionWords[region].label }));
    await fill(page, { machine: '5000', trailer: '900', 'trailer-gross': '3500', chains: '1,234' });
    await mass(page, 'machine').focus();
    await openFolds(page);
    Object.assign(
      found,
      await readingFaults(page, region),
      await reachFaults(page, region, [320, 360, 1280]),
    );
  }
  expect(found).toEqual({});
});
