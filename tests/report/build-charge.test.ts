import { describe, expect, test } from 'vitest';
import { chargeList } from '../../src/core/rental.ts';
import type { RentalInput } from '../../src/core/rental-input.ts';
import { placeSchema } from '../../src/core/keys.ts';
import { buildCharge, type ChargeReportInput } from '../../src/report/build-charge.ts';
import { toldBy } from '../../src/reference/wear-or-damage.ts';
import { makeDates } from '../../src/words/dates.ts';
import { charge as words, chargeOpenWords, notChargedWords } from '../../src/words/en/charge.ts';
import { makeFormatter } from '../../src/words/formatter.ts';
import { entered } from '../core/made.ts';
import { cut, hireOf, lugs, sound } from '../core/rental-made.ts';
import type { Report } from '../../src/report/blocks.ts';
import { textsOf as allTexts } from './model-text.ts';

const format = makeFormatter({ locale: 'en-GB', depth: 'mm', length: 'mm', mass: 'kg' });

/** Spaces that do not break are spaces to a reader. */
const textsOf = (report: Report) => allTexts(report).map((text) => text.replace(/[\u00a0\u202f]/g, ' '));

const ended = { utc: '2026-03-01T10:00:00Z', offsetMinutes: 60 };

const pageOf = (input: RentalInput, more: Partial<ChargeReportInput> = {}) =>
  buildCharge({
    list: chargeList(input),
    input,
    agreed: true,
    invented: false,
    handOut: { by: 'Ada', seal: undefined },
    returned: { by: 'Ben', seal: undefined },
    people: [],
    seals: [],
    toldBy,
    format,
    dates: makeDates('en-GB'),
    ...more,
  });

const worn = hireOf(
  lugs([20, 20]),
  lugs([35, 35]),
  { taxPercent: 20, replyDays: 14, keptDays: 30 },
  { finishedAt: ended },
);

const photo = (sha256: string, item: string) => ({
  sha256,
  photo: {
    v: 1 as const,
    type: 'image/jpeg' as const,
    bytes: 1,
    width: 1,
    height: 1,
    original: { sha256, bytes: 1 },
    shows: [{ place: placeSchema.parse('left.track'), item }],
    from: 'camera' as const,
  },
});

describe('the page of a charge list', () => {
  test('[CG1] the sum stands first, and every amount that makes it up', () => {
    const texts = textsOf(pageOf(worn));
    expect(texts[1]).toBe(words.toPay('€648'));
    expect(texts).toContain('€540');
    expect(texts).toContain('€108');
    expect(texts).toContain('Left track: wear');
  });

  test('[CG2] a line says both readings, what was used, allowed and beyond, the price and where it is from', () => {
    const texts = textsOf(pageOf(worn));
    for (const text of [
      '18 mm, 18 mm – 20 % worn',
      '16.5 mm, 16.5 mm – 35 % worn',
      '15 % of its life, ± 0 %',
      '€6,000',
    ])
      expect(texts).toContain(text);
    expect(texts.join('\n')).toContain(entered.text);
    expect(texts).toContain(words.reckonedExcess(words.percentOf('9')));
  });

  test('[CG3] who may object until when, and until when parts are kept', () => {
    const texts = textsOf(pageOf(worn));
    expect(texts).toContain('15 Mar 2026');
    expect(texts).toContain('31 Mar 2026');
  });

  test('[CG4] both pictures follow each other, and one that is missing is said', () => {
    const hire = hireOf([...sound, ...lugs([20, 20])], [...cut, ...lugs([20, 20])]);
    const before = 'ab'.repeat(32);
    const after = 'cd'.repeat(32);
    const taken = (out: boolean) =>
      pageOf({
        ...hire,
        handOut: hire.handOut && { ...hire.handOut, photos: out ? [photo(before, 'cord')] : [] },
        returned: { ...hire.returned, photos: [photo(after, 'cord')] },
      });
    const pictures = taken(true).blocks.flatMap((block) => (block.kind === 'photo' ? [block.sha256] : []));
    expect(pictures).toEqual([before, after]);
    expect(textsOf(taken(false))).toContain(words.noPairOut);
  });

  test('[CG5] what is not charged is there with why', () => {
    const texts = textsOf(pageOf(hireOf(lugs([20, 20]), lugs([25, 25]))));
    expect(texts).toContain(notChargedWords['within-allowance']);
    expect(texts).toContain(words.nothing);
  });

  test('[CG6] without a hand-out walk it says what can be charged, and charges nothing', () => {
    const hire = hireOf([], [...cut, ...lugs([40, 40])]);
    const texts = textsOf(pageOf({ ...hire, handOut: undefined }, { handOut: undefined }));
    expect(texts).toContain(words.noHandOutOnRecord);
    expect(texts).toContain(chargeOpenWords['no-hand-out']);
    expect(texts[1]).toBe(words.nothingYet);
  });

  test('[CG8] while any line is open there is no sum yet, and what is missing says so', () => {
    const hire = hireOf([...sound, ...lugs([20, 20])], [...cut, ...lugs([20, 20])], { parts: [] });
    const texts = textsOf(pageOf(hire, { agreed: false }));
    expect(texts).toContain(chargeOpenWords['no-price']);
    expect(texts[1]).toBe(words.nothingYet);
    expect(texts).toContain(words.noContractOnRecord);
  });

  test('[CG7] who objects is there in their own words', () => {
    const texts = textsOf(
      pageOf(worn, {
        people: [
          {
            v: 1,
            role: 'renter',
            name: 'Cy',
            way: 'refused',
            objection: 'it was cut before',
            salt: '0'.repeat(64),
          },
        ],
      }),
    );
    expect(texts.join('\n')).toContain('it was cut before');
  });
});
