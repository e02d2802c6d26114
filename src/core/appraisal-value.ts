import { worthTogether, eightOfTen, type Range, type Stake, type Worth } from './appraisal-interval.ts';
import { countOf, leftOf, wearItemsOf, wearingKinds } from './appraisal-parts.ts';
import type { AppraisalSettings } from './appraisal-settings.ts';
import type { Found, Work } from './appraisal-work.ts';
import { jobCost, type CostOpen, type JobCost } from './costs.ts';
import type { Item } from './items.ts';
import type { JobKind } from './job-kinds.ts';
import { sides, type Side } from './machine.ts';
import type { ItemOutcome } from './score.ts';

/** What parts of one kind on one side are worth as they are; amounts in minor units. */
export interface ValueLine {
  readonly kind: JobKind;
  readonly side: Side;
  /** How many of the row were measured and count here. */
  readonly count: number;
  /** Of a part with all its life left: parts and labour of the count. */
  readonly installedMinor: number;
  readonly cost: JobCost;
  /** What has least left, and how much. */
  readonly worst: ItemOutcome;
  readonly left: Range;
  readonly minor: Range;
  /** More of the row was measured and had more left. */
  readonly isDragged: boolean;
  /** The reading's own error reaches to where it can no longer be sold. */
  readonly isClose: boolean;
}

/** Parts that no value is put on, with why. */
export interface ValueOpen {
  readonly kind: JobKind;
  readonly side: Side;
  readonly count: number;
  readonly why:
    CostOpen | { readonly kind: 'no-reading' | 'no-limit' | 'by-eye'; readonly items: readonly string[] };
}

/** What the measured parts of a machine are worth. */
export interface Value {
  readonly lines: readonly ValueLine[];
  /** The sum over the lines, in whole minor units; undefined where nothing can be valued. */
  readonly sum: Worth | undefined;
  readonly open: readonly ValueOpen[];
}

/** One part of a kind with what was measured of it. */
interface Member {
  readonly worst: ItemOutcome;
  readonly left: number;
  readonly u: number;
}

type Weighed = Member | { readonly missing: readonly string[]; readonly why: 'no-reading' | 'no-limit' };

/** A part with several measures is as good as the worst of them, so that all have to be known. */
function weigh(items: readonly Item[], outcomes: readonly ItemOutcome[]): Weighed {
  const of = (item: Item): ItemOutcome | undefined =>
    outcomes.find(({ state }) => state.item.id === item.id && state.sampled !== undefined);
  const unread = items.filter((item) => !of(item)).map(({ id }) => id);
  const measured = items
    .flatMap((item) => of(item) ?? [])
    .flatMap((worst): readonly Member[] => {
      const left = leftOf(worst);
      return left === undefined ? [] : [{ worst, left, u: worst.state.wear?.u ?? 0 }];
    });
  const [first] = [...measured].sort((a, b) => a.left - b.left);
  if (unread.length > 0 || !first) {
    const why = unread.length > 0 ? 'no-reading' : 'no-limit';
    return { missing: why === 'no-reading' ? unread : items.map(({ id }) => id), why };
  }
  return first;
}

const rounded = ({ low, middle, high }: Range): Range => ({
  low: Math.round(low),
  middle: Math.round(middle),
  high: Math.round(high),
});

interface Weighing {
  readonly found: Found;
  readonly settings: AppraisalSettings;
  /** Work that renews parts: those are worth nothing as they are. */
  readonly work: Work;
}

interface Valued {
  readonly line?: ValueLine;
  readonly stakes: readonly Stake[];
  readonly open: readonly ValueOpen[];
}

/** The places of a row that the work renews. */
function renewedAt({ work }: Weighing, kind: JobKind, side: Side): ReadonlySet<string> | 'all' {
  const line = work.lines.find(({ job }) => job.kind === kind && job.side === side);
  if (!line) return new Set();
  return line.job.count > new Set(line.because.map(({ state }) => state.place)).size || line.isRow
    ? 'all'
    : new Set(line.because.map(({ state }) => state.place));
}

function valueOf(weighing: Weighing, kind: JobKind, side: Side): Valued {
  const { found, settings } = weighing;
  const renewed = renewedAt(weighing, kind, side);
  const row = countOf(kind, found.shape);
  if (renewed === 'all' || renewed.size >= row) return { stakes: [], open: [] };
  const items = wearItemsOf(kind, found.shape);
  const open = (count: number, why: ValueOpen['why']): readonly ValueOpen[] =>
    count > 0 ? [{ kind, side, count, why }] : [];
  if (items.length === 0)
    return { stakes: [], open: open(row - renewed.size, { kind: 'by-eye', items: [] }) };
  const here = found.outcomes.filter(
    ({ state }) => state.side === side && items.some(({ id }) => id === state.item.id),
  );
  const places = [...new Set(here.map(({ state }) => state.place))].filter((place) => !renewed.has(place));
  const weighed = places.map((place) =>
    weigh(
      items,
      here.filter(({ state }) => state.place === place),
    ),
  );
  const members = weighed.filter((each): each is Member => 'left' in each);
  const lacking = weighed.find((each) => 'missing' in each);
  const why = lacking?.why ?? 'no-reading';
  const missing = lacking?.missing ?? items.map(({ id }) => id);
  const rest = open(row - renewed.size - members.length, { kind: why, items: missing });
  if (members.length === 0) return { stakes: [], open: rest };
  const cost = jobCost(found.costs, kind, members.length);
  if (!cost.ok) return { stakes: [], open: [...open(members.length, cost.error), ...rest] };
  return { ...lineOf(kind, side, members, cost.value, settings), open: rest };
}

function lineOf(
  kind: JobKind,
  side: Side,
  members: readonly Member[],
  cost: JobCost,
  { sets, saleable, priceSpread }: AppraisalSettings,
): Pick<Valued, 'stakes'> & { readonly line: ValueLine } {
  const installedMinor = cost.partsMinor + cost.labourMinor;
  const worst = members.reduce((least, each) => (each.left < least.left ? each : least));
  const counted = sets === 'worst' ? members.map(() => worst) : members;
  // A row that counts as its worst part is off as one.
  const stakes =
    sets === 'worst'
      ? [{ amount: installedMinor, left: worst.left, u: worst.u, soft: cost.soft }]
      : counted.map(({ left, u }) => ({
          amount: installedMinor / members.length,
          left,
          u,
          soft: cost.soft,
        }));
  const off = eightOfTen * worst.u;
  return {
    stakes,
    line: {
      kind,
      side,
      count: members.length,
      installedMinor,
      cost,
      worst: worst.worst,
      left: { low: worst.left - off, middle: worst.left, high: worst.left + off },
      minor: rounded(worthTogether(stakes, saleable, priceSpread)),
      isDragged: sets === 'worst' && members.some(({ left }) => left > worst.left),
      isClose: Math.abs(worst.left - saleable) <= off,
    },
  };
}

/** What the parts that were measured are worth as they are: the share of life left of their installed price. */
export function valueLeft(found: Found, settings: AppraisalSettings, work: Work): Value {
  const weighing = { found, settings, work };
  const all = wearingKinds(found.shape).flatMap((kind) => sides.map((side) => valueOf(weighing, kind, side)));
  const lines = all.flatMap(({ line }) => line ?? []);
  const stakes = all.flatMap((each) => each.stakes);
  const sum = worthTogether(stakes, settings.saleable, settings.priceSpread);
  const { fromWear, fromPrice } = sum;
  return {
    lines,
    sum:
      lines.length === 0
        ? undefined
        : { ...rounded(sum), fromWear: rounded(fromWear), fromPrice: rounded(fromPrice) },
    open: all.flatMap(({ open }) => open),
  };
}
