import { isSoft, type Source } from '../../core/source.ts';
import type { OptionAnswer } from '../../core/option-answer.ts';
import { optionAnswer as words } from '../../words/en/options.ts';
import { againstText, settleTexts } from '../../words/option-fit-text.ts';
import { optionLines, type OptionLine } from '../../words/option-lines.ts';
import { standingText } from '../../words/option-standing.ts';
import { sourceMarkWords } from '../../words/en/sources.ts';
import { capital } from '../../words/outcome-text.ts';
import { formatter } from '../data/format.ts';
import { Fold } from '../parts/fold.tsx';
import { Section } from '../parts/screen.tsx';
import { SourceLine } from '../parts/source-line.tsx';
import forms from '../parts/forms.module.css';
import { isStarting, type Compared } from './comparison.ts';
import styles from './options.module.css';

interface Shown {
  readonly answer: OptionAnswer;
  readonly name: string;
  readonly standing: string;
  readonly lines: readonly OptionLine[];
}

/** Every option as it is shown, those that can be chosen first. */
export function shownOptions(compared: Compared): readonly Shown[] {
  const { result, nameOf, pressure, machine, use, current } = compared;
  const format = formatter.value;
  const hoursAYear = use.hoursAYear ?? result.figures.hoursAYear.value;
  const hasTracks = current !== undefined;
  const of = { hoursAYear, machineKg: machine.massKg, hasTracks, pressure, nameOf, format };
  return [...result.ranked, ...result.others].map((answer) => ({
    answer,
    name: capital(answer.option.name),
    standing: standingText(answer, result, isStarting(answer.id)),
    lines: optionLines(answer, of),
  }));
}

/** Every option with all its figures: cards on a phone, side by side on a desk. */
export function OptionViews({ compared }: { compared: Compared }) {
  const shown = shownOptions(compared);
  if (shown.length === 0) return null;
  return (
    <Section title={words.all}>
      <div class={`${styles.narrow} ${forms.form}`}>
        {shown.map((each) => (
          <Card key={each.answer.id} shown={each} />
        ))}
      </div>
      <div class={styles.wide}>
        <Table all={shown} />
      </div>
    </Section>
  );
}

/** Of a kind by starting figures nobody offers a track yet that could be asked about. */
export const settled = ({ id, fit }: OptionAnswer): OptionAnswer['fit']['toSettle'] =>
  isStarting(id)
    ? fit.toSettle.filter(({ kind }) => kind !== 'not-known' && kind !== 'assumed')
    : fit.toSettle;

function Reasons({ answer }: { answer: OptionAnswer }) {
  const { fit } = answer;
  const format = formatter.value;
  const settle = settleTexts(settled(answer), format);
  return (
    <>
      {fit.against.map((why) => (
        <p key={againstText(why, format)} class={forms.strong}>
          {againstText(why, format)}
        </p>
      ))}
      {settle.length > 0 && (
        <div>
          <strong>{words.settle}</strong>
          <ul class={forms.bullets}>
            {settle.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}

function Card({ shown: { answer, name, standing, lines } }: { shown: Shown }) {
  return (
    <div class={forms.card}>
      <h3>{name}</h3>
      <p class={forms.soft}>{standing}</p>
      <Reasons answer={answer} />
      <Lines lines={lines.filter(({ isMain }) => isMain)} />
      <Fold title={words.rest}>
        <Lines lines={lines.filter(({ isMain }) => !isMain)} />
      </Fold>
      <Sources lines={lines} />
    </div>
  );
}

function Lines({ lines }: { lines: readonly OptionLine[] }) {
  return (
    <dl class={forms.figures}>
      {lines.map((line) => (
        <div key={line.name}>
          <dt>{line.name}</dt>
          <dd>
            {line.text} <Mark sources={line.sources} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** In one word how far a figure can be trusted: that of its softest source. */
function Mark({ sources }: { sources: readonly Source[] }) {
  const soft = sources.find(isSoft) ?? sources.find(({ mark }) => mark === 'common-practice') ?? sources[0];
  if (!soft) return null;
  return <span class={`${forms.soft} ${isSoft(soft) ? styles.mark : ''}`}>{sourceMarkWords[soft.mark]}</span>;
}

function Sources({ lines }: { lines: readonly OptionLine[] }) {
  const said = lines.filter(({ sources }) => sources.length > 0);
  return (
    <Fold title={words.sources}>
      {said.map(({ name, sources }) => (
        <div key={name} class={forms.figure}>
          <strong>{name}</strong>
          <span>
            {sources.map((source) => (
              <div key={`${source.mark} ${source.text}`}>
                <SourceLine source={source} />
              </div>
            ))}
          </span>
        </div>
      ))}
    </Fold>
  );
}

function Table({ all }: { all: readonly Shown[] }) {
  const names = [...new Set(all.flatMap(({ lines }) => lines.map(({ name }) => name)))];
  return (
    <>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reached by keys */}
      <div class={forms.tableBox} role="group" aria-label={words.table} tabIndex={0}>
        <table class={`${forms.table} ${styles.table}`}>
          <caption>{words.table}</caption>
          <thead>
            <tr>
              <th scope="col">{words.option}</th>
              {all.map(({ answer, name, standing }) => (
                <th key={answer.id} scope="col">
                  {name}
                  <br />
                  <span class={forms.soft}>{standing}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {names.map((name) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                {all.map(({ answer, lines }) => (
                  <Cell key={answer.id} line={lines.find((line) => line.name === name)} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div class={forms.form}>
        {all.map(({ answer, name, lines }) => (
          <div key={answer.id} class={forms.card}>
            <h3>{name}</h3>
            <Reasons answer={answer} />
            <Sources lines={lines} />
          </div>
        ))}
      </div>
    </>
  );
}

function Cell({ line }: { line: OptionLine | undefined }) {
  return (
    <td>
      {line && (
        <span class={styles.cell}>
          {line.text} <Mark sources={line.sources} />
        </span>
      )}
    </td>
  );
}
