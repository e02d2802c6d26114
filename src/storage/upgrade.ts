import type { RecordRow } from './schema.ts';
import { schemaVersion, type Connection, type StoreName, type Transaction } from './schema.ts';
import { recordRow } from './record-row.ts';

type UpgradeTransaction = Transaction<readonly StoreName[], 'versionchange'>;
type Step = (db: Connection, tx: UpgradeTransaction) => Promise<unknown>;

/** 2025: everything a phone alone needs. */
async function toVersion1(db: Connection): Promise<void> {
  db.createObjectStore('versions', { keyPath: 'key' });
  db.createObjectStore('drafts', { keyPath: 'key' });
  db.createObjectStore('photos', { keyPath: 'sha256' });
  db.createObjectStore('outbox', { keyPath: ['key', 'stamp'] });
  db.createObjectStore('meta', { keyPath: 'name' });
  db.createObjectStore('reserve', { keyPath: 'name' });
}

/** Lists of ten thousand walks and of open clashes without reading all records. */
async function toVersion2(db: Connection, tx: UpgradeTransaction): Promise<void> {
  const derived = db.createObjectStore('derived', { keyPath: 'name' });
  derived.createIndex('from', 'from', { multiEntry: true });
  tx.objectStore('versions').createIndex('clash', 'clash');
  await markClashes(tx);
}

/** Photos in lists, and photo bytes that may go. */
async function toVersion3(db: Connection): Promise<void> {
  db.createObjectStore('thumbnails', { keyPath: 'sha256' });
  db.createObjectStore('unnamed', { keyPath: 'sha256' });
}

/** One step a version, in order; a step only adds stores, indexes and fields, and may run again. */
const steps: readonly Step[] = [toVersion1, toVersion2, toVersion3];

/** Brings a database of version `from` (0: none yet) to ours, inside the one upgrade transaction. */
export async function upgrade(db: Connection, tx: UpgradeTransaction, from: number): Promise<void> {
  for (const step of steps.slice(from)) await step(db, tx);
  await tx.objectStore('meta').put({ name: 'schema', addsOnlySince: 1, writtenBy: schemaVersion });
}

/** Sets the mark that the index `clash` needs on rows that a build without the index wrote. */
async function markClashes(tx: UpgradeTransaction): Promise<void> {
  let cursor = await tx.objectStore('versions').openCursor();
  while (cursor !== null) {
    const row = recordRow(cursor.value.key, cursor.value.versions);
    if (needsMark(cursor.value, row)) await cursor.update(row);
    cursor = await cursor.continue();
  }
}

const needsMark = (stored: RecordRow, wanted: RecordRow): boolean => stored.clash !== wanted.clash;

/**
 * Makes good what an older build left behind when it used a database of ours: it knows neither the marks nor
 * that lists depend on what it wrote.
 */
export async function catchUp(tx: Transaction<readonly StoreName[], 'readwrite'>): Promise<void> {
  await tx.objectStore('derived').clear();
  await markClashes(tx as unknown as UpgradeTransaction);
}
