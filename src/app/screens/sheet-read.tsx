import type { ItemLimits, Limit, LimitSheet, SagSpec } from '../../core/limits.ts';
import type { SheetProblem } from '../../core/check-sheet.ts';
import { limitMeaningWords, loadWords } from '../../words/en/choices.ts';
import { itemName } from '../../words/en/items.ts';
import { postureWords, sagMethodWords } from '../../words/en/sag.ts';
import { sheets as words } from '../../words/en/sheets.ts';
import { sheetProblemLine } from '../../words/en/check-lines.ts';
import { formatter } from '../data/format.ts';
import { printed } from '../data/printed.ts';
import { Section } from '../parts/screen.tsx';
import { SourceLine } from '../parts/source-line.tsx';
import styles from '../parts/forms.module.css';
import parts from '../parts/parts.module.css';

/** For which parts of its component an entry holds; nothing when it is for all. */
export function positionText({ positions }: Pick<ItemLimits, 'positions'>): string | undefined {
  if (positions === undefined) return undefined;
  return typeof positions === 'string' ? words.positions[positions] : words.numbers(positions.join(', '));
}

interface SheetReadProps {
  readonly sheet: LimitSheet;
  readonly problems: readonly SheetProblem[];
}

/** Everything that stands on a sheet, each number with its source. */
export function SheetRead({ sheet, problems }: SheetReadProps) {
  const at = (list: 'items' | 'sag', index: number) =>
    problems.filter((each) => each.at.list === list && each.at.index === index);
  return (
    <>
      <Section title={words.items}>
        {sheet.items.length === 0 && <p>{words.noItems}</p>}
        <div class={styles.columns}>
          {sheet.items.map((entry, i) => (
            <ItemCard key={i} entry={entry} problems={at('items', i)} />
          ))}
        </div>
      </Section>
      <Section title={words.sag}>
        {sheet.sag.length === 0 && <p>{words.noSag}</p>}
        <div class={styles.columns}>
          {sheet.sag.map((spec, i) => (
            <SagCard key={i} spec={spec} problems={at('sag', i)} />
          ))}
        </div>
      </Section>
    </>
  );
}

export const Problems = ({ problems }: { problems: readonly SheetProblem[] }) => (
  <>
    {problems.map((problem) => (
      <p key={problem.kind} class={parts.fault} data-fault tabIndex={-1}>
        {sheetProblemLine(problem)}
      </p>
    ))}
  </>
);

interface FigureProps {
  readonly name: string;
  readonly value: string;
  readonly lines?: readonly (string | undefined | false)[];
  readonly source: ItemLimits['limits'][number]['source'];
}

/** One number: what it is, how much, and where it is from. */
const Figure = ({ name, value, lines = [], source }: FigureProps) => (
  <div class={styles.figure}>
    <span>{name}</span>
    <strong>{value}</strong>
    <span class={styles.soft}>
      {lines.filter(Boolean).map((line) => (
        <>
          {line}
          <br />
        </>
      ))}
      <SourceLine source={source} />
    </span>
  </div>
);

function ItemCard({ entry, problems }: { entry: ItemLimits; problems: readonly SheetProblem[] }) {
  const { unit, resolution, limits, breaks = [] } = entry;
  const size = (at: number): string => printed(at, unit, resolution);
  const where = positionText(entry);
  const alsoLine = ({ also }: Limit) =>
    also && words.alsoPrinted(printed(also.at, also.unit, also.resolution));
  const loadLine = (limit: Limit) =>
    limit.loads && words.forLoads(limit.loads.map((each) => loadWords[each].label).join(', '));
  return (
    <article class={styles.card}>
      <h3>
        {itemName(entry.item)}
        {where !== undefined && `, ${where}`}
      </h3>
      {entry.new ? (
        <Figure
          name={words.newSize}
          value={
            entry.new.tolerance === undefined
              ? size(entry.new.at)
              : words.within(size(entry.new.at), size(entry.new.tolerance))
          }
          source={entry.new.source}
        />
      ) : (
        <span>{words.newMissing}</span>
      )}
      {limits.length === 0 && <span>{words.noLimits}</span>}
      {limits.map((limit, i) => (
        <Figure
          key={i}
          name={limitMeaningWords[limit.means]}
          value={size(limit.at)}
          lines={[limit.hundred && words.hundred, loadLine(limit), alsoLine(limit)]}
          source={limit.source}
        />
      ))}
      {breaks.map((each) => (
        <Figure
          key={each.at}
          name={words.wornAt(formatter.value.percent(each.percent))}
          value={size(each.at)}
          source={each.source}
        />
      ))}
      <Problems problems={problems} />
    </article>
  );
}

function SagCard({ spec, problems }: { spec: SagSpec; problems: readonly SheetProblem[] }) {
  const { unit, resolution } = spec;
  const size = (at: number): string => printed(at, unit, resolution);
  const method = sagMethodWords[spec.method];
  return (
    <article class={styles.card}>
      <h3>{method.name}</h3>
      <span class={styles.soft}>{method.reads}</span>
      <Figure
        name={postureWords[spec.posture]}
        value={words.fromTo(size(spec.low), size(spec.high))}
        lines={[
          words.cleanPrint[spec.clean ?? 'unsaid'],
          spec.also &&
            words.alsoPrinted(
              words.fromTo(
                printed(spec.also.low, spec.also.unit, spec.also.resolution),
                printed(spec.also.high, spec.also.unit, spec.also.resolution),
              ),
            ),
          spec.taut !== undefined && words.tautAt(size(spec.taut)),
          spec.derailAbove !== undefined && words.derailsAt(size(spec.derailAbove)),
          spec.loadN !== undefined && words.underLoad(formatter.value.number(spec.loadN)),
        ]}
        source={spec.source}
      />
      <Problems problems={problems} />
    </article>
  );
}
