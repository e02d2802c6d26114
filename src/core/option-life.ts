import { lifeFigureFor, type Ground, type Turning, type LifeFigure, type Sourced } from './life.ts';
import { isRubber, type Machine, type TrackKind } from './machine.ts';
import type { Option } from './option.ts';
import type { Figures, OptionTables } from './option-tables.ts';
import type { Source } from './source.ts';
import type { Use } from './use.ts';

/** A described machine; it need not be bought yet. */
export type OptionMachine = Pick<Machine, 'kind' | 'shape' | 'massKg'>;

/** What ends tracks of a kind, before anything is drawn; hours and events an hour. */
export interface LifeBasis {
  /** From new to the limit by wear alone, or the person's own figure with all ends in it. */
  readonly wearHours: number;
  /** Standard deviation of its logarithm, and the part of it that goes for this option alone. */
  readonly spread: number;
  readonly makeSpread: number;
  /** True where steel's figure leans on rubber's. */
  readonly byRubber: boolean;
  /** What damage ends whole tracks, or breaks single parts of steel ones, an hour. */
  readonly damagePerHour: number;
  /** True where damage breaks a shoe or a link that is changed alone. */
  readonly breaksParts: boolean;
  /** Hours after which rubber is old. */
  readonly oldHours: number;
  /** A person's own figure, this machine's own walks, or starting values. */
  readonly from: 'own' | 'walks' | 'starting';
  readonly sources: readonly Source[];
}

/** How long tracks of a kind last on this machine by its own walks, and on what ground that was. */
export interface LearntLife {
  readonly track: TrackKind;
  readonly hours: number;
  /** Standard deviation of its logarithm. */
  readonly spread: number;
  readonly ground: Ground | undefined;
  readonly turning: Turning | undefined;
}

/** How many standard deviations the tenth and the ninetieth percent lie off the middle. */
export const ninety = 1.2815515655446004;

export const spreadOf = (factor: number): number => Math.log(Math.max(1, factor)) / ninety;

export const isRubberTrack = (track: TrackKind): boolean =>
  track === 'rubber-cored' || track === 'rubber-coreless';

/** Shares of the grounds that add up to 1; `undefined` alone where no ground is known. */
export function groundShares(ground: Use['ground']): readonly (readonly [Ground | undefined, number])[] {
  const given = Object.entries(ground ?? {}).filter(([, share]) => share > 0) as [Ground, number][];
  const sum = given.reduce((total, [, share]) => total + share, 0);
  return sum > 0 ? given.map(([name, share]) => [name, share / sum] as const) : [[undefined, 1]];
}

/** Percent of the hours that are on rock. */
export const rockShare = (ground: Use['ground']): number =>
  100 * (groundShares(ground).find(([name]) => name === 'rock')?.[1] ?? 0);

/** The same ground with so many percent of rock, the others keeping their proportions; on unknown ground the rest is mixed. */
export function withRock(ground: Use['ground'], percent: number): NonNullable<Use['ground']> {
  const others = groundShares(ground).filter(([name]) => name !== 'rock');
  const sum = others.reduce((total, [, share]) => total + share, 0);
  const rest =
    sum > 0
      ? others.map(([name, share]) => [name ?? 'mixed', ((100 - percent) * share) / sum])
      : [['mixed', 100 - percent]];
  return Object.fromEntries([...rest, ['rock', percent]]) as NonNullable<Use['ground']>;
}

const middleOf = ({ lowHours, highHours }: LifeFigure): number => Math.sqrt(lowHours * highHours);

/** The heaviest machines have no rubber tracks to compare with, so that steel goes by its own figures there. */
const leansOnRubber = ({ massKg, shape }: OptionMachine, { wholeRubberMostKg }: Figures): boolean =>
  massKg === undefined ? isRubber(shape) : massKg <= wholeRubberMostKg.value;

interface Figured {
  readonly figure: LifeFigure;
  readonly share: number;
}

function figuresOn(
  machine: OptionMachine,
  track: TrackKind,
  ground: Use['ground'],
  tables: OptionTables,
): readonly Figured[] {
  const item = isRubberTrack(track) ? 'lug-depth' : 'link-height';
  return groundShares(ground).flatMap(([name, share]) => {
    const figure = lifeFigureFor(tables.life, { item, kind: machine.kind, track, ground: name });
    return figure ? [{ figure, share }] : [];
  });
}

/** Wear adds up: so many hours of each ground take their share of the life on it. */
function mixed(all: readonly Figured[]): { readonly hours: number; readonly spread: number } {
  const rate = all.reduce((sum, { figure, share }) => sum + share / middleOf(figure), 0);
  const spread = all.reduce(
    (sum, { figure, share }) =>
      sum + (share / middleOf(figure) / rate) * spreadOf(Math.sqrt(figure.highHours / figure.lowHours)),
    0,
  );
  return { hours: 1 / rate, spread };
}

const sharpGrounds: readonly (Ground | undefined)[] = ['rock', 'demolition'];

/** Tracks cut an hour; sharp rock and rubble cut more of them. */
const damageOn = ({ ground, sharp }: Use, { life }: OptionTables, { sharpCuts }: Figures): number =>
  groundShares(ground).reduce((sum, [name, share]) => {
    const isSharp = sharp === true && (name === undefined || sharpGrounds.includes(name));
    const times = isSharp ? sharpCuts.value : 1;
    return sum + share * life.damage[name ?? 'unknown'].value * times;
  }, 0) / 1000;

function ownSpread({ hours, lowHours, highHours }: NonNullable<Option['life']>, lifeSpread: Sourced): number {
  if (lowHours !== undefined && highHours !== undefined && highHours > lowHours)
    return spreadOf(Math.sqrt(highHours / lowHours));
  if (lowHours !== undefined && lowHours < hours) return spreadOf(hours / lowHours);
  if (highHours !== undefined && highHours > hours) return spreadOf(highHours / hours);
  return spreadOf(lifeSpread.value);
}

/** What lives are worked out from. */
export interface LifeCase {
  readonly machine: OptionMachine;
  readonly tables: OptionTables;
  readonly figures: Figures;
  readonly learnt: LearntLife | undefined;
}

const isLike = (a: TrackKind, b: TrackKind): boolean => isRubberTrack(a) === isRubberTrack(b);

/** The work on which a life was shown. */
const thenUse = ({ ground, turning }: LearntLife): Pick<Use, 'ground' | 'turning'> => ({
  ...(ground && { ground: { [ground]: 100 } }),
  ...(turning && { turning }),
});

type Ends = Pick<LifeBasis, 'damagePerHour' | 'breaksParts' | 'oldHours'>;

const spreads = (spread: number, { makeSpread }: Figures): Pick<LifeBasis, 'spread' | 'makeSpread'> => ({
  spread,
  makeSpread: Math.min(spread, spreadOf(makeSpread.value)),
});

/** A person who says how long rubber lasts has counted the tracks that were cut. */
const ownBasis = (life: NonNullable<Option['life']>, figures: Figures, ends: Ends): LifeBasis => ({
  ...ends,
  ...spreads(ownSpread(life, figures.lifeSpread), figures),
  damagePerHour: ends.breaksParts ? ends.damagePerHour : 0,
  wearHours: life.hours,
  byRubber: false,
  from: 'own',
  sources: life.source ? [life.source] : [],
});

interface Book {
  readonly hours: number;
  readonly spread: number;
  readonly sources: readonly Source[];
}

/** What the books say of wear alone on this ground with this much turning. */
function bookLife(
  machine: OptionMachine,
  track: TrackKind,
  { ground, turning }: Pick<Use, 'ground' | 'turning'>,
  tables: OptionTables,
): Book {
  const all = figuresOn(machine, track, ground, tables);
  const { hours, spread } = mixed(all);
  const factor = tables.life.turning[turning ?? 'some'];
  const sources = [
    ...all.map(({ figure }) => figure.source),
    ...(turning === undefined ? [] : [factor.source]),
  ];
  return { hours: hours * factor.value, spread, sources };
}

/** What the life of an option hangs on: the person's own figure, the machine's own walks, or starting values. */
export function lifeBasis(
  of: LifeCase,
  { track, life }: Pick<Option, 'track' | 'life'>,
  use: Use,
): LifeBasis {
  const { machine, tables, figures, learnt } = of;
  const rubber = isRubberTrack(track);
  const damage = damageOn(use, tables, figures);
  const hoursAYear = use.hoursAYear ?? figures.hoursAYear.value;
  const ends = {
    breaksParts: !rubber,
    damagePerHour: rubber ? damage : damage * figures.breakShare.value,
    oldHours: rubber ? figures.rubberYears.value * hoursAYear : Infinity,
  };
  if (life) return ownBasis(life, figures, ends);
  const hasLearnt = learnt !== undefined && isLike(learnt.track, track);
  // Steel goes by rubber's figures on like work, unless this machine has shown how long steel lasts on it.
  const byRubber = !rubber && !hasLearnt && leansOnRubber(machine, figures);
  const base = byRubber ? 'rubber-cored' : track;
  const book = bookLife(machine, base, use, tables);
  const shown = learnt && isLike(learnt.track, base) ? learnt : undefined;
  const scale = shown ? shown.hours / bookLife(machine, base, thenUse(shown), tables).hours : 1;
  return {
    ...ends,
    wearHours: book.hours * scale * (byRubber ? figures.steelLife.value : 1),
    // What one make showed leaves open how another does on the same job.
    ...spreads(shown ? Math.hypot(shown.spread, spreadOf(figures.makeSpread.value)) : book.spread, figures),
    byRubber,
    from: shown ? 'walks' : 'starting',
    sources: [...(shown ? [] : book.sources), ...(byRubber ? [figures.steelLife.source] : [])],
  };
}

/** Mean hours that a track is on, ended by wear, age or damage, whichever is first. */
export function meanHours(wearHours: number, oldHours: number, endsPerHour: number): number {
  const most = Math.min(wearHours, oldHours);
  return endsPerHour > 0 ? -Math.expm1(-endsPerHour * most) / endsPerHour : most;
}
