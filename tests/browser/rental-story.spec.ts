import { expect } from '@playwright/test';
import { jobWords } from '../../src/words/en/ahead.ts';
import { bytesSource } from '../../src/cli/source.ts';
import { rentalFile } from '../../src/cli/rental.ts';
import { readBundle } from '../../src/files/read-bundle.ts';
import { handover } from '../../src/words/en/handover.ts';
import { charge, chargeOpenWords } from '../../src/words/en/charge.ts';
import { chargesWords, contract, hoursWords } from '../../src/words/en/contract.ts';
import { machine } from '../../src/words/en/machine.ts';
import { paperActions } from '../../src/words/en/report.ts';
import { handOutVerdict } from '../../src/words/en/rental-verdict.ts';
import { checkWords, sealForm, sealed } from '../../src/words/en/sealing.ts';
import { verdict } from '../../src/words/en/verdict.ts';
import { walk } from '../../src/words/en/walk.ts';
import { capital } from '../../src/words/outcome-text.ts';
import { spoken } from '../report/read-pdf.ts';
import { draw } from './draw.ts';
import { givenBy, keepGiven } from './given.ts';
import { base, camera, picture, readLug, shoot, shootAll } from './rental-phone.ts';
import { recordsOn, test } from './walk-phone.ts';
import type { Walker } from './walker.ts';

// By the starting sheet a lug is new at 25 mm and worn at 5 mm: a millimetre is 5 %.
const mark = 'yellow paint, third lug from the joint';
const out = { left: ['21', '19'], right: ['21', '21'] } as const;
const back = { left: ['15', '17'], right: ['21', '20.5'] } as const;

const track = capital(jobWords['renew-track']);

type Sizes = Readonly<Record<'left' | 'right', readonly [string, string]>>;

/** Reads two marked lugs on each side. */
async function readLugs(walker: Walker, at: string, sizes: Sizes, marked: boolean): Promise<void> {
  const { page } = walker;
  for (const side of ['left', 'right'] as const)
    for (const [i, typed] of sizes[side].entries()) {
      await page.goto(`${at}/side-${side}/lug-depth/s${i + 1}`);
      await readLug(walker, `side-${side}.lug-depth.s${i + 1}`, typed, marked ? mark : undefined);
    }
}

/** Answers the look at a side’s tread. */
async function lookAt(walker: Walker, at: string, side: 'left' | 'right', isCut: boolean): Promise<void> {
  const { page } = walker;
  await page.goto(`${at}/side-${side}/tread`);
  await walker.pastCautions();
  if (isCut) {
    await camera(page).setInputFiles(picture());
    await expect(page.getByRole('link', { name: /^Photo: / })).toHaveCount(1);
  }
  await walker.answer(isCut ? { found: [{ item: 'cord', is: 'cut', count: 1 }] } : undefined);
}

/** Ends a walk whose other steps nobody took. */
async function finish(walker: Walker, at: string): Promise<void> {
  await walker.page.goto(`${at}/verdict`);
  await walker.tap(walker.button(walk.finishAnyway));
  await expect(walker.link(sealed.seal)).toBeVisible();
}

const agreed = {
  number: 'R-1042',
  owner: 'Oak Yard',
  renter: 'Brand Groundworks',
  hoursBilled: '80',
  haulage: '150',
  tax: '20',
  replyDays: '14',
  keptDays: '30',
} as const;

/** Enters what was agreed. */
async function agree(walker: Walker): Promise<void> {
  const { page } = walker;
  const fill = (label: string, text: string) => page.getByLabel(label, { exact: true }).fill(text);
  await walker.tap(walker.link(machine.contract));
  await walker.tap(walker.choice(chargesWords['damage-and-wear'].label));
  await walker.tap(walker.choice(hoursWords.billed.label));
  await fill(contract.currency, 'GBP');
  for (const [name, text] of Object.entries(agreed)) await fill(contract[name as keyof typeof agreed], text);
  await walker.tap(page.locator('summary').filter({ hasText: track }));
  const part = page.locator('details').filter({ hasText: track });
  await part.getByLabel(contract.minor).fill('1400');
  await part.getByLabel(contract.labourMinor).fill('200');
  await part.getByLabel(contract.life).fill('1600');
  await part.getByLabel(contract.source).fill('price list of the yard, 2026');
  await walker.tap(walker.button(contract.save));
  await expect(page.getByText(contract.saved)).toBeVisible();
}

const bare = (text: string): string => text.replace(/\s+/g, '');

/** The renter objects, the inspector signs by hand. */
async function signWithObjection(walker: Walker): Promise<void> {
  const { page } = walker;
  await page.getByLabel(sealForm.name).fill('Kim Osei');
  await draw(page, sealForm.signatureOf('inspector'));
  await walker.tap(walker.choice('renter'));
  await walker.tap(walker.choice(sealForm.answers.objects.label));
  await page.getByLabel(sealForm.objection).fill('The cut was there before.');
  await page.getByLabel(sealForm.name).last().fill('Ada Brand');
  await walker.tap(walker.button(sealForm.seal));
  await expect(page.getByRole('navigation').getByRole('link', { name: charge.page })).toBeVisible();
}

test('[RS1] a hire from contract to signed charge list and its PDF, with no network', async ({ walker }) => {
  test.setTimeout(120_000);
  const { page } = walker;
  await keepGiven(page);
  await walker.addMachine('yard 12', 'track-loader', 'rubber-cored', '4500');
  const home = new URL(page.url()).pathname;
  await agree(walker);

  // Out: every photo of the sequence, marked lugs, both treads seen all round.
  await page.goto(home);
  await walker.startWalk('short', 'hand-out');
  await shootAll(walker);
  const first = base(page);
  await readLugs(walker, first, out, true);
  await lookAt(walker, first, 'left', false);
  await lookAt(walker, first, 'right', false);
  await finish(walker, first);
  // Before the hire: 80 h of 1,600 are less than two readings can tell.
  await expect(page.getByText(handOutVerdict.shortHire)).toBeVisible();

  // Back: a cut cord on the left, and its lugs worn unevenly.
  await page.goto(home);
  await walker.startWalk('short', 'rental-return');
  // Plate, meter, a corner and the first mark; the photos after them are as at hand-out.
  for (let taken = 0; taken < 4; taken += 1) await shoot(walker);
  const second = base(page);
  await readLugs(walker, second, back, false);
  await lookAt(walker, second, 'left', true);
  await lookAt(walker, second, 'right', false);
  await finish(walker, second);

  await walker.tap(walker.link(verdict.chargeList));
  const region = (name: string) => page.getByRole('region', { name, exact: true });
  // Left wear 20 %, 5 % of it allowed: 15 % of 1,400. Left 55 % before the cut: 770 and 110 of labour.
  // With 150 of haulage 1,240, and 20 % of tax.
  await expect(page.getByText(charge.toPay('£1,488'))).toBeVisible();
  const damage = region('Left track: damage');
  await expect(damage).toContainText('£880');
  await expect(damage.getByRole('img')).toHaveCount(2);
  await expect(region('Left track: wear')).toContainText('£210');
  await expect(page.getByText(charge.ownerNone)).toBeVisible();

  await walker.tap(walker.link(charge.sign));
  await signWithObjection(walker);
  const people = (await recordsOn(page)).filter(({ key }) => key.startsWith('person/'));
  expect(people.map(({ value }) => [value['role'], value['objection']])).toContainEqual([
    'renter',
    'The cut was there before.',
  ]);

  await walker.tap(walker.link(verdict.title));
  await expect(page.getByRole('region', { name: sealed.title })).toContainText(checkWords.intact.label);

  // The sealed list is one tap from its page.
  await walker.tap(walker.link(verdict.chargeList));
  await walker.tap(page.getByRole('navigation').getByRole('link', { name: charge.page }));
  await walker.tap(walker.button(paperActions.pdf));
  await expect(page.getByText(paperActions.written)).toBeVisible({ timeout: 30_000 });
  const text = bare((await spoken(await givenBy(page))).join(''));
  for (const line of [
    charge.toPay('£1,488'),
    'R-1042',
    'Oak Yard',
    'Brand Groundworks',
    'price list of the yard, 2026',
    'Left track: damage',
    'Cuts down to the cord are billed',
    '£880',
    '£210',
    '£248',
    'Kim Osei',
    'Ada Brand',
    'The cut was there before.',
    charge.replyBy,
    charge.keptUntil,
    charge.altOut('Left track: damage'),
    charge.altBack('Left track: damage'),
  ])
    expect(text).toContain(bare(line));

  // Whoever gets the file works the same list out without the app.
  await page.goto(`${second}/hand-over`);
  await walker.tap(walker.button(handover.save(handover.walk)));
  await expect(page.getByText('File written')).toBeVisible();
  const bundle = await readBundle(bytesSource(new Uint8Array(await givenBy(page))));
  const document = bundle.ok && bundle.value.document.kind === 'walk' ? bundle.value.document : undefined;
  const file = document && (await rentalFile(document.bytes));
  const [list] = file?.ok ? file.value.returns : [];
  expect(list).toMatchObject({ currency: 'GBP', netMinor: 124_000, grossMinor: 148_800 });
  expect(list?.returned.seals).toHaveLength(1);

  // What was signed stays what was signed: a contract that is changed afterwards is said to be.
  await page.goto(`${second}/charge`);
  await expect(page.getByText(charge.toPay('£1,488'))).toBeVisible();
  await expect(page.getByText(charge.anew('£1,488'))).toHaveCount(0);
  await walker.tap(walker.link(charge.contract));
  await page.getByLabel(contract.tax, { exact: true }).fill('0');
  await walker.tap(walker.button(contract.save));
  await expect(page.getByText(contract.savedSealed)).toBeVisible();
  await page.goto(`${second}/charge`);
  await expect(page.getByText(charge.anew('£1,488'))).toBeVisible();
  await expect(page.getByText(charge.toPay('£1,240'))).toBeVisible();
  await page.goto(`${second}/charge/page`);
  await expect(page.getByRole('article')).toContainText(charge.anew('£1,488'));
});

test('[RS2] without a hand-out walk nothing is to pay until both sides agree, and what they agree on is', async ({
  walker,
  browserName,
}) => {
  test.skip(browserName !== 'chromium', 'the whole story is driven in every engine by the test before');
  const { page } = walker;
  await walker.addMachine('yard 12', 'track-loader', 'rubber-cored', '4500');
  const home = new URL(page.url()).pathname;
  await agree(walker);
  await page.goto(home);
  await walker.startWalk('short', 'rental-return');
  const at = base(page);
  await readLugs(walker, at, back, false);
  await lookAt(walker, at, 'left', true);
  await finish(walker, at);
  await walker.tap(walker.link(verdict.chargeList));

  await expect(page.getByText(charge.noHandOut)).toBeVisible();
  await expect(page.getByText(charge.nothingYet)).toBeVisible();
  const damage = page.getByRole('region', { name: 'Left track: damage', exact: true });
  await expect(damage).toContainText(chargeOpenWords['no-hand-out']);
  await damage.getByLabel(charge.settleWhy).fill('The renter says that it happened on site.');
  await walker.tap(damage.getByRole('button', { name: charge.chargeIt }));
  // 770 and 110 of labour with 150 of haulage, and 20 % of tax; wear stays open.
  await expect(page.getByText(charge.toPay('£1,236'))).toBeVisible();
  await expect(damage).toContainText(charge.agreed('The renter says that it happened on site.'));
  await page.reload();
  await walker.tap(damage.getByRole('button', { name: charge.undoSettle }));
  await expect(page.getByText(charge.nothingYet)).toBeVisible();
});
