import { questionAnswers } from '../../words/en/questions.ts';
import { pad } from '../../words/en/pad.ts';
import type { Meant } from '../data/pad-text.ts';
import { Button } from '../parts/button.tsx';
import styles from '../parts/parts.module.css';

export interface Asked {
  readonly line: string;
  /** What could be meant; none where the value is read but hardly possible. */
  readonly choices: readonly Meant[];
  /** Takes the value as it is, or one of the choices. */
  readonly take: ((choice?: Meant) => void) | undefined;
}

/** Asks about a value instead of refusing or guessing; what was typed stays in the field. */
export function Question({ asked, onAgain }: { asked: Asked; onAgain: () => void }) {
  const { take } = asked;
  return (
    <section class={styles.banner} role="alert">
      <strong>{take ? pad.questionTitle : asked.line}</strong>
      {take && <span>{asked.line}</span>}
      <div class={styles.group}>
        {take && asked.choices.length === 0 && <Button onTap={() => take()}>{questionAnswers.right}</Button>}
        {take &&
          asked.choices.map((choice) => (
            <Button key={choice.mm} onTap={() => take(choice)}>
              {choice.label}
            </Button>
          ))}
        <Button onTap={onAgain}>{take ? questionAnswers.again : questionAnswers.other}</Button>
      </div>
    </section>
  );
}
