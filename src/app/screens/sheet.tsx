import { useLocation } from 'preact-iso';
import { valueIn } from '../../core/assemble.ts';
import { checkSheet } from '../../core/check-sheet.ts';
import type { RecordKey } from '../../core/keys.ts';
import type { LimitSheet } from '../../core/limits.ts';
import type { Machine } from '../../core/machine.ts';
import { forms } from '../../words/en/forms.ts';
import { sheets as words } from '../../words/en/sheets.ts';
import { useBooks, type Book } from '../data/books.ts';
import { useLive, valueOf } from '../data/live.ts';
import { fromPath } from '../data/paths.ts';
import { store } from '../data/phone.ts';
import { Screen } from '../parts/screen.tsx';
import { BookLink } from './book-link.tsx';
import { BookScreen } from './book-screen.tsx';
import { Gone } from './gone.tsx';
import { SheetEdit } from './sheet-edit.tsx';
import { SheetRead } from './sheet-read.tsx';

/** One limit sheet: to be read, or at `…/edit` and `/sheets/new` to be changed. */
export function SheetScreen() {
  const { path } = useLocation();
  const books = useBooks('limits');
  const ruleSets = useBooks('rules');
  const at = fromPath('limits', path);
  if (!books || !ruleSets) return <Screen title={words.readingTitle}>{null}</Screen>;
  const rules = ruleSets.find(({ own }) => !own)?.key ?? '';
  if (path === '/sheets/new') return <SheetEdit book={undefined} rules={rules} />;
  const book = books.find(({ key }) => key === at?.key);
  if (!book) return <Gone />;
  if (!book.value) return <Screen title={words.readingTitle}>{forms.newer}</Screen>;
  if (at?.rest[0] === 'edit' && book.own) return <SheetEdit key={book.key} book={book} rules={rules} />;
  return <OneSheet book={book} sheet={book.value} />;
}

/** How many machines on this phone are measured against it. */
function useUses(key: RecordKey<'limits'>): number {
  const machines = valueOf(useLive('machines', ['machine/'], () => store.list({ prefix: 'machine/' })));
  const uses = machines?.filter(({ versions }) => {
    const machine = valueIn<Machine>(versions);
    return [machine?.sheet, machine?.left?.sheet, machine?.right?.sheet].includes(key);
  });
  return uses?.length ?? 0;
}

function OneSheet({ book, sheet }: { book: Book<'limits'>; sheet: LimitSheet }) {
  const uses = useUses(book.key);
  return (
    <BookScreen
      book={book}
      value={sheet}
      words={words}
      canEdit={book.own}
      describe={({ name, about = '', items, sag }) => [name, about, JSON.stringify({ items, sag })]}
      facts={[
        [words.ruleSet, sheet.rules && <BookLink key={sheet.rules} bookKey={sheet.rules} none="" />],
        [words.used, uses === 0 ? undefined : words.usedBy(uses)],
      ]}
    >
      <SheetRead sheet={sheet} problems={checkSheet(sheet)} />
    </BookScreen>
  );
}
