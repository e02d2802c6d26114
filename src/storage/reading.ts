import type { RecordKey } from '../core/keys.ts';
import type { Version } from '../core/versions.ts';
import type { Database } from './database.ts';
import { rangeOf } from './range.ts';
import type { RecordRow } from './schema.ts';
import type { Page, Stored } from './store.ts';

export const readVersions = (database: Database, key: RecordKey): Promise<Stored<readonly Version[]>> =>
  database.read(['versions'], async (tx) => (await tx.objectStore('versions').get(key))?.versions ?? []);

export const listRecords = (database: Database, page: Page): Promise<Stored<readonly RecordRow[]>> =>
  database.read(['versions'], async (tx) => {
    const versions = tx.objectStore('versions');
    const range = rangeOf(page);
    if (page.reverse !== true) return versions.getAll(range, page.limit);
    const rows: RecordRow[] = [];
    let cursor = await versions.openCursor(range, 'prev');
    while (cursor !== null && rows.length < (page.limit ?? Infinity)) {
      rows.push(cursor.value);
      cursor = await cursor.continue();
    }
    return rows;
  });

export const listClashes = (database: Database): Promise<Stored<readonly RecordRow[]>> =>
  database.read(['versions'], (tx) => tx.objectStore('versions').index('clash').getAll());
