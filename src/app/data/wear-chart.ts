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
  /** Ends of the axis, in meter hours. */
  readonly from: number;
  readonly to: number;
  /** Upper end of the other axis in percent. */
  readonly most: number;
}

const leastAhead = 250;
const mostAhead = 4000;
const bandSteps = 12;

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
  return Array.from({ length: Math.floor(to / step) - first + 1 }, (_, n) => (first + n) * step);
}

/** How far ahead the forecast is drawn: until nine of ten such parts are worn out, within reason. */
function aheadOf({ left }: PartHours): number {
  if (!left) return 0;
  const end = Number.isFinite(left.high) ? left.high : left.low * 1.5;
  return Math.min(mostAhead, Math.max(leastAhead, Number.isFinite(end) ? end : mostAhead));
}

/** Lays out a part; undefined when nothing was ever read of it. */
export function wearChart(part: PartHours, offset: number): WearChart | undefined {
  const { points, events } = part.history;
  const last = points.at(-1);
  if (!last) return undefined;
  const marks = events.flatMap((event) =>
    event.kind === 'read' ? [] : [{ kind: event.kind, meter: event.hours - offset }],
  );
  const ahead = aheadOf(part);
  const hours = Array.from({ length: bandSteps + 1 }, (_, n) => (ahead * n) / bandSteps);
  const { state } = part;
  const band = state && ahead > 0 ? bandOf(state, hours) : [];
  const start = (state?.hours ?? last.hours) - offset;
  const meters = [...points.map((point) => point.hours - offset), ...marks.map(({ meter }) => meter)];
  const highest = Math.max(110, ...points.map(({ percent, u }) => percent + 2 * u), band.at(-1)?.middle ?? 0);
  return {
    points: points.map((point) => ({ ...point, meter: point.hours - offset })),
    marks,
    band: band.map((each) => ({ ...each, meter: start + each.hours })),
    from: Math.min(...meters),
    to: Math.max(...meters, start + ahead),
    most: Math.min(200, Math.ceil(highest / 10) * 10),
  };
}
