import { useState } from 'preact/hooks';
import { common } from '../../words/en/common.ts';
import { forms } from '../../words/en/forms.ts';
import { itemName } from '../../words/en/items.ts';
import { rules as words, sheets } from '../../words/en/sheets.ts';
import { nameOf, useBooks, type Book } from '../data/books.ts';
import { bookPath } from '../data/paths.ts';
import { ButtonLink, RowLink, RowText } from '../parts/button.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { fits, Search } from '../parts/search.tsx';
import styles from '../parts/forms.module.css';
import { ImportButton } from './import-button.tsx';

/** Every rule set, this phone's own first. */
export function RuleSets() {
  const [search, setSearch] = useState('');
  const books = useBooks('rules');
  const found = books?.filter((book) => fits(searchText(book), search));
  const list = (own: boolean) => found?.filter((book) => book.own === own) ?? [];
  return (
    <Screen wide title={words.title} sub={words.line} bar={<ButtonLink href="/">{common.back}</ButtonLink>}>
      {(books?.length ?? 0) > 1 && <Search label={words.search} text={search} onInput={setSearch} />}
      {found?.length === 0 && <p>{words.none}</p>}
      <Shelf title={sheets.ownTitle} books={list(true)} />
      <Shelf title={sheets.builtInTitle} books={list(false)} />
      <p class={styles.soft}>{words.copyFirst}</p>
      <ImportButton label={words.importFile} />
    </Screen>
  );
}

const searchText = ({ value }: Book<'rules'>): string =>
  value ? [value.name, value.about, ...Object.keys(value.covers).map(itemName)].join(' ') : '';

function Shelf({ title, books }: { title: string; books: readonly Book<'rules'>[] }) {
  if (books.length === 0) return null;
  return (
    <Section title={title}>
      <div class={styles.columns}>
        {books.map((book) => (
          <RowLink key={book.key} href={bookPath(book.key)}>
            <RowText
              name={nameOf(book)}
              line={book.value ? words.count(book.value.rules.length) : forms.newer}
            />
          </RowLink>
        ))}
      </div>
    </Section>
  );
}
