import type { ComponentChildren } from 'preact';
import styles from './forms.module.css';

export type Fact = readonly [name: string, value: ComponentChildren];

/** Names with their values; a fact without a value is left out. */
export function Facts({ facts }: { facts: readonly Fact[] }) {
  return (
    <dl class={styles.facts}>
      {facts.map(
        ([name, value]) =>
          value !== undefined && (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ),
      )}
    </dl>
  );
}
