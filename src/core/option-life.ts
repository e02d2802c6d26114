import { lifeFigureFor, type Ground, type LifeFigure, type Sourced } from './life.ts';
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
  /** Standard deviation of its logarithm. */
  readonly spread: number;
  /** True where steel's figure leans on rubber's. */
  readonly byRubber: boolean;
  /** What damage ends whole tracks, or breaks single parts of steel ones, an hour. */
  readonly damagePerHour: number;
  /** True where damage breaks a shoe or a link that is changed alone. */
  readonly breaksParts: boolean;
  /** Hours after which rubber is old. */
  readonly oldHours: number;
  readonly from: 'own' | 'starting';
  readonly sources: readonly Source[];
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
    const times = sharp === true && sharpGrounds.includes(name) ? sharpCuts.value : 1;
    return sum + share * life.damage[name ?? 'unknown'].value * times;
  }, 0) / 1000;

function ownSpread({ hours, lowHours, highHours }: NonNullable<Option['life']>, lifeSpread: Sourced): number {
  if (lowHours !== undefined && highHours !== undefined && highHours > lowHours)
    return spreadOf(Math.sqrt(highHours / lowHours));
  if (lowHours !== undefined && lowHours < hours) return spreadOf(hours / lowHours);
  if (highHours !== undefined && highHours > hours) return spreadOf(highHours / hours);
  return spreadOf(lifeSpread.value);
}

type Ends = Pick<LifeBasis, 'damagePerHour' | 'breaksParts' | 'oldHours'>;

/** A person who says how long rubber lasts has counted the tracks that were cut. */
const ownBasis = (life: NonNullable<Option['life']>, figures: Figures, ends: Ends): LifeBasis => ({
  ...ends,
  damagePerHour: ends.breaksParts ? ends.damagePerHour : 0,
  wearHours: life.hours,
  spread: ownSpread(life, figures.lifeSpread),
  byRubber: false,
  from: 'own',
  sources: life.source ? [life.source] : [],
});

/** What the life of an option hangs on, from the person's own figure or from starting values. */
export function lifeBasis(
  machine: OptionMachine,
  { track, life }: Pick<Option, 'track' | 'life'>,
  use: Use,
  tables: OptionTables,
  figures: Figures,
): LifeBasis {
  const rubber = isRubberTrack(track);
  const damage = damageOn(use, tables, figures);
  const hoursAYear = use.hoursAYear ?? figures.hoursAYear.value;
  const ends = {
    breaksParts: !rubber,
    damagePerHour: rubber ? damage : damage * figures.breakShare.value,
    oldHours: rubber ? figures.rubberYears.value * hoursAYear : Infinity,
  };
  if (life) return ownBasis(life, figures, ends);
  const byRubber = !rubber && leansOnRubber(machine, figures);
  const all = figuresOn(machine, byRubber ? 'rubber-cored' : track, use.ground, tables);
  const { hours, spread } = mixed(all);
  const turning = tables.life.turning[use.turning ?? 'some'];
  return {
    ...ends,
    wearHours: hours * turning.value * (byRubber ? figures.steelLife.value : 1),
    spread,
    byRubber,
    from: 'starting',
    sources: [
      ...all.map(({ figure }) => figure.source),
      ...(byRubber ? [figures.steelLife.source] : []),
      ...(use.turning === undefined ? [] : [turning.source]),
    ],
  };
}

/** Mean hours that a track is on, ended by wear, age or damage, whichever is first. */
export function meanHours(wearHours: number, oldHours: number, endsPerHour: number): number {
  const most = Math.min(wearHours, oldHours);
  return endsPerHour > 0 ? -Math.expm1(-endsPerHour * most) / endsPerHour : most;
}
