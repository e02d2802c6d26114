import { forms } from '../../words/en/forms.ts';
import { sheets as words } from '../../words/en/sheets.ts';
import { nameOf, type Book, type BookKind } from '../data/books.ts';
import { bookPath } from '../data/paths.ts';
import { RowLink, RowText } from '../parts/button.tsx';
import { Section } from '../parts/screen.tsx';
import styles from '../parts/forms.module.css';

interface BookShelfProps<K extends BookKind> {
  readonly books: readonly Book<K>[];
  readonly lineOf: (value: NonNullable<Book<K>['value']>) => string;
}

/** Sheets or rule sets, this phone's own first. */
export function BookShelf<K extends BookKind>({ books, lineOf }: BookShelfProps<K>) {
  return (
    <>
      {[true, false].map((own) => {
        const list = books.filter((book) => book.own === own);
        if (list.length === 0) return null;
        return (
          <Section key={own} title={own ? words.ownTitle : words.builtInTitle}>
            <div class={styles.columns}>
              {list.map((book) => (
                <RowLink key={book.key} href={bookPath(book.key)}>
                  <RowText name={nameOf(book)} line={book.value ? lineOf(book.value) : forms.newer} />
                </RowLink>
              ))}
            </div>
          </Section>
        );
      })}
    </>
  );
}
