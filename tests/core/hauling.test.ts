import { describe, expect, test } from 'vitest';
import { ruleAnswer } from '../../src/core/hauling-rules.ts';
import { tieAnswers, type Ties } from '../../src/core/hauling-ties.ts';
import { articleSum, deckSum, ratingAnswers, truckSum, wholeSum, type Haul } from '../../src/core/hauling.ts';
import { haulRules, usTies } from '../../src/reference/hauling.ts';

const rig: Haul = {
  on: 'trailer',
  operatorKg: 75,
  noCombination: false,
  kg: {
    machine: 5000,
    attachments: 400,
    fuel: 0,
    chains: 60,
    trailer: 1200,
    truck: 3000,
    nose: 500,
    'trailer-gross': 6500,
    'truck-gross': 3500,
  },
};
const without = (field: keyof Haul['kg']): Haul => {
  const { [field]: _gone, ...kg } = rig.kg;
  return { ...rig, kg };
};
const on = (rating: string, haul: Haul) => ratingAnswers(haul).find((each) => each.rating === rating);

describe('a haul added up', () => {
  test('[HL6] the driver goes off, all else goes on, line by line', () => {
    expect(wholeSum(rig)).toEqual({
      kg: 5000 - 75 + 400 + 60 + 1200 + 3000,
      lines: [
        { field: 'machine', kg: 5000 },
        { field: 'operator', kg: -75 },
        { field: 'attachments', kg: 400 },
        { field: 'fuel', kg: 0 },
        { field: 'chains', kg: 60 },
        { field: 'trailer', kg: 1200 },
        { field: 'truck', kg: 3000 },
      ],
      open: [],
    });
    expect(truckSum(rig).kg).toBe(3500);
  });

  test('[HL6] what is not entered is no 0: the sum says what it lacks', () => {
    const { kg, open, lines } = deckSum(without('attachments'));
    expect([kg, open]).toEqual([4985, ['attachments']]);
    expect(lines.map(({ field }) => field)).not.toContain('attachments');
  });

  test('[HL6] without the machine no driver is taken off the rest, nor more than it weighs', () => {
    expect(deckSum(without('machine')).kg).toBe(460);
    expect(deckSum({ ...rig, kg: { machine: 50, attachments: 0, fuel: 0, chains: 0 } }).kg).toBe(0);
  });

  test('[HL24] ties hold the machine by its whole mass, its driver in it', () => {
    expect(articleSum(rig).kg).toBe(5400);
    expect(articleSum({ ...rig, operatorKg: 0 })).toEqual(articleSum(rig));
  });

  test('[HL6] on the truck itself there is no trailer, and the truck carries the load', () => {
    const truck: Haul = { ...rig, on: 'truck' };
    expect(wholeSum(truck).kg).toBe(5385 + 3000);
    expect(ratingAnswers(truck).map(({ rating }) => rating)).toEqual(['truck-gross']);
    expect(ratingAnswers(rig).map(({ rating }) => rating)).toEqual([
      'trailer-gross',
      'truck-tow',
      'truck-gross',
      'combination',
    ]);
  });
});

describe('a haul against its ratings', () => {
  test('[HL7] it says over or within, and by how much; at the rating it is within', () => {
    expect(on('trailer-gross', rig)).toMatchObject({ kind: 'over', byKg: 85, ratingKg: 6500 });
    expect(on('truck-gross', rig)).toMatchObject({ kind: 'within', byKg: 0 });
    const more = { ...rig, kg: { ...rig.kg, 'trailer-gross': 7000 } };
    expect(on('trailer-gross', more)).toMatchObject({ kind: 'within', byKg: 415 });
  });

  test('[HL7] over for sure is over though something is open, within is not', () => {
    const heavy = { ...rig, kg: { ...without('chains').kg, machine: 6000 } };
    expect(on('trailer-gross', heavy)).toMatchObject({ kind: 'over', byKg: 1025 });
    const light = { ...rig, kg: { ...without('chains').kg, machine: 3000 } };
    expect(on('trailer-gross', light)).toMatchObject({ kind: 'open', open: ['chains'] });
  });

  test('[HL7] a payload counts where a plate gives one', () => {
    const trailer = { ...rig, kg: { ...rig.kg, 'trailer-payload': 5300 } };
    expect(on('trailer-payload', trailer)).toMatchObject({ kind: 'over', byKg: 85 });
    const truck: Haul = { ...rig, on: 'truck', kg: { ...rig.kg, 'truck-payload': 5400 } };
    expect(on('truck-payload', truck)).toMatchObject({ kind: 'within', byKg: 15 });
  });

  test('[HL7] a rating that was not looked up is open, one that no plate shows is said so', () => {
    expect(on('truck-tow', rig)).toMatchObject({ kind: 'open', open: ['truck-tow'] });
    expect(on('combination', rig)).toMatchObject({ kind: 'open' });
    expect(on('combination', { ...rig, noCombination: true })).toMatchObject({ kind: 'no-rating' });
  });
});

describe('a haul against the law', () => {
  const [licence] = haulRules.us;
  test('[HL8] an answer lists of each vehicle the highest limit that is broken and the lowest that is kept, once', () => {
    const answer = licence && ruleAnswer({ ...rig, noCombination: true }, licence);
    expect(answer?.lines.map(({ of, known, kept }) => [of, known.kg, kept])).toEqual([
      ['truck', 3500, 'yes'],
      ['combination', 10_085, 'yes'],
      ['trailer', 6585, 'no'],
    ]);
    expect(answer).toMatchObject({ kind: 'step', step: 'no-cdl' });
  });

  test('[HL8] of many steps passed only the telling limits stand there', () => {
    const [european] = haulRules.eu;
    const haul = { ...rig, kg: { 'truck-gross': 3500, 'trailer-gross': 3501 } };
    const answer = european && ruleAnswer(haul, european);
    expect(answer?.lines.map(({ of, mass, kept }) => [of, mass.value, kept])).toEqual([
      ['truck', 3500, 'yes'],
      ['trailer', 3500, 'no'],
      ['combination', 4250, 'no'],
      ['combination', 12_000, 'yes'],
    ]);
  });

  test('[HL8] it is open by what it still needs, and certain where that no longer matters', () => {
    const open = licence && ruleAnswer(without('truck-gross'), licence);
    expect(open).toMatchObject({ kind: 'open', atLeast: 'no-cdl' });
    expect(open?.kind === 'open' && open.open).toContain('truck-gross');
    const [, safety] = haulRules.us;
    expect(safety && ruleAnswer(without('truck-gross'), safety)).toMatchObject({
      kind: 'step',
      step: 'safety-rules',
    });
  });
});

describe('ties', () => {
  const none = { count: undefined, wllKg: undefined };
  const ties = (given: Partial<Ties>): Ties => ({
    direct: none,
    over: none,
    lengthMm: undefined,
    blocked: false,
    ...given,
  });
  const article = (kg: number, open: readonly 'machine'[] = []) => ({ kg, lines: [], open });

  test('[HL9] nothing entered is open in every part, and names what is wanted', () => {
    const { count, byLength, aggregate } = tieAnswers(usTies, article(0, ['machine']), ties({}));
    expect(count).toMatchObject({ kind: 'open', open: ['direct-count', 'over-count', 'machine'] });
    expect(byLength).toMatchObject({ kind: 'open', open: ['direct-count', 'over-count', 'length'] });
    expect(aggregate).toMatchObject({ kind: 'open', open: ['direct-count', 'over-count', 'machine'] });
  });

  test('[HL9] four ties are enough though the mass is open, and the sum waits for it', () => {
    const four = ties({ direct: { count: 4, wllKg: 2000 } });
    const { count, aggregate } = tieAnswers(usTies, article(2000, ['machine']), four);
    expect(count.kind).toBe('enough');
    expect(aggregate).toMatchObject({ kind: 'open', have: 4000 });
  });

  test('[HL9] a sum that is enough without the ties still open is enough; one that is not waits for them', () => {
    const direct = { count: 4, wllKg: 2000 };
    expect(tieAnswers(usTies, article(8000), ties({ direct })).aggregate.kind).toBe('enough');
    const waits = tieAnswers(usTies, article(8001), ties({ direct, over: { count: 1, wllKg: undefined } }));
    expect(waits.aggregate).toMatchObject({ kind: 'open', open: ['over-wll'] });
    const over = { count: 0, wllKg: undefined };
    expect(tieAnswers(usTies, article(8001), ties({ direct, over })).aggregate.kind).toBe('short');
  });

  test('[HL9] a tie below 5,000 lb on a heavy machine is weak, on a light one it is not said', () => {
    const direct = { count: 4, wllKg: 2267 };
    expect(tieAnswers(usTies, article(4536), ties({ direct })).weak).toBe(true);
    expect(tieAnswers(usTies, article(4535), ties({ direct })).weak).toBe(false);
    expect(tieAnswers(usTies, article(4536), ties({ direct: { count: 4, wllKg: 2268 } })).weak).toBe(false);
  });
});
