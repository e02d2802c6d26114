import { useEffect, useState } from 'preact/hooks';
import { entry } from '../../words/entry.ts';
import type { HelpWords } from '../../words/en/help.ts';
import { helpTitles } from '../../words/en/help-titles.ts';
import { loadHelp } from '../data/built-in.ts';
import { helpDrawing } from '../help/help-drawing.ts';
import styles from './walk.module.css';

/** How to read one thing: its drawing, the steps, what goes wrong, and where the figures are from. */
export function HelpPage({ topic }: { topic: string }) {
  const [help, setHelp] = useState<HelpWords>();
  useEffect(() => void loadHelp().then((all) => setHelp(entry(all, topic))), [topic]);
  const Drawing = helpDrawing(topic);
  if (!help) return null;
  return (
    <section class={styles.column}>
      {Drawing && <Drawing />}
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
