import { describe, expect, test } from 'vitest';
import { score } from '../../src/core/score.ts';
import type { PlacedReading } from '../../src/core/states.ts';
import { purposes, type Purpose } from '../../src/core/walk.ts';
import { handOutVerdict, rentalVerdict, verdict } from '../../src/words/en/verdict.ts';
import { makeFormatter } from '../../src/words/formatter.ts';
import { answersOf, type Answer } from '../../src/words/purpose-answers.ts';
import { finding, inputOf, machineOf, read, ruleOf, rulesOf, walkOf } from '../core/made.ts';

const format = makeFormatter({ locale: 'en', depth: 'mm', length: 'mm', mass: 'kg' });
const machine = machineOf('rubber-cored');
const rules = rulesOf([ruleOf('bent', 'guards', { finding: 'guards', is: ['bent'] }, 'repair', 'work')]);
const bent = read('left.frame', 'guards', finding('bent'));

function answers(purpose: Purpose, readings: readonly PlacedReading[]): readonly Answer[] {
  const walk = walkOf({ purpose, depth: 'short' });
  const scored = score(inputOf({ machine, walk, rules, readings: [...readings] }));
  return answersOf({ walk, machine, scored, format, reasonText: () => '' });
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
    expect(said(asked, handOutVerdict.proof)).toMatch(/^No: \d+ findings/);
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
});
