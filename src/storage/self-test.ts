import { transactionError, type StorageError } from './errors.ts';
import { schemaVersion, type Connection, type Transaction } from './schema.ts';
import { inTransaction } from './transaction.ts';
import { catchUp } from './upgrade.ts';

/**
 * Writes, reads back and deletes at every start: private windows and blocked cookies may let a database open
 * and keep nothing. Undefined when all is well.
 */
export async function selfTest(db: Connection): Promise<StorageError | undefined> {
  try {
    const lastBuild = await inTransaction(db, {
      stores: ['meta'],
      mode: 'readwrite',
      durability: 'relaxed',
      work: writeAndReadBack,
    });
    if (lastBuild < schemaVersion) await takeOver(db);
    return undefined;
  } catch (error) {
    // Not even a bug may leave the app without an answer here: what fails its self test is not used.
    return transactionError(error);
  }
}

/** Answers the schema of the build that used this database last. */
async function writeAndReadBack(tx: Transaction<readonly ['meta'], 'readwrite'>): Promise<number> {
  const meta = tx.objectStore('meta');
  await meta.put({ name: 'probe', value: 'kept' });
  const found = await meta.get('probe');
  if (found?.name !== 'probe' || found.value !== 'kept') {
    throw new DOMException('what was written cannot be read back', 'UnknownError');
  }
  await meta.delete('probe');
  const row = await meta.get('schema');
  return row?.name === 'schema' ? row.writtenBy : 1;
}

const takeOver = (db: Connection): Promise<unknown> =>
  inTransaction(db, {
    stores: ['versions', 'derived', 'meta'],
    mode: 'readwrite',
    durability: 'strict',
    work: async (tx) => {
      await catchUp(tx);
      const row = await tx.objectStore('meta').get('schema');
      const addsOnlySince = row?.name === 'schema' ? row.addsOnlySince : 1;
      return tx.objectStore('meta').put({ name: 'schema', addsOnlySince, writtenBy: schemaVersion });
    },
  });
