import type { ComponentChildren } from 'preact';
import { useLocation } from 'preact-iso';
import { kindOf } from '../../core/keys.ts';
import { common } from '../../words/en/common.ts';
import { sheets as words } from '../../words/en/sheets.ts';
import { copyBook, removeBook } from '../actions/books.ts';
import { nameOf, type Book, type BookKind } from '../data/books.ts';
import { tell } from '../data/notice.ts';
import { bookPath, shelfPath } from '../data/paths.ts';
import { notSavedLine } from '../data/saving.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Facts, type Fact } from '../parts/facts.tsx';
import { Screen } from '../parts/screen.tsx';
import styles from '../parts/forms.module.css';
import { BookLink } from './book-link.tsx';
import { ClashNotice } from './clash-notice.tsx';
import { ExportButton } from './export-button.tsx';

type Value<K extends BookKind> = NonNullable<Book<K>['value']>;

/** What a sheet says of itself and a rule set of itself, in their own words. */
interface BookWords {
  readonly copy: string;
  readonly copyFirst: string;
  readonly exportFile: string;
  readonly remove: string;
  readonly removed: string;
}

interface BookScreenProps<K extends BookKind> {
  readonly book: Book<K>;
  readonly value: Value<K>;
  readonly words: BookWords;
  readonly canEdit: boolean;
  readonly facts: readonly Fact[];
  /** What distinguishes one version from another, in a few lines. */
  readonly describe: (value: Value<K>) => readonly string[];
  readonly children: ComponentChildren;
}

/** A sheet or rule set to be read: copied where it comes with the app, changed and removed where it is one's own. */
export function BookScreen<K extends BookKind>(props: BookScreenProps<K>) {
  const { book, value, words: own, canEdit, facts, describe, children } = props;
  const { route } = useLocation();
  const kind = kindOf(book.key);
  const copy = async (): Promise<void> => {
    const copied = await copyBook(kind, book.key, value, book.stamp);
    if (copied.ok) route(`${bookPath(copied.value)}/edit`);
    else tell(notSavedLine(copied.error));
  };
  const remove = async (): Promise<void> => {
    const removed = await removeBook(book.key);
    if (removed.ok) tell(own.removed, removed.value);
    else tell(notSavedLine(removed.error));
  };
  const { about, origin } = value;
  return (
    <Screen
      wide
      title={nameOf(book)}
      sub={book.own ? words.own : words.builtIn}
      bar={
        <>
          <ButtonLink href={shelfPath(kind)}>{common.back}</ButtonLink>
          {canEdit ? (
            <ButtonLink look="main" href={`${bookPath(book.key)}/edit`}>
              {common.edit}
            </ButtonLink>
          ) : (
            <Button look="main" onTap={() => void copy()}>
              {own.copy}
            </Button>
          )}
        </>
      }
    >
      <ClashNotice recordKey={book.key} clash={book.clash} describe={describe} />
      {about !== undefined && <p>{about}</p>}
      {!book.own && <p class={styles.soft}>{own.copyFirst}</p>}
      <Facts
        facts={[
          ...facts,
          [words.originName, origin && <BookLink key={origin.key} bookKey={origin.key} none="" />],
          [words.versionName, origin?.version ?? value.version],
        ]}
      />
      {children}
      <div class={styles.pair}>
        {canEdit && <Button onTap={() => void copy()}>{own.copy}</Button>}
        <ExportButton keys={[book.key]} name={nameOf(book)} label={own.exportFile} />
        {book.own && <Button onTap={() => void remove()}>{own.remove}</Button>}
      </div>
    </Screen>
  );
}
