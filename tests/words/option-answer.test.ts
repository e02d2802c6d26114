import { describe, expect, test } from 'vitest';
import type { Option } from '../../src/core/option.ts';
import type { Use } from '../../src/core/use.ts';
import { optionAnswer as words } from '../../src/words/en/options.ts';
import { answerText } from '../../src/words/option-answer.ts';
import { againstText, settleTexts } from '../../src/words/option-fit-text.ts';
import { standingText } from '../../src/words/option-standing.ts';
import { optionLines } from '../../src/words/option-lines.ts';
import { makeFormatter } from '../../src/words/formatter.ts';
import { answered, mini, optionOf, priced, rubberNow, rubberOrSteel } from '../core/options-made.ts';

const format = makeFormatter({ locale: 'en-GB', depth: 'mm', length: 'mm', mass: 'kg' });
const nameOf = (id: string): string => id;

const told = (use: Use, options: Readonly<Record<string, Option>> = rubberOrSteel) => {
  const result = answered({ use, options });
  return answerText({ result, nameOf, groundKnown: use.ground !== undefined, format });
};
const rock: Use = { ground: { rock: 1 }, sharp: true };

describe('the answer in sentences', () => {
  test('[OS30] with nothing known it is labelled as the default', () => {
    expect(told({})).toMatchObject({ answer: words.default('rubber with cores'), flips: [], usual: [] });
  });

  test('[OS31] a winner stands with its cost, the runner-up, how sure that is and what would turn it', () => {
    const { answer, why, flips, usual } = told(rock);
    expect(answer).toMatch(/^Steel comes first: about €\d/);
    expect(why[0]).toMatch(/^Runner-up: rubber, about €\d/);
    expect(why.some((line) => line.startsWith('In eight of ten cases'))).toBe(true);
    expect(flips.length).toBeGreaterThan(0);
    expect(usual[0]).toBe(words.defaultBeside('rubber with cores'));
  });

  test('[OS32] what cannot be told apart says so, and what would decide it', () => {
    const { answer, decides } = told(
      { ground: { mixed: 1 } },
      { one: optionOf('steel'), two: optionOf('steel') },
    );
    expect(answer).toBe(words.tooClose(words.and(['one', 'two'])));
    expect(decides).toEqual([words.decidesPrices('one and two'), words.decidesLives('one and two')]);
  });

  test('[OS37] of those too close to call none is named the cheapest', () => {
    const result = answered({
      use: { ground: { mixed: 1 } },
      options: { one: optionOf('steel'), two: optionOf('steel') },
    });
    const standings = result.ranked.map((each) => standingText(each, result, false));
    expect(standings).toEqual([words.close1, words.close1]);
  });

  test('[OS33] one whose cost is open is no loser: the others are named', () => {
    const { answer } = told(rock, {
      rubber: optionOf('rubber-cored'),
      steel: optionOf('steel', priced(1, 'USD')),
    });
    expect(answer).toMatch(/^Rubber: about €.* What steel would cost is open\.$/);
  });

  test('[OS34] where nothing can go on, that is the answer, and each says why', () => {
    const use = { ...rock, noMarks: true };
    const { answer } = told(use, { steel: optionOf('steel') });
    expect(answer).toBe(words.noneFits);
    const [steel] = answered({ use, options: { steel: optionOf('steel') } }).others;
    expect(steel?.fit.against.map((why) => againstText(why, format))).toEqual([
      'Paving must not be marked, and steel marks it.',
    ]);
  });

  test('[OS35] what is to be settled names the fields, once for the machine and once for the option', () => {
    const [rubber] = answered({
      current: rubberNow,
      use: rock,
      options: { rubber: optionOf('rubber-cored') },
    }).ranked;
    const lines = settleTexts(rubber?.fit.toSettle ?? [], format);
    expect(lines).toHaveLength(2);
    expect(lines.every((line) => line.includes('the pitch') && line.includes('where the guides run'))).toBe(
      true,
    );
  });

  test('[OS36] every figure of an option has a source, or is counted from those that have', () => {
    const { ranked } = answered({ use: rock, options: rubberOrSteel });
    const needs = { mean: 'theWidth', peak: 'theWidth' } as const;
    for (const answer of ranked) {
      const of = {
        hoursAYear: 600,
        machineKg: mini.massKg,
        hasTracks: false,
        pressure: () => needs,
        nameOf,
        format,
      };
      const bare = optionLines(answer, of).filter(({ sources }) => sources.length === 0);
      expect(bare.map(({ name }) => name)).toEqual([words.ofIt, words.meanPressure, words.peakPressure]);
    }
  });
});
