import type { RecordKey } from '../../core/keys.ts';
import { isNewer, valueVersion, type Version } from '../../core/versions.ts';
import { common } from '../../words/en/common.ts';
import { forms } from '../../words/en/forms.ts';
import { decide } from '../actions/saved.ts';
import { tell } from '../data/notice.ts';
import { notSavedLine } from '../data/saving.ts';
import { Button } from '../parts/button.tsx';
import styles from '../parts/forms.module.css';
import parts from '../parts/parts.module.css';

interface ClashNoticeProps<T> {
  readonly recordKey: RecordKey;
  readonly clash: readonly Version[];
  /** What distinguishes one version, in a few lines. */
  readonly describe: (value: T) => readonly string[];
}

/** Two versions of one record that say different things: a person decides which one counts. */
export function ClashNotice<T>({ recordKey, clash, describe }: ClashNoticeProps<T>) {
  if (clash.length === 0) return null;
  const keep = async (version: Version): Promise<void> => {
    const saved = await decide(recordKey, version);
    tell(saved.ok ? common.saved : notSavedLine(saved.error));
  };
  return (
    <section class={parts.banner} role="alert">
      <strong>{forms.clash}</strong>
      {clash.map((version) => (
        <div key={version.stamp} class={styles.card}>
          {linesOf(version, describe).map((line) => (
            <span key={line}>{line}</span>
          ))}
          <Button onTap={() => void keep(version)}>{forms.keepThis}</Button>
        </div>
      ))}
    </section>
  );
}

function linesOf<T>({ value }: Version, describe: (value: T) => readonly string[]): readonly string[] {
  if (value === undefined) return [forms.removedThere];
  return isNewer(value, valueVersion) ? [forms.newer] : describe(value as T);
}
