import { answersOf, type Answer } from '../../words/purpose-answers.ts';
import { reasonText } from '../data/describe.ts';
import { formatter } from '../data/format.ts';
import type { WalkModel } from '../data/walk-model.ts';
import styles from './walk.module.css';

/** The questions that each purpose asks first, answered. */
export function PurposeAnswers({ model }: { model: WalkModel }) {
  const format = formatter.value;
  const answers = answersOf({ ...model, format, reasonText: (reason) => reasonText(reason, format) });
  return (
    <dl class={styles.answers}>
      {answers.map(({ ask, say, more }) => (
        <div key={ask}>
          <dt>{ask}</dt>
          <dd>
            <Say say={say} />
            {more}
          </dd>
        </div>
      ))}
    </dl>
  );
}

function Say({ say }: Pick<Answer, 'say'>) {
  if (typeof say === 'string') return <>{say}</>;
  return (
    <ul>
      {say.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
