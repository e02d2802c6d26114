import { ticksBetween, type WearChart } from '../data/wear-chart.ts';
import { history as words } from '../../words/en/history.ts';
import { formatter } from '../data/format.ts';
import styles from './wear-plot.module.css';

interface WearPlotProps {
  readonly chart: WearChart;
  readonly title: string;
  readonly summary: string;
}

// Less than the 324 pixels that it has on a phone of 360, so that 14 units are never less than 14 pixels there.
const width = 320;
const height = 300;
const edge = { left: 44, right: 12, top: 14, bottom: 44 };

/** Wear against hours: readings with their errors, the forecast as a hatched band, the limit as a thick line. */
export function WearPlot({ chart, title, summary }: WearPlotProps) {
  const x = (meter: number): number =>
    edge.left +
    ((meter - chart.from) / Math.max(1, chart.to - chart.from)) * (width - edge.left - edge.right);
  const y = (percent: number): number => {
    const inside = Math.min(chart.most, Math.max(0, percent));
    return height - edge.bottom - (inside / chart.most) * (height - edge.top - edge.bottom);
  };
  return (
    <svg
      class={styles.plot}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`${title}. ${summary}`}
    >
      <defs>
        <pattern id="band" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="2.5" height="8" fill="currentColor" />
        </pattern>
      </defs>
      <Axes chart={chart} x={x} y={y} />
      <Band chart={chart} x={x} y={y} />
      <path class={styles.limit} d={`M${edge.left} ${y(100)}H${width - edge.right}`} />
      <text class={styles.limitText} x={edge.left + 6} y={y(100) - 6}>
        {words.limit}
      </text>
      {chart.marks.map(({ kind, meter }, n) => (
        <g key={n}>
          <path class={styles.mark} d={`M${x(meter)} ${edge.top}V${height - edge.bottom}`} />
          <text class={styles.label} x={x(meter) + 5} y={edge.top + 10}>
            {words.marks[kind]}
          </text>
        </g>
      ))}
      <path class={styles.line} d={lineOf(chart, x, y)} />
      {chart.points.map(({ walk, meter, percent, u }) => (
        <g key={walk}>
          <path class={styles.error} d={`M${x(meter)} ${y(percent - 2 * u)}V${y(percent + 2 * u)}`} />
          <circle class={styles.point} cx={x(meter)} cy={y(percent)} r="5.5" />
        </g>
      ))}
      <text class={styles.label} x={width - edge.right} y={height - 6} text-anchor="end">
        {words.axisHours}
      </text>
      <text class={styles.label} x={edge.left} y={height - 6}>
        {words.axisPercent}
      </text>
    </svg>
  );
}

interface Scaled {
  readonly chart: WearChart;
  readonly x: (meter: number) => number;
  readonly y: (percent: number) => number;
}

function Axes({ chart, x, y }: Scaled) {
  const format = formatter.value;
  const percents = chart.most > 120 ? [0, 50, 100, 150, 200] : [0, 25, 50, 75, 100];
  return (
    <>
      {percents
        .filter((each) => each <= chart.most)
        .map((each) => (
          <g key={each}>
            <path class={styles.grid} d={`M${edge.left} ${y(each)}H${width - edge.right}`} />
            <text class={styles.label} x={edge.left - 6} y={y(each) + 5} text-anchor="end">
              {format.number(each)}
            </text>
          </g>
        ))}
      {ticksBetween(chart.from, chart.to, 3).map((each) => (
        <g key={each}>
          <path class={styles.grid} d={`M${x(each)} ${height - edge.bottom}v6`} />
          <text
            class={styles.label}
            x={x(each)}
            y={height - edge.bottom + 20}
            text-anchor={x(each) > width - 34 ? 'end' : 'middle'}
          >
            {format.number(each)}
          </text>
        </g>
      ))}
      <path
        class={styles.axis}
        d={`M${edge.left} ${edge.top}V${height - edge.bottom}H${width - edge.right}`}
      />
    </>
  );
}

function Band({ chart: { band }, x, y }: Scaled) {
  if (band.length === 0) return null;
  const along = (pick: 'low' | 'middle' | 'high'): readonly string[] =>
    band.map((each) => `${x(each.meter).toFixed(1)} ${y(each[pick]).toFixed(1)}`);
  const outline = [...along('high'), ...[...along('low')].reverse()].join('L');
  return (
    <>
      <path class={styles.band} d={`M${outline}Z`} fill="url(#band)" />
      <path class={styles.middle} d={`M${along('middle').join('L')}`} />
    </>
  );
}

/** From the fitting, where it is known, over the readings since; those of parts before are points alone. */
function lineOf({ points, marks }: WearChart, x: Scaled['x'], y: Scaled['y']): string {
  const start = marks.filter(({ kind }) => kind === 'fitted').at(-1);
  const step = marks.filter(({ kind }) => kind === 'stepped').at(-1);
  const since = Math.max(start?.meter ?? -Infinity, step?.meter ?? -Infinity);
  const mine = points.filter(({ meter }) => meter >= since);
  const from = start && start.meter === since ? [`${x(start.meter)} ${y(0)}`] : [];
  const all = [...from, ...mine.map(({ meter, percent }) => `${x(meter)} ${y(percent)}`)];
  return all.length < 2 ? '' : `M${all.join('L')}`;
}
