import { machine as words } from '../../words/en/machine.ts';
import { nameOf, useBooks } from '../data/books.ts';
import { bookPath } from '../data/paths.ts';
import styles from '../parts/forms.module.css';

/** The name of a sheet or rule set, leading to it. */
export function BookLink({ bookKey, none }: { bookKey: string | undefined; none: string }) {
  const sheets = useBooks('limits');
  const ruleSets = useBooks('rules');
  if (bookKey === undefined) return <>{none}</>;
  const book = [...(sheets ?? []), ...(ruleSets ?? [])].find(({ key }) => key === bookKey);
  if (!book) return <>{sheets && ruleSets ? words.builtInGone : ''}</>;
  return (
    <a class={styles.link} href={bookPath(bookKey)}>
      {nameOf(book)}
    </a>
  );
}
