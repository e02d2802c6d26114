import { wrap } from 'idb';
import { err, ok, type Result } from '../core/result.ts';
import { openingError, type StorageError } from './errors.ts';
import { schemaVersion, type Connection, type StoreName, type Transaction } from './schema.ts';
import { abort } from './transaction.ts';
import { upgrade } from './upgrade.ts';

/** Timers that tests can drive by hand; `after` answers how to cancel. */
export interface Timers {
  after(ms: number, callback: () => void): () => void;
}

export interface Source {
  /** Absent where the browser offers no database at all. */
  readonly factory: IDBFactory | undefined;
  readonly name: string;
  readonly timers: Timers;
}

/** What happens on the way, for the banner. */
export type OpeningEvent = 'slow' | 'blocked' | 'stuck';

const slowAfterMs = 1_500;
/** A tab that gives way flushes first, which is no block: it has a second for that. */
const blockedAfterMs = 1_500;
const secondAttemptAfterMs = 3_000;
const stuckAfterMs = 10_000;

/**
 * Opens the database, whatever it takes: an open request that never answers (WebKit bug 226547, damaged
 * profiles) is tried anew beside the old one, after 3 s and then every 10 s.
 *
 *     attempt ──── 1.5 s: slow ── 3 s: attempt ──── 10 s: stuck, attempt ──── 20 s: attempt …
 *        └ blocked ── 1.5 s: told, and waited for
 *
 * The first attempt that answers counts; a connection that comes later is closed. Never rejects; stays
 * pending for as long as nothing answers.
 */
export function openDatabase(
  source: Source,
  tell: (event: OpeningEvent) => void,
): Promise<Result<Connection, StorageError>> {
  return new Promise((resolve) => {
    let answered = false;
    const cancels: (() => void)[] = [];
    const settle = (result: Result<Connection, StorageError>): void => {
      if (answered && result.ok) result.value.close();
      if (answered) return;
      answered = true;
      for (const cancel of cancels) cancel();
      resolve(result);
    };
    const blocked = (): void => later(blockedAfterMs, () => tell('blocked'));
    const attempt = (): void => void attemptOpen(source, blocked).then(settle);
    const later = (ms: number, act: () => void): void => {
      if (!answered) cancels.push(source.timers.after(ms, act));
    };
    const keepTrying = (): void => {
      tell('stuck');
      attempt();
      later(stuckAfterMs, keepTrying);
    };
    later(slowAfterMs, () => tell('slow'));
    later(secondAttemptAfterMs, attempt);
    later(stuckAfterMs, keepTrying);
    attempt();
  });
}

async function attemptOpen(source: Source, blocked: () => void): Promise<Result<Connection, StorageError>> {
  const { factory, name } = source;
  if (factory === undefined) return err({ kind: 'denied', detail: 'no-indexeddb' });
  try {
    return ok(await openAtLeast(factory, name, schemaVersion, blocked));
  } catch (error) {
    const failure = openingError(error);
    return failure.kind === 'too-new' ? openLater(factory, name, failure) : err(failure);
  }
}

function openAtLeast(
  factory: IDBFactory,
  name: string,
  version: number,
  blocked: () => void,
): Promise<Connection> {
  const request = factory.open(name, version);
  request.addEventListener('blocked', blocked);
  request.addEventListener('upgradeneeded', ({ oldVersion }) => {
    const tx = wrap(request.transaction as IDBTransaction) as unknown as Transaction<
      readonly StoreName[],
      'versionchange'
    >;
    const db = wrap(request.result) as unknown as Connection;
    tx.done.catch(() => undefined); // the request fails with it
    upgrade(db, tx, oldVersion).catch(() => abort(tx));
  });
  return wrap(request) as Promise<unknown> as Promise<Connection>;
}

/** Opens a database that a later build made, if that build said that ours can do no harm. */
async function openLater(
  factory: IDBFactory,
  name: string,
  failure: StorageError,
): Promise<Result<Connection, StorageError>> {
  try {
    const request = factory.open(name);
    // Deleted in between: without this an empty database of version 1 would come into being.
    request.addEventListener('upgradeneeded', () => request.transaction?.abort());
    const db = (await wrap(request)) as unknown as Connection;
    if (await addsOnly(db)) return ok(db);
    db.close();
    return err(failure);
  } catch (error) {
    return err(openingError(error));
  }
}

async function addsOnly(db: Connection): Promise<boolean> {
  if (!db.objectStoreNames.contains('meta')) return false;
  const row = await db.get('meta', 'schema');
  return row?.name === 'schema' && row.addsOnlySince <= schemaVersion;
}
