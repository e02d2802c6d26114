import { entry } from '../../words/entry.ts';
import { helpTitles } from '../../words/en/help-titles.ts';
import { loadHelp } from '../data/built-in.ts';
import { useLoaded } from '../data/use-loaded.ts';
import { HelpDrawing } from './help-drawing.tsx';
import styles from './walk.module.css';

/** How to read one thing: its drawing, the steps, what goes wrong, and where the figures are from. */
export function HelpPage({ topic }: { topic: string }) {
  const all = useLoaded(loadHelp);
  const help = all && entry(all, topic);
  if (!help) return null;
  return (
    <section class={styles.column}>
      <HelpDrawing id={topic} />
      <ol class={styles.lines}>
        {help.steps.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ol>
      <p>
        <strong>{helpTitles.wrong}</strong> {help.wrong}
      </p>
      <p class={styles.quiet}>
        {helpTitles.from} {help.from}
      </p>
    </section>
  );
}
