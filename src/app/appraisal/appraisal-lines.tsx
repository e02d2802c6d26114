import type { TextLine } from '../../words/appraisal-lines.ts';
import { Fold } from '../parts/fold.tsx';
import { Section } from '../parts/screen.tsx';
import { SourceLine } from '../parts/source-line.tsx';
import styles from '../screens/walk.module.css';

interface LinesProps {
  readonly title: string;
  readonly lines: readonly TextLine[];
  /** Said under the heading, before the lines. */
  readonly first?: readonly string[];
  readonly none?: string;
  /** Said under the lines. */
  readonly more?: readonly string[];
}

/** A sum as its lines: each opens to its reasons and where its figures are from. */
export function Lines({ title, lines, first = [], none, more = [] }: LinesProps) {
  return (
    <Section title={title}>
      {first.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {lines.length === 0 && none !== undefined && <p>{none}</p>}
      {lines.map(({ id, title: name, amount, because, sources }) => (
        <Fold key={id} title={`${name}: ${amount}`} line={because[0]}>
          {because.slice(1).map((each) => (
            <p key={each}>{each}</p>
          ))}
          {sources.map((source) => (
            <SourceLine key={source.text} source={source} />
          ))}
        </Fold>
      ))}
      {more.map((line) => (
        <p key={line} class={styles.quiet}>
          {line}
        </p>
      ))}
    </Section>
  );
}

/** Sentences of one kind under their heading. */
export function Texts({ title, lines, none }: { title: string; lines: readonly string[]; none?: string }) {
  return (
    <Section title={title}>
      {lines.length === 0 && <p>{none}</p>}
      <ul class={styles.items}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Section>
  );
}
