import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { flipsOf, type Flip } from '../../src/core/flips.ts';
import type { Condition, Rule } from '../../src/core/rules.ts';
import { factsOf, outcomesOf, score, type AllFacts } from '../../src/core/score.ts';
import { stateKey, type ItemState, type PlacedReading, type ScoreInput } from '../../src/core/states.ts';
import { callOf, shownCall, type MachineCall } from '../../src/core/verdict.ts';
import { whatIf } from '../../src/core/what-if.ts';
import { assert } from '../../src/core/result.ts';
import { wear } from '../../src/core/wear.ts';
import { lawOfWalks } from './law.ts';
import {
  bandOf,
  entryOf,
  finding,
  inputOf,
  item,
  limitAt,
  mm,
  read,
  ruleOf,
  rulesOf,
  sag,
  sheetOf,
} from './made.ts';
import { randomWalks, sizeReading } from './random-walks.ts';

function flips(input: ScoreInput): readonly Flip[] {
  assert(input.rules, 'there are rules');
  return flipsOf(factsOf(input), input.rules, score(input));
}

const lug = (value: number, more = {}) => read('left.track', 'lug-depth', mm(value), { uMm: 0.5, ...more });
const sheet = sheetOf(
  [entryOf('lug-depth', 20, 10), entryOf('roller-tread', 200, 160)],
  [bandOf(10, 20, { derailAbove: 40 })],
);

/** Rules that cover nothing else, so that nothing open stands in the way of a call. */
const made = (rules: Rule[], readings: PlacedReading[], more = {}) =>
  inputOf({ sheet, rules: rulesOf(rules), readings, ...more });

const worn = (percent: number, call: Rule['call'] = 'replace', meanwhile: Rule['meanwhile'] = 'work') =>
  ruleOf(`worn.${percent}`, 'lug-depth', { worn: 'lug-depth', op: '>=', percent }, call, meanwhile);

const short = ([flip]: readonly Flip[]) =>
  flip && { by: flip.byMm, to: flip.toMm, call: flip.call, within: flip.within };

describe('[N4] the re-measurement that could flip the verdict', () => {
  test('[F50] is the smallest change past a threshold, with the call that the machine would then have', () => {
    const found = flips(made([worn(80), worn(50, 'recheck')], [lug(14)]));
    expect(found).toHaveLength(1);
    expect(found[0]?.state.item.id).toBe('lug-depth');
    expect(short(found)?.by).toBeCloseTo(1.0001, 6);
    expect(short(found)).toMatchObject({ to: 15.0001, call: 'open', within: false });
  });

  test('[F51] lies within the uncertainty of the reading up to two standard ones', () => {
    const within = (uMm: number) => short(flips(made([worn(80)], [lug(13, { uMm })])))?.within;
    expect([within(0.6), within(0.5001), within(0.5), within(0.4)]).toEqual([true, true, false, false]);
  });

  test('[F52] is none where no reading could turn it', () => {
    expect(
      flips(
        made(
          [worn(50, 'repair'), ruleOf('b', 'cord', { finding: 'cord', is: ['cut'] }, 'park', 'nothing')],
          [lug(14), read('left.track', 'cord', finding('cut'))],
        ),
      ),
    ).toEqual([]);
    expect(flips(made([], [lug(14)]))).toEqual([]);
    expect(flips(made([worn(50)], []))).toEqual([]);
  });

  test('[F53] may turn the meanwhile alone', () => {
    const found = flips(made([worn(50, 'replace', 'work'), worn(80, 'repair', 'move-only')], [lug(13)]));
    expect(short(found)).toMatchObject({ call: 'replace' });
    expect(short(found)?.to).toBeCloseTo(11.9999, 6);
  });

  test('[F54] of a threshold in a rule’s own unit', () => {
    const rule = ruleOf('a', 'lug-depth', { reading: 'lug-depth', op: '<', value: 16, unit: 'in/32' });
    expect(short(flips(made([rule], [lug(14)])))).toMatchObject({ to: 12.6999, call: 'repair' });
  });

  test.each([
    ['all', { all: [{ worn: 'lug-depth', op: '>=', percent: 80 }] }],
    ['any', { any: [{ worn: 'lug-depth', op: '>=', percent: 80 }] }],
    ['not', { not: { worn: 'lug-depth', op: '<', percent: 80 } }],
  ] as const)('[F55] within %s', (_, when) => {
    const rule = ruleOf('a', 'lug-depth', JSON.parse(JSON.stringify(when)), 'replace');
    expect(short(flips(made([rule], [lug(13)])))?.to).toBeCloseTo(11.9999, 6);
  });

  test('[F56] of a limit of another meaning, and by the load', () => {
    const limits = [
      limitAt(10, { loads: ['light'] }),
      limitAt(14, { loads: ['heavy'] }),
      limitAt(5, { means: 'destruction', hundred: false }),
    ];
    const rule = (of?: 'destruction') =>
      ruleOf('a', 'lug-depth', { worn: 'lug-depth', op: '>=', percent: 100, ...(of && { of }) }, 'park');
    const to = (rules: Rule[], load?: 'light' | 'heavy') => {
      const input = made(rules, [lug(17)], { sheet: sheetOf([entryOf('lug-depth', 20, limits)]) });
      return short(flips({ ...input, walk: { ...input.walk, ...(load && { load }) } }))?.to;
    };
    expect(to([rule()], 'light')).toBeCloseTo(9.9999, 6);
    expect(to([rule()], 'heavy')).toBeCloseTo(13.9999, 6);
    expect(to([rule('destruction')], 'light')).toBeCloseTo(4.9999, 6);
  });

  const sagRules = [
    ruleOf('tight', 'sag', { sag: 'tight' }, 'adjust', 'light-work'),
    ruleOf('loose', 'sag', { sag: 'loose' }, 'adjust', 'light-work'),
    ruleOf('off', 'sag', { sag: 'derailing' }, 'park', 'move-only'),
  ];

  test.each([
    [12, 9.9999, 'adjust'],
    [18, 20.0001, 'adjust'],
    [22, 20, 'open'],
    [39, 40.0001, 'park'],
    [45, 40, 'adjust'],
    [8, 10, 'open'],
  ])('[F57] of a sag of %d mm: at %d mm it is %s', (value, to, call) => {
    const found = flips(made(sagRules, [read('left.track', 'sag', sag(value))]));
    expect(found[0]?.toMm).toBeCloseTo(to, 3);
    expect(found[0]).toMatchObject({ call, within: false });
  });

  test('[F58] of sag by its value, which a rule may name', () => {
    const rule = ruleOf('a', 'sag', { reading: 'sag', op: '>', value: 30, unit: 'mm' });
    expect(short(flips(made([rule], [read('left.track', 'sag', sag(29))])))?.to).toBeCloseTo(30.0001, 6);
  });

  test('[F59] the nearest by its own uncertainty comes first', () => {
    const rules = [worn(80), ruleOf('b', 'roller-tread', { worn: 'roller-tread', op: '>=', percent: 100 })];
    const roller = (uMm: number) =>
      read(
        'left.bottom-roller.1',
        'roller-tread',
        { kind: 'tread', centreMm: 182, linkMm: 100, typed: ['182', '100'], unit: 'mm' },
        { uMm },
      );
    const first = (uMm: number) => flips(made(rules, [lug(12.5), roller(uMm)]))[0]?.state.item.id;
    expect([first(0.5), first(40)]).toEqual(['lug-depth', 'roller-tread']);
  });

  test('[F60] what has no uncertainty of its own is put among the others by a twentieth of its value', () => {
    const rules = [...sagRules, worn(80)];
    const first = (uMm: number) =>
      flips(made(rules, [lug(12.5, { uMm }), read('left.track', 'sag', sag(21))]))[0]?.state.item.id;
    // Sag is 1 mm from its edge of 20 mm; the lug 0.5 mm.
    expect([first(0.2), first(1)]).toEqual(['sag', 'lug-depth']);
  });

  test('[F61] a better worst sample is still judged by the next one', () => {
    const readings = [12, 11, 14].map((value, i) => lug(value, { n: i + 1 }));
    expect(flips(made([worn(70)], readings))).toEqual([]);
    expect(short(flips(made([worn(85)], readings)))?.to).toBeCloseTo(11.5001, 6);
  });

  test('[F68] a worst sample of a part that grows is judged by the next largest', () => {
    const readings = [12, 15, 11].map((value, i) => lug(value, { n: i + 1 }));
    const growing = sheetOf([entryOf('lug-depth', 10, 20)]);
    expect(flips(made([worn(15)], readings, { sheet: growing }))).toEqual([]);
    expect(short(flips(made([worn(25)], readings, { sheet: growing })))?.to).toBeCloseTo(12.4999, 6);
  });

  test('[F69] no value counts for less than a millimetre', () => {
    const rules = [...sagRules, worn(80)];
    const first = (uMm: number) =>
      flips(made(rules, [lug(12.5, { uMm }), read('left.track', 'sag', sag(11))]))[0]?.state.item.id;
    // Sag is 1 mm from its edge of 10 mm; the lug 0.5 mm, which is 0.83 or 1.25 of twice its uncertainty.
    expect([first(0.3), first(0.2)]).toEqual(['lug-depth', 'sag']);
  });

  test('[F62] a size that would be questioned is no re-measurement', () => {
    const beyond = ruleOf('a', 'lug-depth', { worn: 'lug-depth', op: '>=', percent: 199 });
    expect(flips(made([beyond], [lug(5)]))).toHaveLength(1);
    const below = ruleOf('a', 'lug-depth', { worn: 'lug-depth', op: '<', percent: -31 });
    expect(flips(made([below], [lug(5)]))).toEqual([]);
    const negative = ruleOf('a', 'lug-depth', { reading: 'lug-depth', op: '<=', value: 0, unit: 'mm' });
    expect(flips(made([negative], [lug(5)]))).toEqual([]);
  });

  test('[F63] while a clash decides the verdict there is none', () => {
    const parted = read('left.track', 'cord', finding('cut'));
    const rules = [worn(80), ruleOf('b', 'cord', { finding: 'cord', is: ['cut'] }, 'park', 'nothing')];
    const input = made(rules, [lug(13), read('left.track', 'cord', finding('none'))]);
    expect(flips(input)).toHaveLength(1);
    expect(flips({ ...input, clashes: [parted] })).toEqual([]);
  });
});

/** The call of a machine of which one state is another, by scoring all of it again. */
function scoredAgain(
  facts: AllFacts,
  rules: NonNullable<ScoreInput['rules']>,
  other: ItemState,
): MachineCall {
  const states = new Map(facts.states).set(stateKey(other.place, other.item.id), other);
  const peers = (facts.byItem.get(other.item.id) ?? []).map((each) =>
    each.place === other.place ? other : each,
  );
  const byItem = new Map(facts.byItem).set(other.item.id, peers);
  return callOf(outcomesOf({ ...facts, states, byItem }, rules));
}

describe('[N4] what if', { timeout: 60_000 }, () => {
  /** The call were the worst sample of an item at a place another. */
  function callWith(input: ScoreInput, place: string, itemId: string, value: number): MachineCall {
    assert(input.rules, 'there are rules');
    const facts = factsOf(input);
    const state = [...facts.states.values()].find((each) => each.place === place && each.item.id === itemId);
    assert(state?.sampled && state.limits, 'it was measured');
    const worst = { ...state.sampled.worst, mm: value };
    const wearThen = wear(state.limits, worst, undefined);
    return whatIf(
      facts,
      input.rules,
    )({ ...state, sampled: { ...state.sampled, worst }, ...(wearThen && { wear: wearThen }) });
  }
  const tread = (number: number, value: number) =>
    read(`left.bottom-roller.${number}`, 'roller-tread', sizeReading(item('roller-tread'), value));

  test('[F70] a part that is read otherwise leaves its neighbours as they are', () => {
    const rules = [ruleOf('a', 'roller-tread', { worn: 'roller-tread', op: '>=', percent: 100 }, 'replace')];
    const input = made(rules, [tread(1, 150), tread(2, 190)]);
    expect(callWith(input, 'left.bottom-roller.2', 'roller-tread', 195).atLeast).toBe('replace');
    expect(callWith(input, 'left.bottom-roller.1', 'roller-tread', 195).atLeast).toBe('run');
    expect(callWith(made(rules, [tread(1, 190)]), 'left.bottom-roller.1', 'roller-tread', 150).atLeast).toBe(
      'replace',
    );
  });

  test('[F71] rules that do not look at it go on counting for the same item', () => {
    const rules = [worn(80), ruleOf('b', 'lug-depth', { finding: 'edges', is: ['cut'] }, 'repair')];
    const input = made(rules, [lug(11), read('left.track', 'edges', finding('cut'))]);
    expect(callWith(input, 'left.track', 'lug-depth', 15).atLeast).toBe('repair');
    expect(callWith(input, 'left.track', 'lug-depth', 11).atLeast).toBe('replace');
  });

  test('[F73] what looks at it among other items is asked again, whichever comes first', () => {
    const cut: Condition = { finding: 'cord', is: ['cut'] };
    const low: Condition = { worn: 'lug-depth', op: '>=', percent: 80 };
    for (const all of [
      [cut, low],
      [low, cut],
    ]) {
      const input = made(
        [ruleOf('a', 'cord', { all }, 'replace')],
        [lug(15), read('left.track', 'cord', finding('cut'))],
      );
      expect(callWith(input, 'left.track', 'lug-depth', 11).atLeast).toBe('replace');
      expect(callWith(input, 'left.track', 'lug-depth', 13).atLeast).toBe('run');
    }
  });

  test('[F72] an item that no rule looks at changes nothing', () => {
    const input = made(
      [ruleOf('b', 'cord', { finding: 'cord', is: ['cut'] }, 'park')],
      [lug(11), read('left.track', 'cord', finding('cut'))],
    );
    expect(callWith(input, 'left.track', 'lug-depth', 1).atLeast).toBe('park');
  });

  test('[F64] asking again only what looks at the item gives what scoring all of it again gives', () => {
    lawOfWalks(
      fc.property(randomWalks, randomWalks, ({ input }, { input: otherInput }) => {
        assert(input.rules, 'there are rules');
        const facts = factsOf(input);
        const whatIfOf = whatIf(facts, input.rules);
        expect(whatIfOf()).toEqual(callOf(outcomesOf(facts, input.rules)));
        // The same machine, read otherwise: its states are put in one by one where they are as known and as open.
        const others = factsOf({ ...input, readings: otherInput.readings }).states;
        for (const [key, state] of facts.states) {
          const other = others.get(key);
          if (!other?.known || !state.known || (other.wear === undefined) !== (state.wear === undefined))
            continue;
          const put = { ...other, open: state.open };
          expect(whatIfOf(put)).toEqual(scoredAgain(facts, input.rules, put));
        }
      }),
      60,
    );
  });
});

const seen = ({ verdict }: ReturnType<typeof score>) => [shownCall(verdict), verdict.meanwhile] as const;

/** The walk with the spot of a reading measured once more, in place of what was read there. */
function remeasured(input: ScoreInput, state: ItemState, value: number): ScoreInput {
  const spot = state.sampled?.worst.spot;
  const isThere = ({ place, item, n, reading }: PlacedReading): boolean =>
    place === state.place && item === state.item.id && (spot === undefined || (reading.spot ?? n) === spot);
  const what = state.sag ? sag(value) : sizeReading(state.item, value);
  const again = read(state.place, state.item.id, what, { n: 99, ...(spot !== undefined && { spot }) });
  return { ...input, readings: [...input.readings.filter((each) => !isThere(each)), again] };
}

describe('[N4] flips on random walks', { timeout: 60_000 }, () => {
  test('[F65] really flip: the walk scored with the value has that call', () => {
    lawOfWalks(
      fc.property(randomWalks, ({ input }) => {
        const now = seen(score(input));
        for (const flip of flips(input)) {
          const then = seen(score(remeasured(input, flip.state, flip.toMm)));
          expect(then[0]).toBe(flip.call);
          expect(then).not.toEqual(now);
        }
      }),
      80,
    );
  });

  test('[F66] nothing nearer flips', () => {
    lawOfWalks(
      fc.property(randomWalks, fc.double({ min: 0, max: 1, noNaN: true }), ({ input }, part) => {
        const now = seen(score(input));
        for (const { state, byMm, toMm } of flips(input)) {
          if (Math.abs(byMm) < 3e-4) continue;
          const nearer = toMm - byMm + part * (byMm - Math.sign(byMm) * 2.5e-4);
          for (const value of [nearer, 2 * (toMm - byMm) - nearer]) {
            const scored = score(remeasured(input, state, value));
            const isAsked = scored.outcomes.some(
              ({ state: each, open }) =>
                each.place === state.place &&
                each.item === state.item &&
                open.some(({ kind }) => kind === 'questioned'),
            );
            if (!isAsked) expect(seen(scored)).toEqual(now);
          }
        }
      }),
      60,
    );
  });

  test('[F67] come nearest first, one for each place', () => {
    lawOfWalks(
      fc.property(randomWalks, ({ input }) => {
        const found = flips(input);
        const keys = found.map(({ state }) => stateKey(state.place, state.item.id));
        expect(new Set(keys).size).toBe(keys.length);
        for (const { state, byMm, toMm } of found)
          expect((state.sag?.valueMm ?? state.sampled?.worst.mm ?? Number.NaN) + byMm).toBeCloseTo(toMm, 9);
      }),
      40,
    );
  });
});
