import type { Assembled } from '../core/assemble.ts';
import type { Call, Meanwhile } from '../core/calls.ts';
import { checkRules } from '../core/check-rules.ts';
import { checkSheet } from '../core/check-sheet.ts';
import type { Flip } from '../core/flips.ts';
import type { LimitSheet } from '../core/limits.ts';
import type { ItemOutcome, Scored } from '../core/score.ts';
import { stateKey } from '../core/states.ts';
import { shownCall } from '../core/verdict.ts';
import { knowsMessage } from '../words/en/reasons.ts';
import { rulesProblemLine, sheetProblemLine } from '../words/en/check-lines.ts';
import { notUsedLine } from '../words/en/cli.ts';
import type { Formatter } from '../words/format.ts';
import { rounded } from './rounded.ts';
import { scoredItem, type ScoredItem } from './scored-item.ts';

/** Where something stands: `left.track` and `lug-depth`. */
export interface ItemPlace {
  readonly place: string;
  readonly item: string;
}

/** A re-measurement that could change the verdict; lengths in mm. */
export interface ScoredFlip extends ItemPlace {
  readonly byMm: number;
  readonly toMm: number;
  readonly call: Call | 'open';
  /** True when the change lies within the reading's own uncertainty. */
  readonly within: boolean;
}

export interface ScoredVerdict {
  /** What is shown: `open` instead of `run` while something that could park the machine is not known. */
  readonly call: Call | 'open';
  readonly atLeast: Call;
  readonly meanwhile: Meanwhile;
  readonly settled: boolean;
  readonly drivers: readonly ItemPlace[];
  readonly open: readonly (ItemPlace & { readonly couldPark: boolean })[];
  readonly flips: readonly ScoredFlip[];
}

/** A record that scoring leaned on, with what it contradicts itself in. */
export interface ScoredSheet {
  readonly key: string;
  readonly name: string;
  readonly problems: readonly string[];
}

/** One walk, scored, as plain JSON: lengths in mm, percent from 0 to 100, both rounded to 1e-6. */
export interface ScoredWalk {
  readonly walk: string;
  readonly machine: { readonly key: string; readonly name: string };
  readonly purpose: string;
  readonly depth: string;
  readonly sheets: { readonly left: ScoredSheet | null; readonly right: ScoredSheet | null };
  readonly rules: ScoredSheet | null;
  readonly verdict: ScoredVerdict;
  readonly items: readonly ScoredItem[];
  /** Readings that belong to nothing this machine has. */
  readonly notUsed: readonly (ItemPlace & { readonly n: number; readonly sentence: string })[];
}

const placeOf = ({ state }: Pick<ItemOutcome, 'state'>): ItemPlace => ({
  place: state.place,
  item: state.item.id,
});

function sheetOf(key: string | undefined, sheet: LimitSheet | undefined): ScoredSheet | null {
  if (key === undefined || !sheet) return null;
  return { key, name: sheet.name, problems: checkSheet(sheet).map(sheetProblemLine) };
}

function rulesOf({ rulesKey, input }: Assembled): ScoredSheet | null {
  if (rulesKey === undefined || !input.rules) return null;
  const problems = checkRules(input.rules, knowsMessage).map(rulesProblemLine);
  return { key: rulesKey, name: input.rules.name, problems };
}

function verdictOf(scored: Scored, flips: readonly Flip[]): ScoredVerdict {
  const { atLeast, meanwhile, settled, drivers, openParking, openOther } = scored.verdict;
  return {
    call: shownCall(scored.verdict),
    atLeast,
    meanwhile,
    settled,
    drivers: drivers.map(placeOf),
    open: [
      ...openParking.map((outcome) => ({ ...placeOf(outcome), couldPark: true })),
      ...openOther.map((outcome) => ({ ...placeOf(outcome), couldPark: false })),
    ],
    flips: flips.map((flip) => ({
      ...placeOf(flip),
      byMm: flip.byMm,
      toMm: flip.toMm,
      call: flip.call,
      within: flip.within,
    })),
  };
}

/** Readings that no part of this machine asks for: a slip in a key, or a wrong shape. */
function notUsed({ input }: Assembled, places: ReadonlySet<string>): ScoredWalk['notUsed'] {
  return input.readings
    .filter(({ place, item, reading }) => {
      const { kind } = reading.what;
      return kind !== 'pass' && kind !== 'unseen' && !places.has(stateKey(place, item));
    })
    .map(({ place, item, n }) => ({ place, item, n, sentence: notUsedLine(place, item) }));
}

/** Puts a scored walk into plain JSON, with the sentences of one reader. */
export function scoredWalk(
  walk: string,
  assembled: Assembled,
  scored: Scored,
  flips: readonly Flip[],
  /** The places and items that the machine has. */
  places: ReadonlySet<string>,
  format: Formatter,
): ScoredWalk {
  const { input, machineKey, sheetKeys } = assembled;
  return rounded({
    walk,
    machine: { key: machineKey, name: input.machine.name },
    purpose: input.walk.purpose,
    depth: input.walk.depth,
    sheets: {
      left: sheetOf(sheetKeys.left, input.sheets.left),
      right: sheetOf(sheetKeys.right, input.sheets.right),
    },
    rules: rulesOf(assembled),
    verdict: verdictOf(scored, flips),
    items: scored.outcomes.map((outcome) => scoredItem(outcome, format)),
    notUsed: notUsed(assembled, places),
  });
}
