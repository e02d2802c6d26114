import { certainly, printedKg, type PrintedMass, type Sum } from './hauling.ts';
import { compare, toMm } from './quantity.ts';
import type { Source } from './source.ts';

/** Ties of one sort: `direct` from the deck to the machine, `over` it and down to the other side of the deck. */
export interface TieGroup {
  readonly count: number | undefined;
  /** Working load limit of one, in kg; of its weakest piece. */
  readonly wllKg: number | undefined;
}

export interface Ties {
  readonly direct: TieGroup;
  readonly over: TieGroup;
  /** Length of the machine as it stands on the deck, in mm. */
  readonly lengthMm: number | undefined;
  /** Something on the deck stops it from moving forward. */
  readonly blocked: boolean;
}

export type TieField = 'direct-count' | 'direct-wll' | 'over-count' | 'over-wll' | 'length' | 'machine';

/** A law on ties as data, in the order of its sections. */
export interface TieRules {
  /** From this mass on the rule of heavy machines counts. */
  readonly heavyFrom: PrintedMass;
  readonly heavyTies: number;
  readonly lightTies: number;
  /** The sum of working load limits as a share of the machine's mass. */
  readonly aggregateShare: number;
  /** How much of its working load limit a direct tie counts. */
  readonly directShare: number;
  readonly short: { readonly lengthFt: number; readonly mass: PrintedMass };
  readonly lengthStepFt: number;
  /** The least working load limit of each tie on a heavy machine. */
  readonly eachTie: PrintedMass;
  readonly since: string;
  readonly sources: Readonly<Record<'count' | 'lightCount' | 'length' | 'aggregate' | 'eachTie', Source>>;
}

/** Enough of something or too little, or open. */
export type TieAnswer =
  | { readonly kind: 'enough' | 'short'; readonly have: number; readonly need: number }
  | {
      readonly kind: 'open';
      readonly open: readonly TieField[];
      readonly have: number;
      readonly need?: number;
    };

export interface TieAnswers {
  readonly count: TieAnswer;
  readonly byLength: TieAnswer;
  /** In kg. */
  readonly aggregate: TieAnswer;
  /** How many are advised for any machine: as many as a heavy one must have. */
  readonly advised: number;
  /** A tie on a heavy machine is weaker than the model rule wants each to be. */
  readonly weak: boolean;
}

/** Ties that a machine of this mass must have by its mass alone. */
export const tiesByMass = (rules: TieRules, massKg: number): number =>
  compare(massKg, '>=', printedKg(rules.heavyFrom)) ? rules.heavyTies : rules.lightTies;

/**
 * Ties that an article of this length and mass must have. Unblocked: one up to 5 ft and 1,100 lb, two up to 10 ft,
 * one more for each 10 ft or part of it beyond; with its front blocked one for each 10 ft or part of it.
 */
export function tiesByLength(rules: TieRules, lengthMm: number, massKg: number, blocked: boolean): number {
  const stepMm = toMm(rules.lengthStepFt * 12, 'in');
  const steps = Math.ceil(Math.round((lengthMm / stepMm) * 1e6) / 1e6);
  if (blocked) return Math.max(1, steps);
  const isShort = compare(lengthMm, '<=', toMm(rules.short.lengthFt * 12, 'in'));
  const isLight = compare(massKg, '<=', printedKg(rules.short.mass));
  return isShort && isLight ? 1 : Math.max(2, steps + 1);
}

const countOf = ({ direct, over }: Ties): number => (direct.count ?? 0) + (over.count ?? 0);

const openCounts = ({ direct, over }: Ties): readonly TieField[] => [
  ...(direct.count === undefined ? (['direct-count'] as const) : []),
  ...(over.count === undefined ? (['over-count'] as const) : []),
];

/** At least `have` against a need of at least `need` and at most `most`; what is open may raise either. */
function judge(
  have: number,
  openHave: readonly TieField[],
  [need, most]: readonly [need: number, most: number],
): TieAnswer {
  if (compare(have, '>=', most)) return { kind: 'enough', have, need: most };
  if (openHave.length === 0 && compare(have, '<', need)) return { kind: 'short', have, need };
  return { kind: 'open', open: [...openHave, ...(most > need ? (['machine'] as const) : [])], have, need };
}

/** Sum of working load limits in kg, direct ties by their share; with what may still raise it. */
function aggregateOf(rules: TieRules, { direct, over }: Ties): { kg: number; open: readonly TieField[] } {
  const part = ({ count, wllKg }: TieGroup, share: number): number => (count ?? 0) * (wllKg ?? 0) * share;
  const open = (group: TieGroup, count: TieField, wll: TieField): readonly TieField[] => {
    if (group.count === 0 || group.wllKg === 0) return [];
    return [
      ...(group.count === undefined ? [count] : []),
      ...(group.wllKg === undefined && group.count !== undefined ? [wll] : []),
    ];
  };
  return {
    kg: part(direct, rules.directShare) + part(over, 1),
    open: [...open(direct, 'direct-count', 'direct-wll'), ...open(over, 'over-count', 'over-wll')],
  };
}

/** What an article needs by what it weighs at least, and what it may need at most. */
const needs = (article: Sum, need: (massKg: number) => number): readonly [number, number] => [
  need(article.kg),
  need(article.open.length > 0 ? Infinity : article.kg),
];

function lengthAnswer(rules: TieRules, article: Sum, ties: Ties): TieAnswer {
  const { lengthMm, blocked } = ties;
  const [have, open] = [countOf(ties), openCounts(ties)];
  if (lengthMm === undefined) return { kind: 'open', open: [...open, 'length'], have };
  return judge(
    have,
    open,
    needs(article, (kg) => tiesByLength(rules, lengthMm, kg, blocked)),
  );
}

/** The ties of a machine against the law, each part by itself. */
export function tieAnswers(rules: TieRules, article: Sum, ties: Ties): TieAnswers {
  const sum = aggregateOf(rules, ties);
  const isHeavy = certainly(article, '>=', rules.heavyFrom) === 'yes';
  const weak = [ties.direct, ties.over].some(
    ({ wllKg }) => wllKg !== undefined && compare(wllKg, '<', printedKg(rules.eachTie)),
  );
  return {
    count: judge(
      countOf(ties),
      openCounts(ties),
      needs(article, (kg) => tiesByMass(rules, kg)),
    ),
    byLength: lengthAnswer(rules, article, ties),
    aggregate: judge(
      sum.kg,
      sum.open,
      needs(article, (kg) => rules.aggregateShare * kg),
    ),
    advised: rules.heavyTies,
    weak: isHeavy && weak,
  };
}

/** A pull that the ties must hold, as a share of the machine's mass. */
export interface Hold {
  readonly by: 'working-load' | 'breaking' | 'standard';
  readonly to: 'front' | 'rear' | 'side' | 'up';
  readonly share: number;
}

/** The pulls to hold, in kg of force; at least so much where the mass is open. */
export const pulls = (holds: readonly Hold[], article: Sum): readonly (Hold & { readonly kg: number })[] =>
  holds.map((hold) => ({ ...hold, kg: hold.share * article.kg }));
