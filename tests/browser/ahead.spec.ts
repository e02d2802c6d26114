import { expect, type Page } from '@playwright/test';
import { ahead, jobWords } from '../../src/words/en/ahead.ts';
import { workKindWords } from '../../src/words/en/choices.ts';
import { common } from '../../src/words/en/common.ts';
import { costs } from '../../src/words/en/costs.ts';
import { workReasonWords } from '../../src/words/en/machine-costs.ts';
import { history } from '../../src/words/en/history.ts';
import { home } from '../../src/words/en/home.ts';
import { componentNames, sideNames } from '../../src/words/en/items.ts';
import { workForm } from '../../src/words/en/machine.ts';
import { step as stepWords } from '../../src/words/en/walk.ts';
import { demoRecords } from '../../src/reference/demo.ts';
import { recordsOn, test } from './walk-phone.ts';
import type { Walker } from './walker.ts';

test.use({ viewport: { width: 360, height: 740 } });
test.skip(
  ({ browserName }) => browserName !== 'chromium',
  'the same in every engine: verdicts are tried in both elsewhere',
);

const verdict = '/walk/demo/mini-last/verdict';
const right = ahead.onSide(jobWords['renew-track'], sideNames.right);

async function withDemo({ page, button }: Walker, path: string): Promise<void> {
  await button.call({ page }, home.demo).click();
  await expect(button.call({ page }, home.removeDemo)).toBeVisible();
  await page.goto(path);
}

const lead = (page: Page) => page.getByRole('region', { name: ahead.plan, exact: true });
const job = (page: Page, name: string) =>
  page.locator('details').filter({ has: page.getByText(name, { exact: true }) });

/** The demo's small machine as one of the phone's own. */
const fleetMachine = (n: number) =>
  demoRecords()
    .filter(({ key }) => !key.includes('steel'))
    .map(({ key, value }) => {
      const own = (text: string): string => text.replace('demo/', '').replace('mini', `mini-${n}`);
      const walk = 'machine' in value ? { machine: own(String(value.machine)) } : {};
      return { key: own(key), value: { ...value, ...walk } };
    });

test('[B60] the verdict leads with what, by when and about how much, offline, then hours left and the plan', async ({
  walker,
}) => {
  const { page } = walker;
  await withDemo(walker, verdict);
  await expect(lead(page)).toContainText(right);
  await expect(lead(page)).toContainText(/1,250\sh\son\sthe\smeter.*about\s€1,300/);
  const rung = page.locator('details').filter({ hasText: 'lug depth, right track' }).first();
  await expect(rung).toContainText(/about\s360\sh\s\(260\sh\sto\s490\sh\)/);
  await rung.locator('summary').click();
  // The figure opens down to its readings, the sheet, the life figure with its source, and the formula.
  for (const part of [
    /17\sFeb\s2026,\s1,110\sh:\s11.5\smm,\s62\s%/,
    /New\s22\smm,\slimit\s5\smm/,
    /Life of such parts/,
    /straight line through its own readings alone reaches 100 % in \d+/,
    /100 × \(new − read\)/,
  ])
    await expect(rung).toContainText(part);
  await expect(page.getByRole('heading', { name: ahead.plan })).toBeVisible();
  await expect(page.getByText(ahead.everythingNow)).toBeVisible();
  await expect(page.getByRole('heading', { name: ahead.mend })).toBeVisible();
});

test('[B61] a job left out leaves the plan and comes back, also after a reload', async ({ walker }) => {
  const { page } = walker;
  await withDemo(walker, verdict);
  await expect(lead(page)).toContainText(right);
  await walker.tap(job(page, right).locator('summary'));
  await walker.tap(job(page, right).getByRole('button', { name: ahead.holdOut }));
  await expect(lead(page)).not.toContainText(right);
  await expect(page.getByText(ahead.heldOff)).toBeVisible();
  await page.reload();
  await expect(page.getByText(ahead.heldOff)).toBeVisible();
  await walker.tap(walker.button(ahead.holdFree));
  await expect(lead(page)).toContainText(right);
});

test('[B62] a machine’s own price changes the plan at once, and stays', async ({ walker }) => {
  const { page } = walker;
  await withDemo(walker, verdict);
  await walker.tap(walker.button(costs.own));
  await page.getByLabel(`${costs.parts}, ${costs.each.side}`).first().fill('2500,50');
  await walker.tap(walker.button(costs.save));
  await expect(page.getByText('€2,500.50 and 1 h of labour, for one side')).toBeVisible();
  await page.goto(verdict);
  await expect(lead(page)).toContainText(/about\s€5,500/);
  await page.reload();
  await expect(lead(page)).toContainText(/about\s€5,500/);
  await expect(job(page, right).first()).toContainText('€2,610.50');
});

test('[B63] an amount that cannot be read is asked about and nothing is lost', async ({ walker }) => {
  const { page } = walker;
  await withDemo(walker, verdict);
  await walker.tap(walker.button(costs.own));
  const field = page.getByLabel(`${costs.parts}, ${costs.each.side}`).first();
  await field.fill('a lot');
  await page.getByLabel(costs.currency).fill('euro');
  await walker.tap(walker.button(costs.save));
  await expect(field).toHaveAttribute('aria-invalid', 'true');
  await expect(page.getByText(costs.currencyWrong)).toBeVisible();
  await page.reload();
  await expect(field).toHaveValue('a lot');
});

test('[B64] the wear history is a plot with a summary, and a table one tap away that keeps the part', async ({
  walker,
}) => {
  const { page } = walker;
  await withDemo(walker, '/machine/demo/steel/history');
  const plot = page.getByRole('img', {
    name: /^track\spitch,\sright\strack\.\sRead\slast\sat\s4,980\sh:\s67\s%\s±\s6\s%\sworn/,
  });
  await expect(plot).toBeVisible();
  await page.getByLabel(history.part).selectOption({ label: 'grouser height, left track' });
  await expect(page.getByRole('img', { name: /^grouser height, left track/ })).toBeVisible();
  await walker.tap(walker.button(history.asTable));
  const table = page.getByRole('table', { name: history.readings('grouser height, left track') });
  await expect(table.getByRole('row')).toHaveCount(4);
  await expect(table.getByRole('row').last()).toContainText(/20\sJan\s2026.*4,980.*16\smm.*57\s±\s6/);
  await expect(page.getByRole('table', { name: history.expected })).toBeVisible();
  await walker.tap(walker.button(history.asPlot));
  await expect(page.getByRole('img', { name: /^grouser height, left track/ })).toBeVisible();
});

test('[B65] a new track entered where it is noticed starts its history anew and says why the old one came off', async ({
  walker,
}) => {
  const { page } = walker;
  await withDemo(walker, '/machine/demo/mini/work');
  await walker.tap(walker.choice(workKindWords.fitted));
  await walker.tap(page.getByRole('radio', { name: componentNames.track.one, exact: true }));
  await walker.tap(walker.choice(workForm.both));
  await walker.tap(walker.choice(workReasonWords.damaged.label));
  await page.getByLabel(workForm.meter).fill('1200');
  await walker.tap(walker.button(workForm.save));
  await expect(page.getByText(workForm.saved)).toBeVisible();
  const made = (await recordsOn(page)).filter(
    ({ key, value }) => key.includes('work/') && value['meterHours'] === 1200,
  );
  expect(made.map(({ value }) => [value['kind'], value['why']])).toEqual([
    ['fitted', 'damaged'],
    ['fitted', 'damaged'],
  ]);
  await page.goto('/machine/demo/mini/history');
  await expect(page.getByText(/^Read\slast\sat\s1,110\sh/).first()).toBeVisible();
  await expect(page.locator('main')).toContainText(/Hours\sleft:\sabout\s1,\d00\sh/);
  await walker.tap(walker.link(common.back));
});

test('[B66] work noticed on a walk is entered from there, with its part, and leads back to the step', async ({
  walker,
}) => {
  const { page } = walker;
  const step = '/walk/demo/mini-last/side-left/lug-depth/s1';
  await withDemo(walker, step);
  await walker.tap(walker.link(stepWords.workHere));
  await walker.tap(walker.choice(workKindWords.turned));
  await expect(page.getByRole('radio', { name: componentNames.track.one, exact: true })).toBeChecked();
  await expect(walker.choice(sideNames.left)).toBeChecked();
  await walker.tap(walker.button(workForm.save));
  await expect(page).toHaveURL(new RegExp(`${step}$`));
  // An address that leads elsewhere is not followed.
  await page.goto(`/machine/demo/mini/work?from=https://example.org/`);
  await expect(walker.link(common.back)).toHaveAttribute('href', '/machine/demo/mini');
});

test('[B67] once the phone holds ten histories of a kind, hours left are learnt from them and it says so', async ({
  walker,
}) => {
  const { page } = walker;
  const records = Array.from({ length: 5 }, (_, n) => fleetMachine(n)).flat();
  const file = JSON.stringify({ format: 'sagline-walk', version: 1, records });
  await page.goto('/sheets');
  await page.locator('input[type=file]').setInputFiles({
    name: 'fleet.json',
    mimeType: 'application/json',
    buffer: Buffer.from(file),
  });
  await expect(page.getByText(/\d+ records?/).first()).toBeVisible();
  await page.goto('/walk/mini-3-last/verdict');
  await expect(page.getByText(ahead.learnt)).toBeVisible();
});
