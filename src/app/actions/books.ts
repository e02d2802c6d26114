import type { PriceList, Rates } from '../../core/costs.ts';
import { makeKey, type RecordKey } from '../../core/keys.ts';
import { ok, type Result } from '../../core/result.ts';
import type { RecordValue } from '../../core/versions.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable } from '../../storage/store.ts';
import { sheets } from '../../words/en/sheets.ts';
import type { BookKind, BookValue } from '../data/books.ts';
import { newId } from '../data/moment.ts';
import { put, removeWithUndo, save, type Saved } from './saved.ts';

/** The draft of a book's form; a new sheet has one form on a phone. */
export const bookDraftKey = (key: RecordKey<BookKind> | undefined): string => `form/${key ?? 'limits/new'}`;

/** Copies a book to be edited; the copy remembers which version of which one it came from. */
export async function copyBook<K extends BookKind>(
  kind: K,
  key: RecordKey<K>,
  { version, ...value }: BookValue,
  stamp: string | undefined,
): Promise<Result<RecordKey<BookKind>, StorageError | NotEditable>> {
  const copy = makeKey<BookKind>({ kind, id: newId() });
  const origin = { key, version: version ?? stamp ?? '' };
  const saved = await save([put(copy, { ...value, name: sheets.copyOf(value.name), origin })]);
  return saved.ok ? ok(copy) : saved;
}

/** Gives a machine a price list and rates of its own, copied from those that it is reckoned by now. */
export async function ownCosts(
  machine: RecordKey<'machine'>,
  prices: { readonly key: string; readonly value: PriceList },
  rates: { readonly key: string; readonly value: Rates },
): Promise<Result<RecordKey<'price'>, StorageError | NotEditable>> {
  const [price, rate] = [
    makeKey<'price'>({ kind: 'price', id: newId() }),
    makeKey<'rate'>({ kind: 'rate', id: newId() }),
  ];
  const copyOf = (key: string, { version, ...value }: PriceList | Rates) => ({
    ...value,
    name: sheets.copyOf(value.name),
    origin: { key, version: version ?? '' },
  });
  const name = (now: RecordValue | undefined): RecordValue => ({ ...now, prices: price, rates: rate });
  const saved = await save([
    put(price, copyOf(prices.key, prices.value)),
    put(rate, copyOf(rates.key, rates.value)),
    { key: machine, edit: name },
  ]);
  return saved.ok ? ok(price) : saved;
}

/** Saves a book as its form has it; the draft goes in the same transaction. */
export const saveBook = (key: RecordKey<BookKind>, value: BookValue, draftKey: string): Promise<Saved> =>
  save([put(key, value)], [draftKey]);

/** Removes one of the phone's own; answers how to bring it back. */
export const removeBook = (
  key: RecordKey<BookKind>,
): Promise<Result<() => Promise<Saved>, StorageError | NotEditable>> => removeWithUndo([key]);
