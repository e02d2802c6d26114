import type { ComponentChildren } from 'preact';
import { ruleAnswer, type HaulRule, type LimitLine } from '../../core/hauling-rules.ts';
import { ratingAnswers, type Haul, type HaulField, type RatingAnswer, type Sum } from '../../core/hauling.ts';
import { unreachable } from '../../core/result.ts';
import type { Source } from '../../core/source.ts';
import { makeDates } from '../../words/dates.ts';
import {
  haulFieldWords,
  hauling as words,
  ratingWords,
  ruleWords,
  sumLineWords,
  vehicleWords,
} from '../../words/en/hauling.ts';
import { preferences } from '../data/preferences.ts';
import { Facts, type Fact } from '../parts/facts.tsx';
import { SourceLine } from '../parts/source-line.tsx';
import styles from '../parts/forms.module.css';
import { askedLine, bothUnits, mass, named, printed, sumText } from './haul-text.ts';

interface BasisProps {
  readonly source?: Source | undefined;
  readonly since?: string | undefined;
}

/** Where an answer is from, since when that has stood so, and who has the last word. */
export const Basis = ({ source, since }: BasisProps) => (
  <>
    {source && <SourceLine source={source} />}
    <span class={styles.soft}>
      {since !== undefined && `${words.since(makeDates(preferences.value.locale).date(since))} `}
      {words.localLaw}
    </span>
  </>
);

interface CardProps extends BasisProps {
  readonly title: string;
  readonly children: ComponentChildren;
}

/** An answer with how it was reached. */
export const Card = ({ title, children, ...basis }: CardProps) => (
  <div class={styles.card}>
    <h3>{title}</h3>
    {children}
    <Basis {...basis} />
  </div>
);

/** What an answer still waits for. */
export const StillOpen = ({ names }: { names: readonly string[] }) => <p>{words.stillOpen(named(names))}</p>;

const namesOf = (open: readonly HaulField[]): readonly string[] =>
  open.map((field) => haulFieldWords[field].name);

/** A sum line by line. */
export function SumCard({ title, sum, source }: { title: string; sum: Sum; source: Source }) {
  const lines = sum.lines.map(({ field, kg }): Fact => [sumLineWords[field], mass(kg)]);
  return (
    <Card title={title} source={source}>
      <Facts facts={lines} />
      <p class={styles.strong}>{sumText(sum)}</p>
      {sum.open.length > 0 && <StillOpen names={namesOf(sum.open)} />}
    </Card>
  );
}

function ratingLine(answer: RatingAnswer): string {
  switch (answer.kind) {
    case 'over':
      return answer.sum.open.length > 0
        ? words.overAtLeast(mass(answer.byKg))
        : words.over(mass(answer.byKg));
    case 'within':
      return words.within(mass(answer.byKg));
    case 'open':
      return words.stillOpen(named(namesOf(answer.open)));
    case 'no-rating':
      return words.noRating;
    default:
      return unreachable(answer);
  }
}

/** The load against each plate. */
export function RatingsCard({ haul }: { haul: Haul }) {
  return (
    <Card title={words.ratings}>
      {ratingAnswers(haul).map((answer) => (
        <div key={answer.rating} class={styles.figure}>
          <strong>{ratingWords[answer.rating]}</strong>
          {'ratingKg' in answer && answer.ratingKg !== undefined && (
            <span>{words.against(sumText(answer.sum), mass(answer.ratingKg))}</span>
          )}
          <span class={answer.kind === 'over' ? styles.strong : ''}>{ratingLine(answer)}</span>
        </div>
      ))}
    </Card>
  );
}

/** What one law asks, with the limits that decide it. */
export function RuleCard({ haul, rule }: { haul: Haul; rule: HaulRule }) {
  const answer = ruleAnswer(haul, rule);
  const { title, note } = ruleWords[rule.rule];
  return (
    <Card title={title} source={rule.source} since={rule.since}>
      <p class={styles.strong}>{askedLine(answer)}</p>
      {answer.kind === 'open' && <StillOpen names={namesOf(answer.open)} />}
      {answer.lines.map((line) => (
        <Limit key={`${line.of} ${line.is} ${line.mass.value}`} line={line} />
      ))}
      <p>{note}</p>
    </Card>
  );
}

const Limit = ({ line: { of, is, mass: limit, known, kept } }: { line: LimitLine }) => (
  <div class={styles.figure}>
    <span>
      {words.lineKnown(
        vehicleWords[of],
        sumText(known, (kg) => bothUnits(kg, limit.unit)),
      )}
    </span>
    <strong>{words[is][kept](printed(limit))}</strong>
  </div>
);
