import { useLocation } from 'preact-iso';
import type { RecordKey } from '../../core/keys.ts';
import type { LimitSheet } from '../../core/limits.ts';
import type { Machine } from '../../core/machine.ts';
import { valueIn } from '../../core/assemble.ts';
import { checkSheet } from '../../core/check-sheet.ts';
import { common } from '../../words/en/common.ts';
import { forms } from '../../words/en/forms.ts';
import { sheets as words } from '../../words/en/sheets.ts';
import { copySheet, removeSheet } from '../actions/sheets.ts';
import { nameOf, useBooks, type Book } from '../data/books.ts';
import { useLive, valueOf } from '../data/live.ts';
import { tell } from '../data/notice.ts';
import { bookPath, fromPath } from '../data/paths.ts';
import { store } from '../data/phone.ts';
import { notSavedLine } from '../data/saving.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Facts } from '../parts/facts.tsx';
import { Screen } from '../parts/screen.tsx';
import styles from '../parts/forms.module.css';
import { BookLink } from './book-link.tsx';
import { ClashNotice } from './clash-notice.tsx';
import { ExportButton } from './export-button.tsx';
import { Gone } from './gone.tsx';
import { SheetEdit } from './sheet-edit.tsx';
import { SheetRead } from './sheet-read.tsx';

/** One limit sheet: to be read, or at `…/edit` and `/sheets/new` to be changed. */
export function SheetScreen() {
  const { path } = useLocation();
  const books = useBooks('limits');
  const at = fromPath('limits', path);
  const ruleSets = useBooks('rules');
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
function useUses(key: RecordKey<'limits'>): number | undefined {
  const machines = valueOf(useLive('machines', ['machine/'], () => store.list({ prefix: 'machine/' })));
  return machines?.filter(({ versions }) => {
    const machine = valueIn<Machine>(versions);
    return [machine?.sheet, machine?.left?.sheet, machine?.right?.sheet].includes(key);
  }).length;
}

function OneSheet({ book, sheet }: { book: Book<'limits'>; sheet: LimitSheet }) {
  const { route } = useLocation();
  const uses = useUses(book.key);
  const copy = async (): Promise<void> => {
    const copied = await copySheet(book.key, sheet, book.stamp);
    if (copied.ok) route(`${bookPath(copied.value)}/edit`);
    else tell(notSavedLine(copied.error));
  };
  const { origin } = sheet;
  return (
    <Screen
      wide
      title={nameOf(book)}
      sub={book.own ? words.own : words.builtIn}
      bar={
        <>
          <ButtonLink href="/sheets">{common.back}</ButtonLink>
          {book.own ? (
            <ButtonLink look="main" href={`${bookPath(book.key)}/edit`}>
              {words.edit}
            </ButtonLink>
          ) : (
            <Button look="main" onTap={() => void copy()}>
              {words.copy}
            </Button>
          )}
        </>
      }
    >
      <ClashNotice<LimitSheet>
        recordKey={book.key}
        clash={book.clash}
        describe={({ name, about = '', items, sag }) => [name, about, JSON.stringify({ items, sag })]}
      />
      {sheet.about !== undefined && <p>{sheet.about}</p>}
      {!book.own && <p class={styles.soft}>{words.copyFirst}</p>}
      <Facts
        facts={[
          [words.ruleSet, sheet.rules && <BookLink bookKey={sheet.rules} none="" />],
          [words.originName, origin && <BookLink bookKey={origin.key} none="" />],
          [words.versionName, origin?.version ?? sheet.version],
          [words.used, uses === undefined || uses === 0 ? undefined : words.usedBy(uses)],
        ]}
      />
      <SheetRead sheet={sheet} problems={checkSheet(sheet)} />
      <div class={styles.pair}>
        {book.own && <Button onTap={() => void copy()}>{words.copy}</Button>}
        <ExportButton keys={[book.key]} name={sheet.name} label={words.exportFile} />
        {book.own && <Remove book={book} />}
      </div>
    </Screen>
  );
}

function Remove({ book }: { book: Book<'limits'> }) {
  const remove = async (): Promise<void> => {
    const removed = await removeSheet(book.key);
    if (removed.ok) tell(words.removed, removed.value);
    else tell(notSavedLine(removed.error));
  };
  return <Button onTap={() => void remove()}>{words.remove}</Button>;
}
