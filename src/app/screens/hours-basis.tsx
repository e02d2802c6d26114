import { bandReaches, fitLine, lineReaches } from '../../core/trend.ts';
import { momentsOf } from '../../core/wear-filter.ts';
import type { PartHours } from '../../core/hours-left.ts';
import type { Outlook } from '../../core/outlook.ts';
import { toMm } from '../../core/quantity.ts';
import { ahead as words } from '../../words/en/ahead.ts';
import { doubtWords } from '../../words/en/history.ts';
import { makeDates } from '../../words/dates.ts';
import { aboutHours } from '../../words/ahead-text.ts';
import { formatter } from '../data/format.ts';
import { preferences } from '../data/preferences.ts';
import { sizeText } from '../data/tool.ts';
import { SourceLine } from '../parts/source-line.tsx';
import forms from '../parts/forms.module.css';
import styles from './ahead.module.css';

interface BasisProps {
  readonly part: PartHours;
  readonly outlook: Outlook;
}

/** A figure taken apart: readings, sheet, life figure, and the formula that joins them. */
export function HoursBasis({ part, outlook }: BasisProps) {
  return (
    <>
      {part.doubts.map((doubt) => (
        <p key={doubt} class={styles.open}>
          {doubtWords[doubt].what} {doubtWords[doubt].mend}
        </p>
      ))}
      <Readings part={part} outlook={outlook} />
      <Sheet part={part} />
      <Pace part={part} outlook={outlook} />
      <StraightLine part={part} outlook={outlook} />
    </>
  );
}

function Readings({ part, outlook }: BasisProps) {
  const format = formatter.value;
  const dates = makeDates(preferences.value.locale);
  return (
    <div>
      <h3>{words.basisReadings}</h3>
      <ul>
        {part.history.points.map(({ walk, hours, mm, percent, u }) => {
          const at = outlook.walkedAt.get(walk);
          return (
            <li key={walk}>
              {words.basisRow(
                at ? dates.day(at) : '',
                format.hours(hours - outlook.meterOffset),
                sizeText(part.history.item.id, mm),
                `${format.percent(percent)} ± ${format.percent(2 * u)}`,
              )}
            </li>
          );
        })}
      </ul>
    </div>
  );
}

function Sheet({ part: { history } }: { part: PartHours }) {
  const { limits, item } = history;
  const hundred = limits.limits.find((limit) => limit.hundred);
  if (!limits.new || !hundred) return null;
  const size = (at: number): string => sizeText(item.id, toMm(at, limits.unit));
  return (
    <div>
      <h3>{words.basisSheet(size(limits.new.at), size(hundred.at))}</h3>
      <SourceLine source={limits.new.source} />
      <SourceLine source={hundred.source} />
      <p class={forms.soft}>{words.basisWorn}</p>
    </div>
  );
}

/** What the readings since the part was fitted say by themselves: neither prior nor scatter, a check on the rest. */
function StraightLine({ part, outlook }: BasisProps) {
  const format = formatter.value;
  const { events } = part.history;
  const from = events.map(({ kind }) => kind).lastIndexOf('stepped') + 1;
  const points = events
    .slice(from)
    .flatMap((event) => (event.kind === 'read' ? [{ x: event.hours, y: event.percent }] : []));
  const line = points.length < 3 ? undefined : fitLine(points);
  const at = line && line.slope > 0 ? lineReaches(line, 100) : undefined;
  const now = outlook.hours.now ?? 0;
  if (!line || at === undefined || at <= now) return null;
  const left = (hours: number): string => aboutHours(Math.max(0, hours - now), format);
  const band = bandReaches(line, 100, 0.95);
  return (
    <p class={forms.soft}>
      {band?.high === undefined
        ? words.basisLine(left(at))
        : words.basisLineBand(left(at), left(band.low), left(band.high))}
    </p>
  );
}

function Pace({ part: { history, state }, outlook: { life } }: BasisProps) {
  const format = formatter.value;
  const { figure } = history;
  return (
    <div>
      {state && <h3>{words.basisPace(format.percent(Math.exp(momentsOf(state).mean) * 100))}</h3>}
      {figure && (
        <p>
          {words.basisRate(format.hours(figure.lowHours), format.hours(figure.highHours))}{' '}
          <SourceLine source={figure.source} />
        </p>
      )}
      <p class={forms.soft}>{words.basisModel}</p>
      <p class={forms.soft}>
        {words.basisScatter}: {format.percent(life.kappa.value)} <SourceLine source={life.kappa.source} />
        <br />
        {words.basisReading}: {format.percent(life.readingError.value)}{' '}
        <SourceLine source={life.readingError.source} />
      </p>
    </div>
  );
}
