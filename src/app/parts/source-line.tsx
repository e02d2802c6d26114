import { isSoft, type Source } from '../../core/source.ts';
import { sourceMarkWords } from '../../words/en/sources.ts';
import styles from './forms.module.css';
import parts from './parts.module.css';

/** Where a figure is from and how far it can be trusted, in words. */
export function SourceLine({ source: { mark, text } }: { source: Source }) {
  const word = sourceMarkWords[mark];
  // Some texts say it themselves: `Common practice, no source`.
  const isSaid = text.toLowerCase().startsWith(word);
  return (
    <span class={styles.soft}>
      {!isSaid && <span class={isSoft({ mark, text }) ? parts.mark : ''}>{word}</span>}
      {isSaid || text === '' ? text : `: ${text}`}
    </span>
  );
}
