import {
  certainly,
  printedKg,
  sumOf,
  trailerSum,
  wholeSum,
  type Certainty,
  type Haul,
  type HaulField,
  type PrintedMass,
  type Sum,
} from './hauling.ts';
import { assert, unreachable } from './result.ts';
import type { Source } from './source.ts';

export type HaulRuleName =
  | 'us-licence'
  | 'us-safety-rules'
  | 'gb-licence'
  | 'gb-tachograph'
  | 'eu-licence'
  | 'eu-tachograph'
  | 'eu-abroad';

/** What a law may ask for: licences by their class or category, and whether rules of trade and hours count. */
export type HaulStep =
  | 'no-cdl'
  | 'cdl-b'
  | 'cdl-a'
  | 'b'
  | 'b96'
  | 'be'
  | 'c1'
  | 'c1e'
  | 'c'
  | 'ce'
  | 'no-safety-rules'
  | 'safety-rules'
  | 'no-tachograph'
  | 'tachograph';

export type Vehicles = 'truck' | 'trailer' | 'combination';

/** An upper limit that a step sets: `under` does not include the mass itself, `to` does. */
export interface UpperLimit {
  readonly of: Vehicles;
  readonly is: 'under' | 'to';
  readonly mass: PrintedMass;
}

/** One thing that a law may ask for: enough where every limit of one of the lists is kept, always where one is empty. */
export interface RuleStep {
  readonly step: HaulStep;
  readonly any: readonly (readonly UpperLimit[])[];
}

/**
 * A law on hauling as data: its steps from the least to the most that it asks for, the last without limits, so that
 * a heavier load never gets an easier answer.
 */
export interface HaulRule {
  readonly rule: HaulRuleName;
  /** Plates alone, or the greater of plate and scale. */
  readonly by: 'rated' | 'greater';
  readonly steps: readonly RuleStep[];
  readonly source: Source;
  /** The day from which it has stood so, `2021-12-16`; absent where that was not looked up. */
  readonly since?: string;
}

/** A limit beside what was put against it; `kept` is open where what is not entered may break it. */
export interface LimitLine extends UpperLimit {
  readonly known: Pick<Sum, 'kg' | 'open'>;
  readonly kept: Certainty;
}

export type RuleAnswer = { readonly rule: HaulRule; readonly lines: readonly LimitLine[] } & (
  | { readonly kind: 'step'; readonly step: HaulStep }
  | { readonly kind: 'open'; readonly atLeast: HaulStep; readonly open: readonly HaulField[] }
);

type Known = Pick<Sum, 'kg' | 'open'>;

const nothing: Known = { kg: 0, open: [] };

const unique = <T>(values: readonly T[]): readonly T[] => [...new Set(values)];

const greater = (one: Known, other: Known): Known => ({
  kg: Math.max(one.kg, other.kg),
  open: unique([...one.open, ...other.open]),
});

const plus = (one: Known, other: Known): Known => ({
  kg: one.kg + other.kg,
  open: unique([...one.open, ...other.open]),
});

function truckOf(haul: Haul, by: HaulRule['by']): Known {
  const rated = sumOf(haul, ['truck-gross']);
  if (by === 'rated') return rated;
  return greater(rated, haul.on === 'trailer' ? sumOf(haul, ['truck']) : wholeSum(haul));
}

function trailerOf(haul: Haul, by: HaulRule['by']): Known {
  if (haul.on === 'truck') return nothing;
  const rated = sumOf(haul, ['trailer-gross']);
  return by === 'rated' ? rated : greater(rated, trailerSum(haul));
}

/**
 * Both together. By plate or scale the greater counts for each vehicle, and beside them what the truck's label
 * gives for the combination, which counts only while it tows (49 CFR 383.5).
 */
function combinationOf(haul: Haul, by: HaulRule['by']): Known {
  const both = plus(truckOf(haul, by), trailerOf(haul, by));
  if (by === 'rated' || haul.on === 'truck' || haul.noCombination) return both;
  return greater(both, sumOf(haul, ['combination']));
}

function knownOf(haul: Haul, by: HaulRule['by'], of: Vehicles): Known {
  switch (of) {
    case 'truck':
      return truckOf(haul, by);
    case 'trailer':
      return trailerOf(haul, by);
    case 'combination':
      return combinationOf(haul, by);
    default:
      return unreachable(of);
  }
}

function lineOf(haul: Haul, by: HaulRule['by'], limit: UpperLimit): LimitLine {
  const known = knownOf(haul, by, limit.of);
  return { ...limit, known, kept: certainly(known, limit.is === 'under' ? '<' : '<=', limit.mass) };
}

const all = (kept: readonly Certainty[]): Certainty =>
  kept.includes('no') ? 'no' : kept.includes('open') ? 'open' : 'yes';

const any = (kept: readonly Certainty[]): Certainty =>
  kept.includes('yes') ? 'yes' : kept.includes('open') ? 'open' : 'no';

const byMass = (one: LimitLine, other: LimitLine): number => printedKg(one.mass) - printedKg(other.mass);

/** Of all limits looked at those that tell most of each: the highest that is broken, the lowest kept or open. */
function telling(lines: readonly LimitLine[]): readonly LimitLine[] {
  const vehicles = unique(lines.map(({ of }) => of));
  return vehicles.flatMap((of) => {
    const rising = lines.filter((line) => line.of === of).sort(byMass);
    const kept = (is: Certainty): readonly LimitLine[] => rising.filter((line) => line.kept === is);
    return [...kept('no').slice(-1), ...kept('open').slice(0, 1), ...kept('yes').slice(0, 1)];
  });
}

/** What a law asks of this haul: the first of its steps that is surely met, open where an earlier one may be. */
export function ruleAnswer(haul: Haul, rule: HaulRule): RuleAnswer {
  const met = rule.steps.map(({ step, any: lists }) => {
    const lines = lists.map((list) => list.map((limit) => lineOf(haul, rule.by, limit)));
    return { step, lines: lines.flat(), met: any(lines.map((list) => all(list.map(({ kept }) => kept)))) };
  });
  const at = met.findIndex((each) => each.met !== 'no');
  const first = met[at];
  const lines = telling(met.slice(0, at + 1).flatMap((each) => each.lines));
  assert(first, `the last step of ${rule.rule} has no limit`);
  if (first.met === 'yes') return { kind: 'step', step: first.step, rule, lines };
  const open = unique(first.lines.filter(({ kept }) => kept === 'open').flatMap(({ known }) => known.open));
  return { kind: 'open', atLeast: first.step, open, rule, lines };
}
