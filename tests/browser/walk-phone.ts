import type { Page } from '@playwright/test';
import type { RecordKey } from '../../src/core/keys.ts';
import type { RecordValue, Version } from '../../src/core/versions.ts';
import { databaseName } from '../../src/storage/schema.ts';
import { keptOffline, test as base } from './fixtures.ts';
import { Walker } from './walker.ts';

interface Fixtures {
  /** Somebody with an empty phone on the first screen, the server gone for good. */
  readonly walker: Walker;
}

export const test = base.extend<Fixtures>({
  // Millimetres: the phone's own language decides the units that a person starts with.
  locale: 'en-GB',
  // A recording of hundreds of taps takes longer than the taps.
  trace: 'off',
  screenshot: 'only-on-failure',
  walker: async ({ page, origin, complaints }, use) => {
    // What is not there by then is missing; the time of a whole walk would hide which.
    page.setDefaultTimeout(20_000);
    await page.goto('/');
    await keptOffline(page);
    await origin.stop();
    await use(new Walker(page));
    if (complaints.length > 0) throw new Error(complaints.join('\n'));
  },
});

/** A record as it lies on the phone's disk. */
export interface Kept {
  readonly key: RecordKey;
  readonly value: RecordValue;
}

/** What the phone holds on disk now, by its own database; two versions of a record only where `any` are wanted. */
export async function recordsOn(page: Page, which: 'settled' | 'any' = 'settled'): Promise<readonly Kept[]> {
  const rows = await rowsOf<{ key: string; versions: readonly Version[] }>(page, 'versions');
  return rows.flatMap(({ key, versions }) => {
    if (which === 'settled' && versions.length > 1) throw new Error(`two versions of ${key}`);
    const value = versions[0]?.value;
    if (value === undefined && which === 'settled') return [];
    return [{ key: key as RecordKey, value: value ?? {} }];
  });
}

/** What is half typed, by its key. */
export async function draftsOn(page: Page): Promise<Readonly<Record<string, unknown>>> {
  const rows = await rowsOf<{ key: string; value: unknown }>(page, 'drafts');
  return Object.fromEntries(rows.map(({ key, value }) => [key, value]));
}

const rowsOf = <Row>(page: Page, store: string): Promise<readonly Row[]> =>
  page.evaluate(
    ([name, from]) =>
      new Promise<readonly Row[]>((resolve, reject) => {
        const opening = indexedDB.open(name);
        opening.onerror = () => reject(new Error('the database does not open'));
        opening.onsuccess = () => {
          const db = opening.result;
          const asked = db.transaction(from).objectStore(from).getAll();
          asked.onsuccess = () => {
            db.close();
            resolve(asked.result as Row[]);
          };
          asked.onerror = () => reject(new Error('the store cannot be read'));
        };
      }),
    [databaseName, store] as const,
  );
