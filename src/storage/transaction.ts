import { assert } from '../core/result.ts';
import type { Connection, StoreName, Transaction } from './schema.ts';

export type Mode = 'readonly' | 'readwrite';

/** Work to be done in one transaction; it may await nothing but that transaction's own requests. */
export interface Job<T, Stores extends readonly StoreName[], M extends Mode> {
  readonly stores: Stores;
  readonly mode: M;
  readonly durability: 'strict' | 'relaxed';
  readonly work: (tx: Transaction<Stores, M>) => Promise<T>;
}

/**
 * Starts all of these and waits for them. A request that cannot even be made throws; the others, begun before
 * it, are still waited for, so that no failure of theirs goes unheard.
 */
export const together = <T>(tasks: readonly (() => Promise<T>)[]): Promise<T[]> =>
  Promise.all(tasks.map(async (task) => task()));

/** Aborts what the engine may have aborted already. */
export function abort(tx: { abort(): void }): void {
  try {
    tx.abort();
  } catch {
    // finished already: nothing is left to undo
  }
}

/**
 * Runs a job. Resolves after the transaction has completed and at no other moment; rejects with the cause if
 * it was aborted. Three traps are kept out here:
 * - out of space, Chromium fails no request, only the transaction: its end is watched beside the work;
 * - an await of anything foreign lets the transaction commit early, in some engines only: a transaction that
 *   ends before its work is a bug, and thrown as one;
 * - work that throws must not commit its first half.
 */
export async function inTransaction<T, const Stores extends readonly StoreName[], M extends Mode>(
  db: Connection,
  job: Job<T, Stores, M>,
): Promise<T> {
  const tx = db.transaction(job.stores, job.mode, { durability: job.durability });
  let worked = false;
  const work = job.work(tx).then((value) => {
    worked = true;
    return value;
  });
  const end = tx.done.then(() => assert(worked, 'a transaction awaited something foreign'));
  try {
    const [value] = await Promise.all([work, end]);
    return value;
  } catch (error) {
    abort(tx);
    throw await causeOf(error, tx.done);
  }
}

/** Names under which an abort reaches the work; why it was aborted only the transaction knows. */
const echoes = ['AbortError', 'TransactionInactiveError'];

/** The first cause: what the work met, or, if that was but an echo of the abort, the transaction's reason. */
async function causeOf(error: unknown, done: Promise<void>): Promise<unknown> {
  const reason: unknown = await done.then(
    () => error,
    (cause: unknown) => cause,
  );
  return error instanceof Error && echoes.includes(error.name) ? reason : error;
}
