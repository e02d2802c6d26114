import { isSoft, type Source } from '../../core/source.ts';
import { sourceMarkWords } from '../../words/en/sources.ts';
import styles from './forms.module.css';
import parts from './parts.module.css';

/** Where a figure is from and how far it can be trusted, in words. */
export const SourceLine = ({ source }: { source: Source }) => (
  <span class={styles.soft}>
    <span class={isSoft(source) ? parts.mark : ''}>{sourceMarkWords[source.mark]}</span>
    {source.text === '' ? '' : `: ${source.text}`}
  </span>
);
