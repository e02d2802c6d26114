import { priceLine, type CostOpen, type PriceList, type Rates } from './costs.ts';
import type { JobKind } from './job-kinds.ts';
import { lifeFigureFor, type LifeTables } from './life.ts';
import type { Option } from './option.ts';
import type { ChangedPart } from './option-fit.ts';
import { isRubberTrack, spreadOf, type OptionMachine } from './option-life.ts';
import type { Figures } from './option-tables.ts';
import { err, ok, type Result } from './result.ts';
import { isSoft, type Source } from './source.ts';

/** The price list and rates of a machine, and the starting list of a kind of track on it. */
export interface OptionPrices {
  readonly prices: PriceList | undefined;
  readonly rates: Rates | undefined;
  readonly starting: PriceList | undefined;
  /** What is wrong with the lists that the machine names; no starting list stands in for those. */
  readonly open?: readonly CostOpen[];
}

/** Why an option has no cost. */
export type OptionOpen =
  | CostOpen
  | { readonly kind: 'other-currency'; readonly option: string; readonly rates: string }
  | { readonly kind: 'no-option-price' };

/** What an option costs, both sides, in minor units, as far as it does not hang on its life. */
export interface CostBasis {
  readonly currency: string;
  readonly tracksMinor: number;
  /** Standard deviation of the logarithm of the price; 0 for a price that somebody gave. */
  readonly priceSpread: number;
  readonly fittingMinor: number;
  /** Rollers and idlers, an hour. */
  readonly wheelsPerHour: number;
  /** One set of sprockets, and how many lives of the tracks it lasts. */
  readonly sprocketsMinor: number;
  readonly sprocketSets: number;
  /** A broken shoe or link of steel. */
  readonly breakMinor: number;
  /** A set of pads, and the hours that it lasts; 0 where there are none. */
  readonly padsMinor: number;
  readonly padHours: number;
  readonly besides: readonly { readonly part: ChangedPart; readonly minor: number }[];
  readonly besidesMinor: number;
  readonly soft: boolean;
  readonly sources: readonly Source[];
}

type Priced = { readonly minor: number; readonly hours: number; readonly source: Source };

const hasPads = ({ track }: Pick<Option, 'track'>): boolean =>
  track === 'steel-pads' || track === 'rubber-shoes';

/** A line of the machine's own list counts before one of the starting list. */
function pricedOf({ prices, starting }: OptionPrices, currency: string, job: JobKind): Priced | undefined {
  const lists = [prices, starting].filter((each) => each?.currency === currency);
  for (const list of lists) {
    const line = list && priceLine(list, job);
    if (line) return { minor: line.minor, hours: line.labourHours, source: line.source };
  }
  return undefined;
}

const tracksJobs = (option: Option): readonly JobKind[] => {
  if (isRubberTrack(option.track)) return ['renew-track'];
  return hasPads(option) ? ['renew-chain', 'renew-shoes', 'renew-pads'] : ['renew-chain', 'renew-shoes'];
};

const rollerHours = (life: LifeTables, { kind }: OptionMachine, option: Option, figures: Figures): number => {
  const figure = lifeFigureFor(life, { item: 'roller-tread', kind, track: option.track });
  const middle = figure ? Math.sqrt(figure.lowHours * figure.highHours) : Infinity;
  return isRubberTrack(option.track) ? middle : middle * figures.restOnSteel.value;
};

export interface CostCase {
  readonly machine: OptionMachine;
  readonly prices: OptionPrices;
  readonly life: LifeTables;
  readonly figures: Figures;
  readonly needs: readonly ChangedPart[];
}

interface Gathered {
  readonly lines: ReadonlyMap<JobKind, Priced>;
  readonly labour: Rates['labourPerHour'];
}

const doneOn = ({ lines, labour }: Gathered, job: JobKind): number => {
  const line = lines.get(job);
  return line ? line.minor + line.hours * labour.minor : 0;
};

/** Wheels wear whatever track runs on them, steel's sooner. */
function wheelsOf(of: CostCase, option: Option, all: Gathered): number {
  const { shape } = of.machine;
  const hours = rollerHours(of.life, of.machine, option, of.figures);
  const side =
    doneOn(all, 'renew-bottom-roller') * shape.bottomRollers +
    doneOn(all, 'renew-carrier-roller') * shape.carrierRollers +
    doneOn(all, 'renew-idler') * shape.idlers;
  return (2 * side) / hours;
}

const changeJobs: Readonly<Record<ChangedPart, JobKind>> = {
  sprocket: 'renew-sprocket',
  'bottom-roller': 'renew-bottom-roller',
  idler: 'renew-idler',
};

function besidesOf({ needs, machine: { shape } }: CostCase, all: Gathered): CostBasis['besides'] {
  const counts = { sprocket: 1, 'bottom-roller': shape.bottomRollers, idler: shape.idlers };
  return needs.map((part) => ({ part, minor: 2 * counts[part] * doneOn(all, changeJobs[part]) }));
}

/** The jobs whose prices an option leans on. */
function wanted(option: Option, { shape }: OptionMachine): readonly JobKind[] {
  return [
    ...(option.price === undefined || option.fittingHours === undefined ? tracksJobs(option) : []),
    ...(hasPads(option) ? (['renew-pads'] as const) : []),
    ...(isRubberTrack(option.track) ? [] : (['change-link'] as const)),
    'renew-sprocket',
    ...(shape.idlers > 0 ? (['renew-idler'] as const) : []),
    ...(shape.bottomRollers > 0 ? (['renew-bottom-roller'] as const) : []),
    ...(shape.carrierRollers > 0 ? (['renew-carrier-roller'] as const) : []),
  ];
}

function gathered(
  of: CostCase,
  option: Option,
  currency: string,
  labour: Rates['labourPerHour'],
): Result<Gathered, OptionOpen> {
  const lines = new Map<JobKind, Priced>();
  for (const job of wanted(option, of.machine)) {
    const priced = pricedOf(of.prices, currency, job);
    if (!priced) return err({ kind: 'no-price', job });
    lines.set(job, priced);
  }
  return ok({ lines, labour });
}

/** Tracks for both sides, ready to fit; shoes and pads come on a new chain. */
function tracksOf(option: Option, { lines }: Gathered): number {
  const side =
    option.price?.minor ?? tracksJobs(option).reduce((sum, job) => sum + (lines.get(job)?.minor ?? 0), 0);
  return 2 * side;
}

function fittingOf(option: Option, { lines, labour }: Gathered, rates: Rates): number {
  const own = option.fittingHours;
  const [first] = tracksJobs(option);
  const hours = own ?? (first && lines.get(first)?.hours) ?? 0;
  const setUp = own === undefined ? rates.liftSide.minor + rates.trackOffSide.minor : 0;
  return 2 * (hours * labour.minor + setUp);
}

/** What an option costs, or why that is not known: nothing stands for a price that is not there. */
export function costBasis(of: CostCase, option: Option): Result<CostBasis, OptionOpen> {
  const { prices, rates, open = [] } = of.prices;
  // Without a list of its own a machine has the starting ones; a list that it names and that cannot be used is another matter.
  const wrong = open.find(({ kind }) => kind !== 'no-prices');
  if (wrong) return err(wrong);
  if (!rates) return err({ kind: 'no-rates' });
  const { currency } = rates;
  if (prices && prices.currency !== currency)
    return err({ kind: 'two-currencies', prices: prices.currency, rates: currency });
  const given = option.price;
  if (given && given.currency !== currency)
    return err({ kind: 'other-currency', option: given.currency, rates: currency });
  const all = gathered(of, option, currency, rates.labourPerHour);
  if (!all.ok) return all;
  const rubber = isRubberTrack(option.track);
  const { figures } = of;
  const pads = lifeFigureFor(of.life, { item: 'pad-height', kind: of.machine.kind, track: option.track });
  const besides = besidesOf(of, all.value);
  const sources = [
    ...[...all.value.lines.values()].map(({ source }) => source),
    rates.labourPerHour.source,
    ...(given?.source ? [given.source] : []),
  ];
  return ok({
    currency,
    tracksMinor: tracksOf(option, all.value),
    priceSpread: given ? 0 : spreadOf(figures.priceSpread.value),
    fittingMinor: fittingOf(option, all.value, rates),
    wheelsPerHour: wheelsOf(of, option, all.value),
    sprocketsMinor: 2 * doneOn(all.value, 'renew-sprocket'),
    sprocketSets: (rubber ? figures.sprocketSetsRubber : figures.sprocketSetsSteel).value,
    breakMinor: doneOn(all.value, 'change-link'),
    padsMinor: hasPads(option) ? 2 * doneOn(all.value, 'renew-pads') : 0,
    padHours: pads ? Math.sqrt(pads.lowHours * pads.highHours) : Infinity,
    besides,
    besidesMinor: option.besidesMinor ?? besides.reduce((sum, { minor }) => sum + minor, 0),
    soft: sources.some(isSoft),
    sources,
  });
}
