import { describe, expect, test } from 'vitest';
import { appraise } from '../../src/core/appraisal.ts';
import type { AppraisalSettings } from '../../src/core/appraisal-settings.ts';
import type { RecordKey } from '../../src/core/keys.ts';
import { assert } from '../../src/core/result.ts';
import { appraisalPage, type AppraisalPageInput } from '../../src/report/build-appraisal.ts';
import { appraisalText } from '../../src/words/appraisal-text.ts';
import { appraisal as words } from '../../src/words/en/appraisal.ts';
import { change, demoMap, mini, steel, type Records } from '../core/ahead-made.ts';
import { chosen } from '../core/appraisal-made.ts';
import { demoInput, linesOf } from './report-made.ts';

function pageInput(
  walk: RecordKey,
  settings: Partial<AppraisalSettings> = {},
  records: Records = demoMap(),
): AppraisalPageInput {
  const input = demoInput(walk, undefined, records);
  const { outlook, scored } = input;
  assert(outlook, 'an outlook');
  const { shape } = input.input.machine;
  return { ...input, outlook, appraisal: appraise({ shape, scored, outlook, settings: chosen(settings) }) };
}

const pageOf = (...of: Parameters<typeof pageInput>): string =>
  linesOf(appraisalPage(pageInput(...of))).join('\n');

describe('[N10] the page for both sides', () => {
  test('[AP20] says the three sums first, then every line with its reasons and where its figures are from', () => {
    const page = pageOf(steel);
    const places = [
      words.deduct,
      words.value,
      words.deductLines,
      words.spendLines,
      words.valueLines,
      words.valueOpen,
      words.stated,
      words.meter,
      words.signs,
      words.notVerified,
      words.basis,
    ].map((each) => page.indexOf(each));
    expect(places.every((at) => at >= 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
    expect(page).toContain('estimate');
    expect(page).toContain('Invented round starting figure for the class');
    expect(page).toContain('EUR');
  });

  test('[AP21] lines stand up: their amounts add to the sum that is deducted', () => {
    const { appraisal, format, outlook } = pageInput(mini, { saleable: 60 });
    const { deduction } = appraisal;
    const told = appraisalText({ appraisal, rubber: outlook.rubber, format });
    const cents = told.deduction.map(({ amount }) => Number(amount.replace(/[^\d.]/g, '')) * 100);
    expect(cents.reduce((sum, each) => sum + each, 0)).toBe(deduction.minor);
    expect(told.deduction).toHaveLength(3);
  });

  test('[AP22] without prices every sum says open with what to do, and no amount stands there', () => {
    const gone = change(demoMap(), 'demo/machine/mini', { prices: 'price/gone' });
    const page = pageOf(mini, { saleable: 60 }, gone);
    expect(page).toContain(words.open);
    expect(page).not.toMatch(/€\s?\d/);
    expect(page).toContain('not on this phone');
  });

  test('[AP23] a reading within its own error of the line says so, with what it would add', () => {
    const page = pageOf(steel);
    expect(page).toContain('Read them again before you agree');
    expect(page).toContain(words.close);
    const far = pageOf(mini, { saleable: 0, stated: { kind: 'percent', percent: 0 } });
    expect(far).not.toContain(words.close);
  });

  test('[AP24] the words take no side: nothing tells a buyer or a seller what to do', () => {
    expect(pageOf(steel)).not.toMatch(/haggle|bargain|walk away|too expensive|good deal|great/i);
  });
});
