import { bandOf, type BandPoint } from '../../core/forecast-band.ts';
import type { PartHours } from '../../core/hours-left.ts';
import type { Point } from '../../core/history.ts';

/** A part's wear over the hours of its meter, as the plot and the table show it. */
export interface WearChart {
  readonly points: readonly (Point & { readonly meter: number })[];
  /** Fittings, and work that made the wear unknown, by the meter. */
  readonly marks: readonly { readonly kind: 'fitted' | 'stepped'; readonly meter: number }[];
  /** From the last reading on; empty without a forecast. */
  readonly band: readonly (BandPoint & { readonly meter: number })[];
  /** The same at round hours, for the table. */
  readonly rows: readonly (BandPoint & { readonly meter: number })[];
  /** Ends of the axis, in meter hours. */
  readonly from: number;
  readonly to: number;
  /** Upper end of the other axis in percent. */
  readonly most: number;
}

const leastAhead = 250;
const mostAhead = 4000;
const bandSteps = 12;
const tableRows = 8;

/** A step of 1, 2 or 5 times a power of ten that gives about so many ticks. */
export function tickStep(span: number, ticks: number): number {
  const rough = span / ticks;
  const power = 10 ** Math.floor(Math.log10(rough));
  const [step = 10] = [1, 2, 5, 10].filter((each) => each * power >= rough);
  return step * power;
}

/** Round hours between two ends, the ends left out where they are not round. */
export function ticksBetween(from: number, to: number, ticks: number): readonly number[] {
  const step = tickStep(Math.max(1, to - from), ticks);
  const first = Math.ceil(from / step);
  const found = Array.from({ length: Math.floor(to / step) - first + 1 }, (_, n) => (first + n) * step);
  // One tick alone is no scale.
  return found.length < 2 && to > from ? ticksBetween(from, to, ticks + 1) : found;
}

/** How far ahead of the last walk the forecast is drawn: until nine of ten such parts are worn out, within reason. */
function aheadOf({ left }: PartHours): number {
  if (!left) return 0;
  const end = Number.isFinite(left.high) ? left.high : left.low * 1.5;
  return Math.min(mostAhead, Math.max(leastAhead, Number.isFinite(end) ? end : mostAhead));
}

/**
 * Lays out a part; undefined when nothing was ever read of it. The band starts at the part's last reading, while hours
 * left count from the machine's last walk, which may be later.
 * @param now running hours of that walk
 */
export function wearChart(part: PartHours, offset: number, now: number): WearChart | undefined {
  const { points, events } = part.history;
  const last = points.at(-1);
  if (!last) return undefined;
  const marks = events.flatMap((event) =>
    event.kind === 'read' ? [] : [{ kind: event.kind, meter: event.hours - offset }],
  );
  const { state } = part;
  const since = Math.max(0, now - (state?.hours ?? last.hours));
  const ahead = state ? since + aheadOf(part) : 0;
  const hours = Array.from({ length: bandSteps + 1 }, (_, n) => (ahead * n) / bandSteps);
  const start = (state?.hours ?? last.hours) - offset;
  const bandAt = (after: readonly number[]): WearChart['band'] =>
    state && ahead > 0 ? bandOf(state, after).map((each) => ({ ...each, meter: start + each.hours })) : [];
  const band = bandAt(hours);
  const round = ticksBetween(start, start + ahead, tableRows).filter((meter) => meter > start);
  const meters = [...points.map((point) => point.hours - offset), ...marks.map(({ meter }) => meter)];
  const highest = Math.max(110, ...points.map(({ percent, u }) => percent + 2 * u), band.at(-1)?.middle ?? 0);
  return {
    points: points.map((point) => ({ ...point, meter: point.hours - offset })),
    marks,
    band,
    rows: bandAt(round.map((meter) => meter - start)),
    from: Math.min(...meters),
    to: Math.max(...meters, start + ahead),
    most: Math.min(200, Math.ceil(highest / 10) * 10),
  };
}
