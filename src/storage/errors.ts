/** What kept storage from doing as asked; each kind has one reaction, in db.ts. */
export type StorageErrorKind =
  | 'closed' // the connection is gone; it was reopened once and failed again
  | 'quota' // no room; the reserve was given up where that was allowed
  | 'blocked' // another tab holds an older database open
  | 'stuck' // opening does not answer
  | 'corrupt' // the engine cannot read its own files
  | 'denied' // private window, blocked cookies: nothing can be kept
  | 'too-new' // a later build changed the database in a way that this one does not understand
  | 'updated-elsewhere' // another tab upgraded the database; this one has to reload
  | 'unknown';

export interface StorageError {
  readonly kind: StorageErrorKind;
  /** The engine's own words, for a log; never shown as a sentence. */
  readonly detail: string;
}

const detailOf = (error: unknown): string =>
  error instanceof Error ? `${error.name}: ${error.message}` : String(error);

const nameOf = (error: unknown): string => (error instanceof Error ? error.name : '');

/** Names that only a fault of our own code can cause; they are thrown on, never turned into values. */
const bugs = new Set([
  '',
  'Error',
  'TypeError',
  'RangeError',
  'ReferenceError',
  'DataError',
  'DataCloneError',
  'ConstraintError',
  'ReadOnlyError',
  'NotFoundError',
  'TransactionInactiveError',
]);

export const isBug = (error: unknown): boolean => bugs.has(nameOf(error));

/** The kind of a failure while opening. */
export function openingError(error: unknown): StorageError {
  const kinds: Record<string, StorageErrorKind> = {
    SecurityError: 'denied',
    InvalidStateError: 'denied', // Firefox with history off
    NotAllowedError: 'denied',
    QuotaExceededError: 'quota',
    VersionError: 'too-new',
    UnknownError: 'corrupt', // Chromium: Internal error opening backing store
  };
  const detail = detailOf(error);
  if (/denied permission/i.test(detail)) return { kind: 'denied', detail }; // Chromium with site data blocked
  return { kind: kinds[nameOf(error)] ?? 'unknown', detail };
}

/** The kind of a failure inside a transaction, or when one is begun. */
export function transactionError(error: unknown): StorageError {
  const detail = detailOf(error);
  if (/did not allow mutations/i.test(detail)) return { kind: 'denied', detail }; // old private windows of Firefox
  const kinds: Record<string, StorageErrorKind> = {
    QuotaExceededError: 'quota',
    InvalidStateError: 'closed', // the database connection is closing
    AbortError: 'closed', // aborted without a cause: the connection went away
    SecurityError: 'denied',
    NotAllowedError: 'denied',
    NotReadableError: 'corrupt',
    NotFoundError: 'corrupt', // not even the stores are there
  };
  return { kind: kinds[nameOf(error)] ?? 'unknown', detail };
}
