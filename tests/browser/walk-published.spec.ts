import { expect } from '@playwright/test';
import { assemble } from '../../src/core/assemble.ts';
import { parsePlace, type Place } from '../../src/core/keys.ts';
import { score } from '../../src/core/score.ts';
import { shownCall } from '../../src/core/verdict.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { callWords, meanwhileWords } from '../../src/words/en/calls.ts';
import { files } from '../../src/words/en/files.ts';
import { itemName, placeName } from '../../src/words/en/items.ts';
import { verdict as words } from '../../src/words/en/verdict.ts';
import { expectations, recordsOf, shelfOf, type ExpectedItem } from '../checks/walk-file.ts';
import { recordsOn, test } from './walk-phone.ts';
import { comparable, planOf, withoutReadings } from './walk-published.ts';
import type { Walker } from './walker.ts';

async function importFile({ page }: Walker, records: readonly object[]): Promise<void> {
  const file = { format: 'sagline-walk', version: 1, records, seals: [] };
  await page.getByLabel(files.importFile).setInputFiles({
    name: 'walk.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(file)),
  });
  await expect(page.getByText(files.added(records.length))).toBeVisible();
}

/** What the verdict says of one item: on its own card, or in the list of what is open or was passed. */
async function expectSaid({ page }: Walker, expected: ExpectedItem): Promise<void> {
  const [item, place] = [itemName(expected.item), placeName(parsePlace(expected.place as Place))];
  const card = page.getByRole('article').filter({ hasText: `${item}, ${place}: ` });
  if ((await card.count()) === 0) {
    expect(expected.call).toBe('run');
    // What was passed stands in a list that is folded away.
    const line = page
      .locator('main li')
      .filter({ hasText: `${place}: ` })
      .filter({ hasText: item });
    return expect(line).toHaveCount(1);
  }
  const isOpen = expected.open.length > 0 && expected.call === 'run';
  await expect(card).toContainText(isOpen ? words.openTitle : callWords[expected.call as 'run'].word);
  if (expected.call !== 'run')
    await expect(card).toContainText(words.meanwhile(meanwhileWords[expected.meanwhile as 'work'].word));
  if (expected.percent === undefined) await expect(card).not.toContainText('% worn, give or take');
  else await expect(card).toContainText(`${Math.round(expected.percent)} % worn, give or take`);
}

test('[B31] published walks, typed in by hand, come to what is printed', async ({ walker, browserName }) => {
  test.skip(
    browserName !== 'chromium',
    'the same numbers in every engine: both walk whole machines in other tests',
  );
  test.setTimeout(300_000);
  const { page } = walker;
  const names = Object.keys(expectations);
  for (const name of names) {
    const expected = expectations[name];
    if (!expected) throw new Error(`nothing is expected of ${name}`);
    await page.goto('/settings');
    await importFile(walker, withoutReadings(name));
    await page.goto(`/${expected.walk}`);
    await walker.walk(planOf(name));

    for (const item of expected.items) await expectSaid(walker, item);
    await expect(page.getByRole('main')).toContainText(callWords[expected.verdict.call as 'run'].word);
    const typed = (await recordsOn(page)).filter(({ key }) => key.split('/')[1] === `check-${name}`);
    expect(comparable(typed)).toEqual(comparable(recordsOf(name)));
    const gathered = assemble(shelfOf(typed), builtIn, expected.walk);
    if (!gathered.ok) throw new Error(gathered.error.kind);
    const { outcomes, verdict } = score(gathered.value.input);
    expect(shownCall(verdict)).toBe(expected.verdict.call);
    expect(verdict.meanwhile).toBe(expected.verdict.meanwhile);
    expect(verdict.settled).toBe(expected.verdict.settled);
    for (const { place, item, call, percent, open } of expected.items) {
      const outcome = outcomes.find(({ state }) => state.place === place && state.item.id === item);
      expect(outcome?.atLeast, `${place} ${item}`).toBe(call);
      expect(outcome?.open.map(({ kind }) => kind)).toEqual(open);
      if (percent !== undefined) expect(outcome?.state.wear?.percent).toBeCloseTo(percent, 2);
    }
  }
  console.log(`published walks typed in ${browserName}: ${names.join(', ')}`);
});
