import { useState } from 'preact/hooks';
import { isSoft } from '../../core/source.ts';
import type { LimitSheet } from '../../core/limits.ts';
import { common } from '../../words/en/common.ts';
import { forms } from '../../words/en/forms.ts';
import { itemName } from '../../words/en/items.ts';
import { sheets as words } from '../../words/en/sheets.ts';
import { nameOf, useBooks, type Book } from '../data/books.ts';
import { formatter } from '../data/format.ts';
import { bookPath } from '../data/paths.ts';
import { ButtonLink, RowLink, RowText } from '../parts/button.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { fits, Search } from '../parts/search.tsx';
import styles from '../parts/forms.module.css';
import { ImportButton } from './import-button.tsx';

/** Every limit sheet, this phone's own first. */
export function Sheets() {
  const [search, setSearch] = useState('');
  const books = useBooks('limits');
  const found = books?.filter((book) => fits(searchText(book), search));
  const list = (own: boolean) => found?.filter((book) => book.own === own) ?? [];
  return (
    <Screen
      wide
      title={words.title}
      sub={words.line}
      bar={
        <>
          <ButtonLink href="/">{common.back}</ButtonLink>
          <ButtonLink look="main" href="/sheets/new">
            {words.add}
          </ButtonLink>
        </>
      }
    >
      <Search label={words.search} text={search} onInput={setSearch} />
      {found?.length === 0 && <p>{words.none}</p>}
      <Shelf title={words.ownTitle} books={list(true)} />
      <Shelf title={words.builtInTitle} books={list(false)} />
      <ImportButton label={words.importFile} />
    </Screen>
  );
}

const searchText = ({ value }: Book<'limits'>): string =>
  value ? [value.name, value.about, ...value.items.map(({ item }) => itemName(item))].join(' ') : '';

function Shelf({ title, books }: { title: string; books: readonly Book<'limits'>[] }) {
  if (books.length === 0) return null;
  return (
    <Section title={title}>
      <div class={styles.columns}>
        {books.map((book) => (
          <RowLink key={book.key} href={bookPath(book.key)}>
            <RowText name={nameOf(book)} line={book.value ? lineOf(book.value) : forms.newer} />
          </RowLink>
        ))}
      </div>
    </Section>
  );
}

const sourcesOf = (sheet: LimitSheet) => [
  ...sheet.items.flatMap((entry) => [
    ...(entry.new ? [entry.new.source] : []),
    ...entry.limits.map(({ source }) => source),
  ]),
  ...sheet.sag.map(({ source }) => source),
];

function lineOf(sheet: LimitSheet): string {
  const { plural } = formatter.value;
  const counts = words.entries(
    plural(sheet.items.length, words.oneSize, words.sizes),
    plural(sheet.sag.length, words.oneSag, words.sags),
  );
  return sourcesOf(sheet).some(isSoft) ? `${counts}; ${words.soft}` : counts;
}
