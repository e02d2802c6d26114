import { useState } from 'preact/hooks';
import { isSoft } from '../../core/source.ts';
import type { LimitSheet } from '../../core/limits.ts';
import { common } from '../../words/en/common.ts';
import { itemName } from '../../words/en/items.ts';
import { sheets as words } from '../../words/en/sheets.ts';
import { useBooks, type Book } from '../data/books.ts';
import { formatter } from '../data/format.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { fits, Search } from '../parts/search.tsx';
import { BookShelf } from './book-shelf.tsx';
import { ImportButton } from './import-button.tsx';

/** Every limit sheet, this phone's own first. */
export function Sheets() {
  const [search, setSearch] = useState('');
  const books = useBooks('limits');
  const found = books?.filter((book) => fits(searchText(book), search));
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
      <BookShelf books={found ?? []} lineOf={lineOf} />
      <ImportButton label={words.importFile} />
    </Screen>
  );
}

const searchText = ({ value }: Book<'limits'>): string =>
  value ? [value.name, value.about, ...value.items.map(({ item }) => itemName(item))].join(' ') : '';

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
