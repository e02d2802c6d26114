import { machine as words } from '../../words/en/machine.ts';
import { nameOf, useBooks, type Book, type BookKind } from '../data/books.ts';
import { bookPath } from '../data/paths.ts';
import styles from '../parts/forms.module.css';

/** The name of a sheet or rule set, leading to it. */
export function BookLink({ bookKey, none }: { bookKey: string | undefined; none: string }) {
  const sheets = useBooks('limits');
  const ruleSets = useBooks('rules');
  const prices = useBooks('price');
  const rates = useBooks('rate');
  if (bookKey === undefined) return <>{none}</>;
  const shelves: readonly (readonly Book<BookKind>[] | undefined)[] = [sheets, ruleSets, prices, rates];
  const book = shelves.flatMap((each) => each ?? []).find(({ key }) => key === bookKey);
  if (!book) return <>{shelves.every((each) => each) ? words.builtInGone : ''}</>;
  return (
    <a class={styles.link} href={bookPath(bookKey)}>
      {nameOf(book)}
    </a>
  );
}
