import type { ComponentChildren } from 'preact';
import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import { isDemo } from '../../core/keys.ts';
import type { PartHours } from '../../core/hours-left.ts';
import type { Outlook } from '../../core/outlook.ts';
import { ahead } from '../../words/en/ahead.ts';
import { common } from '../../words/en/common.ts';
import { makeDates } from '../../words/dates.ts';
import { history as words, historyFaultWords } from '../../words/en/history.ts';
import { leftText, partName } from '../../words/ahead-text.ts';
import { formatter } from '../data/format.ts';
import { useLive, valueOf } from '../data/live.ts';
import { machineHistory } from '../data/machine-history.ts';
import { fromPath, machinePath, workPath } from '../data/paths.ts';
import { preferences } from '../data/preferences.ts';
import { sizeText } from '../data/tool.ts';
import { wearChart, type WearChart } from '../data/wear-chart.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Fold } from '../parts/fold.tsx';
import { Screen } from '../parts/screen.tsx';
import { Select } from '../parts/select.tsx';
import { WearPlot } from '../parts/wear-plot.tsx';
import { Gone } from './gone.tsx';
import { HoursBasis } from './hours-basis.tsx';
import forms from '../parts/forms.module.css';
import styles from './ahead.module.css';

const prefixes = ['walk/', 'reading/', 'machine/', 'limits/', 'work/'];

/** Wear of each measured part of a machine against its hours, with where it is expected to go. */
export function WearHistory() {
  const { path } = useLocation();
  const key = fromPath('machine', path)?.key;
  const demo = key !== undefined && isDemo(key) ? 'demo/' : '';
  const live = useLive(
    `history of ${key}`,
    prefixes.map((each) => demo + each),
    () => machineHistory(key ?? ('' as never)),
  );
  const found = valueOf(live);
  if (key === undefined) return <Gone />;
  return (
    <Screen
      wide
      title={words.title}
      sub={found?.model.machine.name}
      bar={<ButtonLink href={machinePath(key)}>{common.back}</ButtonLink>}
    >
      {live === undefined && <p>{common.loading}</p>}
      {(found === null || found?.outlook.hours.parts.length === 0) && <p>{words.nothing}</p>}
      {found && found.outlook.hours.parts.length > 0 && <Parts outlook={found.outlook} machine={key} />}
    </Screen>
  );
}

const idOf = ({ history }: PartHours): string => `${history.place}|${history.item.id}`;

function Parts({ outlook, machine }: { outlook: Outlook; machine: string }) {
  const format = formatter.value;
  const { parts } = outlook.hours;
  const [chosen, setChosen] = useState<string>();
  const [isTable, setTable] = useState(false);
  const part = parts.find((each) => idOf(each) === chosen) ?? parts[0];
  if (!part) return null;
  const chart = wearChart(part, outlook.meterOffset, outlook.hours.now ?? 0);
  const title = partName(part, format);
  const summary = summaryOf(part, chart);
  const options = parts.map((each) => ({ value: idOf(each), label: partName(each, format) }));
  return (
    <>
      <Select label={words.part} options={options} chosen={idOf(part)} onChoose={setChosen} />
      <p class={forms.first}>{summary}</p>
      {part.open.map((fault) => (
        <p key={fault} class={styles.open}>
          <strong>{historyFaultWords[fault].what}</strong> {historyFaultWords[fault].mend}{' '}
          <a href={workPath(machine, { component: part.history.item.component, side: part.history.side })}>
            {words.enterWork}
          </a>
        </p>
      ))}
      {chart && !isTable && <WearPlot chart={chart} title={title} summary={summary} />}
      {chart && isTable && <WearTable chart={chart} title={title} part={part} outlook={outlook} />}
      <Button key={isTable ? 'plot' : 'table'} onTap={() => setTable(!isTable)}>
        {isTable ? words.asPlot : words.asTable}
      </Button>
      {!isTable && <p class={forms.soft}>{words.legend}</p>}
      <p class={forms.soft}>
        {outlook.hours.hours.clock === 'travel'
          ? ahead.clockTravel(format.percent((outlook.hours.hours.travelShare ?? 0) * 100))
          : ahead.clockEngine}
      </p>
      <Fold title={ahead.basis}>
        <HoursBasis part={part} outlook={outlook} />
      </Fold>
    </>
  );
}

function summaryOf(part: PartHours, chart: WearChart | undefined): string {
  const format = formatter.value;
  const last = chart?.points.at(-1);
  if (!last) return words.nothingRead;
  const now = words.lastRead(
    `${format.percent(last.percent)} ± ${format.percent(2 * last.u)}`,
    format.hours(last.meter),
  );
  return part.left ? `${now} ${words.left(leftText(part.left, format))}` : now;
}

/** With large text a table is wider than the screen: it scrolls by itself, also by keys, and the page does not. */
const TableBox = ({ label, children }: { label: string; children: ComponentChildren }) => (
  // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reached by keys
  <div class={forms.tableBox} role="region" aria-label={label} tabIndex={0}>
    {children}
  </div>
);

interface TableProps {
  readonly chart: WearChart;
  readonly title: string;
  readonly part: PartHours;
  readonly outlook: Outlook;
}

/** The same as a table: what was read, and what is expected at round hours. */
function WearTable({ chart, title, part, outlook }: TableProps) {
  const format = formatter.value;
  const whole = (value: number): string => format.number(Math.round(value));
  const dates = makeDates(preferences.value.locale);
  return (
    <>
      <TableBox label={words.readings(title)}>
        <table class={`${forms.table} ${styles.table}`}>
          <caption>{words.readings(title)}</caption>
          <thead>
            <tr>
              <th scope="col">{words.date}</th>
              <th scope="col">{words.meter}</th>
              <th scope="col">{words.size}</th>
              <th scope="col">{words.worn}</th>
            </tr>
          </thead>
          <tbody>
            {chart.points.map((point) => {
              const at = outlook.walkedAt.get(point.walk);
              return (
                <tr key={point.walk}>
                  <th scope="row">{at ? dates.day(at) : ''}</th>
                  <td>{format.number(Math.round(point.meter))}</td>
                  <td>{sizeText(part.history.item.id, point.mm)}</td>
                  <td>
                    {whole(point.percent)} ± {whole(2 * point.u)}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </TableBox>
      {chart.rows.length > 0 && (
        <TableBox label={words.expected}>
          <table class={`${forms.table} ${styles.table}`}>
            <caption>{words.expected}</caption>
            <thead>
              <tr>
                <th scope="col">{words.meter}</th>
                <th scope="col">{words.low}</th>
                <th scope="col">{words.middle}</th>
                <th scope="col">{words.high}</th>
              </tr>
            </thead>
            <tbody>
              {chart.rows.map(({ meter, low, middle, high }) => (
                <tr key={meter}>
                  <th scope="row">{format.number(meter)}</th>
                  <td>{whole(low)}</td>
                  <td>{whole(middle)}</td>
                  <td>{whole(high)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      )}
    </>
  );
}
