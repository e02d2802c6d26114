import { useState } from 'preact/hooks';
import { common } from '../../words/en/common.ts';
import { itemName } from '../../words/en/items.ts';
import { rules as words } from '../../words/en/sheets.ts';
import { useBooks, type Book } from '../data/books.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { fits, Search } from '../parts/search.tsx';
import styles from '../parts/forms.module.css';
import { BookShelf } from './book-shelf.tsx';
import { ImportButton } from './import-button.tsx';

/** Every rule set, this phone's own first. */
export function RuleSets() {
  const [search, setSearch] = useState('');
  const books = useBooks('rules');
  const found = books?.filter((book) => fits(searchText(book), search));
  return (
    <Screen wide title={words.title} sub={words.line} bar={<ButtonLink href="/">{common.back}</ButtonLink>}>
      {(books?.length ?? 0) > 1 && <Search label={words.search} text={search} onInput={setSearch} />}
      {found?.length === 0 && <p>{words.none}</p>}
      <BookShelf books={found ?? []} lineOf={({ rules }) => words.count(rules.length)} />
      <p class={styles.soft}>{words.copyFirst}</p>
      <ImportButton label={words.importFile} />
    </Screen>
  );
}

const searchText = ({ value }: Book<'rules'>): string =>
  value ? [value.name, value.about, ...Object.keys(value.covers).map(itemName)].join(' ') : '';
