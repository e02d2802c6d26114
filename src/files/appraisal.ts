import type { Appraisal } from '../core/appraisal.ts';
import type { Range } from '../core/appraisal-interval.ts';
import type { MeterCheck } from '../core/appraisal-meter.ts';
import { leftOf } from '../core/appraisal-parts.ts';
import type { Sign } from '../core/appraisal-signs.ts';
import type { ValueLine } from '../core/appraisal-value.ts';
import type { Work, WorkLine } from '../core/appraisal-work.ts';
import type { Json } from '../core/canonical-json.ts';
import type { ItemOutcome } from '../core/score.ts';

// Engines differ in the last bits of an exponential; hours and shares are read no finer than this.
const hundredth = (value: number): number => Math.round(value * 100) / 100;
const tenThousandth = (value: number): number => Math.round(value * 1e4) / 1e4;

const at = ({ state }: ItemOutcome) => ({ place: state.place, item: state.item.id });

const left = (outcome: ItemOutcome): Json => {
  const percent = leftOf(outcome);
  return {
    ...at(outcome),
    call: outcome.atLeast,
    percentLeft: percent === undefined ? null : hundredth(percent),
  };
};

const minor = ({ low, middle, high }: Range) => ({ lowMinor: low, middleMinor: middle, highMinor: high });

const workLine = ({ job, because, isRow, isInstead, cost, minor: sum }: WorkLine): Json => ({
  job: job.id,
  kind: job.kind,
  side: job.side,
  count: job.count,
  minor: sum ?? null,
  ...(cost.ok
    ? {
        partsMinor: cost.value.partsMinor,
        labourHours: cost.value.labourHours,
        labourMinor: cost.value.labourMinor,
        estimate: cost.value.soft,
        sources: cost.value.sources.map(({ mark, text }) => ({ mark, text })),
      }
    : { open: { ...cost.error } }),
  because: because.map(left),
  wholeRow: isRow,
  insteadOfMending: isInstead,
});

const work = ({ lines, setUpMinor, minor: sum, isWhole }: Work) => ({
  minor: sum ?? null,
  isWhole,
  setUpMinor,
  lines: lines.map(workLine),
});

const valueLine = (line: ValueLine): Json => ({
  kind: line.kind,
  side: line.side,
  count: line.count,
  installedMinor: line.installedMinor,
  estimate: line.cost.soft,
  worst: left(line.worst),
  percentLeft: {
    low: hundredth(line.left.low),
    middle: hundredth(line.left.middle),
    high: hundredth(line.left.high),
  },
  ...minor(line.minor),
  dragged: line.isDragged,
  closeToUnsaleable: line.isClose,
});

const spend = ({ spend: of }: Appraisal): Json => {
  const open = of.open.map(({ job, why }) => ({ job: job.id, why: { ...why } }));
  if (!('minor' in of)) return { minor: null, open };
  return {
    hours: of.hours,
    minor: of.minor,
    plannedMinor: of.plannedMinor,
    breakdownMinor: of.breakdownMinor,
    setUpMinor: of.setUpMinor,
    isWhole: of.isWhole,
    lines: of.lines.map((line) => ({
      job: line.costed.job.id,
      inHours: line.inHours === undefined ? null : hundredth(line.inHours),
      breakdownChance: tenThousandth(line.chance),
      minor: line.minor,
    })),
    open,
  };
};

const meter = ({ says, hours, share, parts, isChanged, fault, isTooFast }: MeterCheck): Json => ({
  says,
  hours: hours === undefined ? null : hundredth(hours),
  share: share === undefined ? null : tenThousandth(share),
  changed: isChanged,
  tooFast: isTooFast,
  fault: fault ?? null,
  parts: parts.map(({ part, percent, ranHours, isFittedKnown, takes }) => ({
    place: part.history.place,
    item: part.history.item.id,
    percent: hundredth(percent),
    ranHours: hundredth(ranHours),
    fittedKnown: isFittedKnown,
    takesHours: { low: hundredth(takes.low), high: hundredth(takes.high) },
  })),
});

function sign(of: Sign): Json {
  switch (of.kind) {
    case 'found':
      return { kind: of.kind, ...at(of.outcome), finding: of.outcome.state.finding ?? null };
    case 'adjuster-pumped':
      return { kind: of.kind, ...at(of.outcome), finding: of.outcome.state.finding ?? null };
    case 'sides-differ':
      return { kind: of.kind, item: of.item, left: hundredth(of.left), right: hundredth(of.right) };
    case 'shoes-on-old-chain':
    case 'tracks-on-worn-sprocket':
      return {
        kind: of.kind,
        side: of.side,
        newer: hundredth(of.newer),
        older: of.older === undefined ? null : hundredth(of.older),
      };
    case 'ages-differ':
      return { kind: of.kind, left: of.left, right: of.right };
    case 'meter':
      return { kind: of.kind, says: of.says };
    default:
      return { kind: of.kind };
  }
}

/** An appraisal as plain JSON: money in minor units of the currency, wear in percent left, hours of the engine. */
export function appraisalJson(of: Appraisal): Json {
  const { settings, value, stated, worst } = of;
  const { saleable, sets, hours, priceSpread } = settings;
  return {
    currency: of.currency ?? null,
    closed: of.closed ? { ...of.closed } : null,
    settings: { saleable, sets, hours, priceSpread, stated: statedJson(of), seen: { ...settings.seen } },
    deduct: work(of.deduction),
    value: {
      ...(value.sum
        ? {
            ...minor(value.sum),
            fromReadings: minor(value.sum.fromWear),
            fromPrices: minor(value.sum.fromPrice),
          }
        : { lowMinor: null, middleMinor: null, highMinor: null }),
      lines: value.lines.map(valueLine),
      open: value.open.map(({ kind, side, count, why }) => ({ kind, side, count, why: { ...why } })),
    },
    toStatedCondition: {
      ...work(stated),
      unknown: stated.unknown.map(at),
      never: stated.never.map(({ history }) => ({ place: history.place, item: history.item.id })),
    },
    spend: spend(of),
    meter: meter(of.meter),
    signs: of.signs.map(sign),
    worst: { left: worst.left ? left(worst.left) : null, right: worst.right ? left(worst.right) : null },
    notVerified: of.notVerified.map(at),
    notLooked: [...of.notLooked],
  };
}

const statedJson = ({ settings: { stated } }: Appraisal): Json =>
  stated.kind === 'hours'
    ? { kind: stated.kind, hours: stated.hours }
    : { kind: stated.kind, percent: stated.percent, of: { ...stated.of } };
