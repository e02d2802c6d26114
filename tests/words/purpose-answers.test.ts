import { describe, expect, test } from 'vitest';
import { damagesOf } from '../../src/core/rental-damage.ts';
import { score } from '../../src/core/score.ts';
import type { PlacedReading } from '../../src/core/states.ts';
import { isRental, purposes, type Purpose } from '../../src/core/walk.ts';
import { beforeWords, handOutVerdict, rentalVerdict } from '../../src/words/en/rental-verdict.ts';
import { verdict } from '../../src/words/en/verdict.ts';
import { makeFormatter } from '../../src/words/formatter.ts';
import { answersOf, type Answer, type Judged } from '../../src/words/purpose-answers.ts';
import { rentalAnswers, type RentalFacts } from '../../src/words/rental-answers.ts';
import { finding, inputOf, machineOf, read, ruleOf, rulesOf, walkOf } from '../core/made.ts';

const format = makeFormatter({ locale: 'en', depth: 'mm', length: 'mm', mass: 'kg' });
const machine = machineOf('rubber-cored');
const rules = rulesOf([ruleOf('bent', 'guards', { finding: 'guards', is: ['bent'] }, 'repair', 'work')]);
const bent = read('left.frame', 'guards', finding('bent'));

function answers(
  purpose: Purpose,
  readings: readonly PlacedReading[],
  facts: RentalFacts = { missing: [], unmarked: 0, damages: [], shortHire: [] },
): readonly Answer[] {
  const walk = walkOf({ purpose, depth: 'short' });
  const scored = score(inputOf({ machine, walk, rules, readings: [...readings] }));
  const rental = isRental(purpose) ? { answers: (of: Judged) => rentalAnswers(of, facts) } : undefined;
  return answersOf({ walk, machine, scored, format, rental, reasonText: () => '' });
}

const said = (given: readonly Answer[], ask: string): Answer['say'] | undefined =>
  given.find((each) => each.ask === ask)?.say;

describe('the questions that a purpose asks first', () => {
  test('[RW1] a hand-out answers whether it is fit to go out, whether the proof is complete, and what it goes with', () => {
    const asked = answers('hand-out', [bent]);
    expect(asked.map(({ ask }) => ask).slice(0, 3)).toEqual([
      handOutVerdict.fit,
      handOutVerdict.proof,
      handOutVerdict.goesWith,
    ]);
    expect(said(asked, handOutVerdict.fit)).toBe(rentalVerdict.outNotKnown);
    expect(said(asked, handOutVerdict.proof)).toMatch(/^No: \d+ items are still open/);
    expect(said(asked, handOutVerdict.goesWith)).toEqual(['guards, left track frame']);
    expect(said(answers('hand-out', []), handOutVerdict.goesWith)).toBe(handOutVerdict.goesSoundSoFar);
  });

  test('[RW1] whatever a walk is for, what was not seen is said', () => {
    for (const purpose of purposes) {
      const lists = answers(purpose, [bent]).map(({ say }) => say);
      expect(lists, purpose).toContainEqual(expect.arrayContaining(['cord']));
      expect(lists, purpose).not.toContain(verdict.nothingOpen);
    }
  });

  const facts = (readings: readonly PlacedReading[], more: Partial<RentalFacts> = {}): RentalFacts => {
    const handedOut = score(inputOf({ machine, readings: [...readings] })).outcomes;
    const { outcomes } = score(inputOf({ machine, readings: [bent] }));
    const damages = damagesOf(outcomes, handedOut);
    return { missing: [], unmarked: 0, handOut: { day: 'Nov 3, 2026' }, damages, shortHire: [], ...more };
  };

  test('[RW8] missing photos and marks that nobody described are missing proof', () => {
    const short = (more: Partial<RentalFacts>) =>
      said(answers('hand-out', [bent], facts([], more)), handOutVerdict.proof);
    expect(short({ missing: ['plate'] })).toMatch(/; 1 photo of the sequence is missing$/);
    expect(short({ missing: ['plate', 'meter'], unmarked: 3 })).toMatch(
      /; 2 photos of the sequence are missing; 3 sizes do not say where their mark is$/,
    );
  });

  test('[RC59] a hand-out says beforehand of which parts so short a hire cannot tell wear', () => {
    const part = { job: 'renew-track', side: 'left', number: undefined } as const;
    const shortHire = [{ ...part, usualPercent: 2.5, offPercent: 8.2 }];
    const [line] = said(answers('hand-out', [], facts([], { shortHire })), handOutVerdict.shortHire) ?? [];
    expect(line).toMatch(/^Left track: .*about 3\s%.*off by 8\s%/);
    expect(said(answers('hand-out', [], facts([])), handOutVerdict.shortHire)).toBeUndefined();
  });

  const sound = read('left.frame', 'guards', finding('sound'));
  test.each([
    ['sound', [sound], rentalVerdict.chargeNew(1)],
    ['was-there', [bent], rentalVerdict.chargeOld],
    ['not-looked-at', [], rentalVerdict.chargeOld],
  ] as const)('[RW9] damage that was %s at hand-out is told so', (was, then, says) => {
    const asked = answers('rental-return', [bent], facts(then));
    expect(said(asked, rentalVerdict.chargeable)).toBe(says);
    expect(said(asked, verdict.reasons)).toEqual([`guards, left track frame: ${beforeWords[was]}`]);
    expect(said(asked, '')).toBe(rentalVerdict.handOut('Nov 3, 2026'));
  });

  test('[RW9] without a hand-out walk damage is listed and charged only if both sides agree, and it says so', () => {
    const asked = answers('rental-return', [bent]);
    expect(said(asked, rentalVerdict.chargeable)).toBe(rentalVerdict.chargeDamage(1));
    expect(said(asked, verdict.reasons)).toEqual(['guards, left track frame']);
    expect(said(asked, '')).toBe(rentalVerdict.noHandOut);
  });
});
