import styles from './parts.module.css';

/** What stands in the way of saving, where no text field can say it. */
export const Missing = ({ line }: { line: string }) => (
  <p class={styles.fault} data-fault tabIndex={-1}>
    {line}
  </p>
);
