import type { PriceList, Rates } from '../../core/costs.ts';
import type { RecordKey } from '../../core/keys.ts';
import type { LimitSheet } from '../../core/limits.ts';
import { ok } from '../../core/result.ts';
import type { RuleSet } from '../../core/rules.ts';
import type { Version } from '../../core/versions.ts';
import { loadBuiltIn } from './built-in.ts';
import { useLive, valueOf } from './live.ts';
import { store } from './phone.ts';
import { foundIn } from './record.ts';

interface BookValues {
  readonly limits: LimitSheet;
  readonly rules: RuleSet;
  readonly price: PriceList;
  readonly rate: Rates;
}

/** The name under which each kind comes with the app. */
const shelves = { limits: 'limits', rules: 'rules', price: 'prices', rate: 'rates' } as const;

export type BookKind = keyof BookValues;
export type BookValue = BookValues[BookKind];

/** A limit sheet, rule set, price list or set of rates: one that comes with the app, or one of this phone's own. */
export interface Book<K extends BookKind> {
  readonly key: RecordKey<K>;
  readonly own: boolean;
  /** Absent for one of a newer build, which is kept and not read. */
  readonly value: BookValues[K] | undefined;
  readonly stamp: string | undefined;
  readonly clash: readonly Version[];
}

async function ownBooks<K extends BookKind>(kind: K) {
  const rows = await store.list({ prefix: `${kind}/` });
  if (!rows.ok) return rows;
  const books = rows.value.map((row): Book<K> & { readonly gone: boolean } => {
    const { value, newer, stamp, clash } = foundIn<BookValues[K]>(row.versions);
    const key = row.key as RecordKey<K>;
    return { key, own: true, value, stamp, clash, gone: value === undefined && !newer };
  });
  return ok(books.filter(({ gone }) => !gone));
}

/** All books of a kind, this phone's own first; one that was changed here stands in for the built-in one. */
async function allBooks<K extends BookKind>(kind: K) {
  const own = await ownBooks(kind);
  if (!own.ok) return own;
  const builtIn = (await loadBuiltIn())[shelves[kind]] as unknown as Readonly<Record<string, BookValues[K]>>;
  const rest = Object.entries(builtIn).flatMap(([key, value]): Book<K>[] =>
    own.value.some((book) => book.key === key)
      ? []
      : [{ key: key as RecordKey<K>, own: false, value, stamp: undefined, clash: [] }],
  );
  const sorted = [...own.value].sort((a, b) => nameOf(a).localeCompare(nameOf(b)));
  return ok<readonly Book<K>[]>([...sorted, ...rest]);
}

export const nameOf = (book: Book<BookKind>): string => book.value?.name ?? '';

export const useBooks = <K extends BookKind>(kind: K): readonly Book<K>[] | undefined =>
  valueOf(useLive(`books ${kind}`, [`${kind}/`], () => allBooks(kind)));
