import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { callRank, meanwhileRank } from '../../src/core/calls.ts';
import type { Side } from '../../src/core/machine.ts';
import { parsePlace, makePlace, type Place } from '../../src/core/keys.ts';
import type { Observed } from '../../src/core/readings.ts';
import { factsOf, score, type ItemOutcome, type Scored } from '../../src/core/score.ts';
import type { Slot } from '../../src/core/slots.ts';
import type { ClashSide, PlacedReading, ScoreInput } from '../../src/core/states.ts';
import { shownCall } from '../../src/core/verdict.ts';
import { flipsOf } from '../../src/core/flips.ts';
import { casesOf, lawOfWalks } from './law.ts';
import { frozen, read } from './made.ts';
import { randomWalks, readingsFor, share, sheets, type RandomWalk } from './random-walks.ts';

const keyOf = ({ state }: ItemOutcome): string => `${state.place}|${state.item.id}`;

/** What is milder by call or by meanwhile in the second result and is not open there; with `openMay` false even so. */
function milder(before: Scored, after: Scored, openMay: boolean): readonly string[] {
  const now = new Map(after.outcomes.map((outcome) => [keyOf(outcome), outcome]));
  return before.outcomes.flatMap((was) => {
    const is = now.get(keyOf(was));
    // What has no place in the result any more is as if nobody had looked.
    const [call, meanwhile] = [callRank(is?.atLeast ?? 'run'), meanwhileRank(is?.meanwhile ?? 'work')];
    const isMilder = call < callRank(was.atLeast) || meanwhile < meanwhileRank(was.meanwhile);
    return isMilder && !(openMay && is && is.open.length > 0) ? [keyOf(was)] : [];
  });
}

/** Where the machine as a whole came out milder without anything that is open. */
const isMachineMilder = (before: Scored, after: Scored): boolean =>
  (callRank(after.verdict.atLeast) < callRank(before.verdict.atLeast) ||
    meanwhileRank(after.verdict.meanwhile) < meanwhileRank(before.verdict.meanwhile)) &&
  after.verdict.openParking.length + after.verdict.openOther.length === 0;

const shown = ({ outcomes, verdict }: Scored) => ({
  call: shownCall(verdict),
  meanwhile: verdict.meanwhile,
  outcomes: outcomes.map((each) => [
    keyOf(each),
    each.atLeast,
    each.meanwhile,
    each.open,
    each.reasons,
    each.notes,
    each.state,
  ]),
});

const without = (
  input: ScoreInput,
  { place, item }: { place: Place; item: string },
): readonly PlacedReading[] => input.readings.filter((each) => each.place !== place || each.item !== item);

const ordered = (slots: readonly Slot[]): readonly Slot[] =>
  slots.filter(({ item }) => item.order !== 'none');

/** How far along its declared order a reading is; higher is never milder. Sag: apart, since it has two sides. */
function rankOf({ item }: Slot, what: Observed, grows: boolean): readonly number[] {
  if (what.kind === 'finding' && item.ask.kind === 'finding')
    return [item.ask.findings.indexOf(what.finding), what.count ?? 0, what.share ?? 0];
  if (what.kind === 'crack') return [what.lengthMm, what.depthMm, Number(what.cordVisible)];
  if (what.kind === 'sag') return [];
  const mm =
    what.kind === 'length'
      ? what.mm
      : what.kind === 'pitch'
        ? what.totalMm
        : what.kind === 'tread'
          ? what.centreMm
          : what.kind === 'pair'
            ? what.outerMm
            : 0;
  return [grows ? mm : -mm];
}

const isAtLeast = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((each, i) => each >= (b[i] ?? 0));

describe('[N4] laws of scoring, over random machines, sheets, rules and walks', { timeout: 60_000 }, () => {
  test('[V130] with all else equal nothing grows milder along an item’s declared severity order', () => {
    const cases = randomWalks.chain((walk) => {
      const slots = ordered(walk.slots);
      // Findings are many; sizes, on which most rules turn, get their share.
      const sizes = slots.filter(({ item }) => item.ask.kind !== 'finding');
      return fc.oneof(fc.constantFrom(...slots), fc.constantFrom(...sizes)).chain((slot) => {
        const readings = readingsFor(slot, walk.sheet, walk.input.walk.load);
        return fc.tuple(fc.constant(walk), fc.constant(slot), readings, readings);
      });
    });
    let compared = 0;
    lawOfWalks(
      fc.property(cases, ([{ input, sheet }, slot, a, b]) => {
        const isUp = (mild: Observed, severe: Observed): boolean => {
          if (mild.kind === 'sag' && severe.kind === 'sag') {
            const [band, near, far] = [sheet.sag[0], mild.mm[0] ?? 0, severe.mm[0] ?? 0];
            return band !== undefined && near >= band.low && far >= near;
          }
          // A count that was not said and one that was are not all else equal.
          if (Object.keys(mild).length !== Object.keys(severe).length) return false;
          const grows = slot.item.id === 'pitch' || slot.item.id === 'idler-tread';
          return isAtLeast(rankOf(slot, severe, grows), rankOf(slot, mild, grows));
        };
        const pair = isUp(a, b) ? [a, b] : isUp(b, a) ? [b, a] : [];
        const rest = without(input, { place: slot.place, item: slot.item.id });
        const [before, after] = pair.map((what) =>
          score({ ...input, readings: [...rest, read(slot.place, slot.item.id, what)] }),
        );
        if (!before || !after) return;
        compared += 1;
        expect(milder(before, after, false)).toEqual([]);
      }),
      300,
    );
    expect(compared).toBeGreaterThan(casesOf(300) / 2);
  });

  test('[V131] below the band sag only grows more severe as it shrinks', () => {
    const sagOf = (mm: number): Observed => ({
      kind: 'sag',
      mm: [mm],
      typed: [`${mm}`],
      unit: 'mm',
      method: 'straightedge-shoe',
      posture: 'ground',
      clean: 'clean',
    });
    lawOfWalks(
      fc.property(randomWalks, share(0, 1), share(0, 1), ({ input, sheet }, a, b) => {
        const high = sheet.sag[0]?.high ?? 0;
        const rest = input.readings.filter(({ item }) => item !== 'sag');
        const [severe, mild] = [a, b]
          .sort((x, y) => x - y)
          .map((part) => {
            const reading = { place: makePlace({ side: 'left', component: 'track' }), item: 'sag', n: 1 };
            return score({
              ...input,
              readings: [...rest, { ...reading, reading: { v: 1, what: sagOf(part * high) } }],
            });
          });
        if (severe && mild) expect(milder(mild, severe, false)).toEqual([]);
      }),
      60,
    );
  });

  test('[V132] taking readings back makes nothing milder without opening it', () => {
    const cases = randomWalks.chain((walk) =>
      fc.tuple(fc.constant(walk), fc.subarray([...walk.input.readings])),
    );
    lawOfWalks(
      fc.property(cases, ([{ input }, gone]) => {
        const readings = input.readings.filter((each) => !gone.includes(each));
        const takenBack = gone.map(({ place, item, n }) => ({ place, item, n }));
        const [before, after] = [score(input), score({ ...input, readings, takenBack })];
        expect(milder(before, after, true)).toEqual([]);
        expect(isMachineMilder(before, after)).toBe(false);
      }),
      100,
    );
  });

  test('[V133] taking rules away makes nothing milder without opening it', () => {
    const cases = randomWalks.chain((walk) =>
      fc.tuple(fc.constant(walk), fc.subarray([...(walk.input.rules?.rules ?? [])])),
    );
    lawOfWalks(
      fc.property(cases, ([{ input }, kept]) => {
        if (!input.rules) return;
        // A rule that covers nothing was never promised.
        const covering = new Set(Object.values(input.rules.covers).flat());
        const rules = input.rules.rules.filter((rule) => !covering.has(rule.id) || kept.includes(rule));
        const [before, after] = [score(input), score({ ...input, rules: { ...input.rules, rules } })];
        expect(milder(before, after, true)).toEqual([]);
        expect(isMachineMilder(before, after)).toBe(false);
      }),
      100,
    );
  });

  test('[V134] taking the set, the sheet or a line of it away makes nothing milder without opening it', () => {
    lawOfWalks(
      fc.property(randomWalks, sheets, ({ input, sheet }, other) => {
        const before = score(input);
        const items = sheet.items.filter(({ item }) => other.items.some((each) => each.item === item));
        const fewer = { ...sheet, items };
        for (const less of [
          { rules: undefined },
          { sheets: {} },
          { sheets: { left: fewer, right: fewer } },
          { sheets: { left: { ...sheet, sag: [] }, right: sheet } },
        ]) {
          const after = score({ ...input, ...less });
          expect(milder(before, after, true)).toEqual([]);
          expect(isMachineMilder(before, after)).toBe(false);
        }
      }),
      120,
    );
  });

  test('[V135] the machine is never shown as run while something open could park it', () => {
    lawOfWalks(
      fc.property(randomWalks, ({ input }) => {
        const { outcomes, verdict } = score(input);
        const isOpen = outcomes.some(({ open, canPark }) => canPark && open.length > 0);
        if (isOpen) expect(shownCall(verdict)).not.toBe('run');
      }),
      100,
    );
  });

  test('[V136] whatever is needed and not known is open, except sag that was judged by eye', () => {
    lawOfWalks(
      fc.property(randomWalks, ({ input }) => {
        for (const { state, open } of score(input).outcomes)
          if (state.needed && !state.known && state.item.id !== 'sag') expect(open).not.toEqual([]);
      }),
      100,
    );
  });

  test('[V137] the verdict is the worst of the outcomes and its meanwhile the strictest', () => {
    lawOfWalks(
      fc.property(randomWalks, ({ input }) => {
        const { outcomes, verdict } = score(input);
        expect(callRank(verdict.atLeast)).toBe(Math.max(...outcomes.map((each) => callRank(each.atLeast))));
        expect(meanwhileRank(verdict.meanwhile)).toBe(
          Math.max(...outcomes.map((each) => meanwhileRank(each.meanwhile))),
        );
      }),
      100,
    );
  });

  test('[V138] swapping left and right swaps the outcomes', () => {
    const swapped = (side: string): Side | 'whole' =>
      side === 'left' ? 'right' : side === 'right' ? 'left' : 'whole';
    const turned = (place: Place): Place => {
      const parts = parsePlace(place);
      return makePlace({ ...parts, side: swapped(parts.side) });
    };
    lawOfWalks(
      fc.property(randomWalks, sheets, ({ input, sheet }, other) => {
        const ageYears = { left: 3, right: 9 };
        const [one, two] = [
          score({ ...input, ageYears, sheets: { left: sheet, right: other } }),
          score({
            ...input,
            ageYears: { left: 9, right: 3 },
            sheets: { left: other, right: sheet },
            readings: input.readings.map((each) => ({ ...each, place: turned(each.place) })),
          }),
        ];
        const told = ({ outcomes }: Scored, turn: (place: Place) => Place) =>
          outcomes
            .map((each) => [
              turn(each.state.place),
              each.state.item.id,
              each.atLeast,
              each.meanwhile,
              each.open,
              each.canPark,
            ])
            .map((each) => JSON.stringify(each))
            .sort();
        expect(told(two, turned)).toEqual(told(one, (place) => place));
        expect(shownCall(two.verdict)).toBe(shownCall(one.verdict));
      }),
      100,
    );
  });

  test('[V139] the order of readings says nothing', () => {
    const cases = randomWalks.chain((walk) =>
      fc.tuple(
        fc.constant(walk),
        fc.shuffledSubarray([...walk.input.readings], { minLength: walk.input.readings.length }),
      ),
    );
    lawOfWalks(
      fc.property(cases, ([{ input }, readings]) => {
        expect(shown(score({ ...input, readings }))).toEqual(shown(score(input)));
      }),
      100,
    );
  });

  test('[V140] scoring gives the same each time and changes nothing of what it is given', () => {
    lawOfWalks(
      fc.property(randomWalks, ({ input }) => {
        const whole = frozen({ ...input, clashes: input.readings.slice(0, 2) });
        const first = score(whole);
        expect(shown(score(whole))).toEqual(shown(first));
        if (whole.rules) expect(flipsOf(frozen(factsOf(whole)), whole.rules, frozen(first))).toBeDefined();
      }),
      60,
    );
  });

  test('[V141] a clash is never milder than either side', () => {
    const otherSide = (walk: RandomWalk, { place, item, n, reading }: PlacedReading) => {
      const slot = walk.slots.find((each) => each.place === place && each.item.id === item);
      const what = slot ? readingsFor(slot, walk.sheet, walk.input.walk.load) : fc.constant(reading.what);
      return fc.tuple(what, fc.boolean()).map(([other, isRemoval]): ClashSide => ({
        place,
        item,
        n,
        ...(!isRemoval && { reading: { ...reading, what: other } }),
      }));
    };
    const cases = randomWalks
      .filter(({ input }) => input.readings.length >= 3)
      .chain((walk) =>
        fc
          .subarray([...walk.input.readings], { minLength: 1, maxLength: 3 })
          .chain((some) =>
            fc.tuple(fc.constant(walk), fc.tuple(...some.map((each) => otherSide(walk, each)))),
          ),
      );
    lawOfWalks(
      fc.property(cases, fc.integer({ min: 0, max: 7 }), ([{ input }, clashes], chosen) => {
        // Either side: of each clashing reading the displayed one, or the other.
        const taken = clashes.filter((_, i) => (chosen >> i) % 2 === 1);
        const isTaken = (each: PlacedReading): boolean =>
          taken.some(({ place, item, n }) => each.place === place && each.item === item && each.n === n);
        const others = taken.flatMap((each) => (each.reading ? [{ ...each, reading: each.reading }] : []));
        const side = score({
          ...input,
          readings: [...input.readings.filter((each) => !isTaken(each)), ...others],
        });
        const clash = score({ ...input, clashes });
        expect(milder(side, clash, false)).toEqual([]);
        if (shownCall(side.verdict) === 'open') expect(shownCall(clash.verdict)).not.toBe('run');
        for (const { place, item } of clashes) {
          const outcome = clash.outcomes.find(({ state }) => state.place === place && state.item.id === item);
          if (outcome) expect(outcome.open.map(({ kind }) => kind)).toContain('clash');
        }
      }),
      100,
    );
  });
});
