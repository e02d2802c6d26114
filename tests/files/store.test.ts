import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import type { Version } from '../../src/core/versions.ts';
import { openFile } from '../../src/files/open-file.ts';
import { planImport } from '../../src/files/import-plan.ts';
import { readWalkFile } from '../../src/files/walk-file.ts';
import { writeBackup } from '../../src/files/write-backup.ts';
import { writeWalkFile } from '../../src/files/write-walk-file.ts';
import { openStore } from '../../src/storage/open-store.ts';
import type { Store } from '../../src/storage/store.ts';
import { good } from '../storage/lab.ts';
import { realTimers } from '../storage/timers.ts';
import { demoFile } from '../../src/cli/demo.ts';
import { unstampedList, versionList } from './samples.ts';

const open: Store[] = [];
afterEach(() => {
  for (const store of open.splice(0)) store.close();
});

function emptyPhone(): Store {
  const store = openStore({
    factory: new IDBFactory(),
    name: 'sagline',
    timers: realTimers,
    random: (bytes) => void crypto.getRandomValues(bytes),
    channel: undefined,
    locks: undefined,
  });
  open.push(store);
  return store;
}

async function everything(store: Store): Promise<readonly Version[]> {
  const all: Version[] = [];
  for await (const batch of store.exportAll()) all.push(...good(batch));
  return all;
}

/** Takes in the text of a walk file as the app does. */
async function take(store: Store, text: string): Promise<void> {
  const plan = planImport(good(readWalkFile(text)));
  good(await store.merge(plan.versions));
  good(await store.write(plan.writes));
}

async function backupOf(store: Store): Promise<Uint8Array> {
  let text = '';
  good(await writeBackup(store.exportAll(), (part) => void (text += part)));
  return new TextEncoder().encode(text);
}

async function restore(store: Store, bytes: Uint8Array) {
  const open = async function* () {
    yield bytes;
  };
  const file = good(await openFile({ size: bytes.length, open }));
  if (file.kind !== 'backup') throw new Error('no backup');
  return good(await store.importAll(file.batches()));
}

describe('files and the phone', () => {
  test('[F11] a backup brings an empty phone to the same records, and the phone itself nowhere', async () => {
    const phone = emptyPhone();
    await take(phone, await demoFile());
    const saved = await everything(phone);
    const bytes = await backupOf(phone);
    const other = emptyPhone();
    expect(await restore(other, bytes)).toMatchObject({ added: saved.length, clashes: [] });
    expect(await everything(other)).toEqual(saved);
    expect(await restore(phone, bytes)).toMatchObject({ added: 0, known: saved.length });
    expect(Buffer.from(bytes).equals(await backupOf(other))).toBe(true);
  });

  test(
    '[F15] a file by hand is stamped once: taking it in again changes nothing',
    { timeout: 60_000 },
    async () => {
      await fc.assert(
        fc.asyncProperty(unstampedList, async (records) => {
          const phone = emptyPhone();
          const text = writeWalkFile(records.filter(({ value }) => value['v'] === 1));
          if (!readWalkFile(text).ok) return;
          await take(phone, text);
          const once = await everything(phone);
          await take(phone, text);
          await take(phone, writeWalkFile(once));
          expect(await everything(phone)).toEqual(once);
        }),
        { numRuns: 15 },
      );
    },
  );

  test('[F15] files of versions may come in any order and more than once', { timeout: 60_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(versionList, versionList, async (one, other) => {
        const [a, b] = [emptyPhone(), emptyPhone()];
        for (const list of [one, other, one]) await take(a, writeWalkFile(list));
        for (const list of [other, one]) await take(b, writeWalkFile(list));
        expect(await everything(a)).toEqual(await everything(b));
      }),
      { numRuns: 15 },
    );
  });

  test('[F16] what comes with the app stays out, however it is stamped', async () => {
    const phone = emptyPhone();
    await take(phone, await demoFile());
    const keys = (await everything(phone)).map(({ key }) => key);
    expect(keys.filter((key) => /^(?:limits|rules)\//.test(key))).toEqual([]);
    expect(keys).toContain('walk/demo-mini-last');
  });
});
