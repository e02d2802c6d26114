import type { Result } from '../core/result.ts';
import { furthestAhead } from '../core/stamp.ts';
import type { Version } from '../core/versions.ts';
import { exportVersions, furthestInBackup, importVersions } from './backup.ts';
import { ChangeFeed } from './changes.ts';
import { readClock, type Random } from './clock.ts';
import { Database } from './database.ts';
import { derive } from './derived.ts';
import { wipeDemo } from './demo.ts';
import type { Source } from './opening.ts';
import { photosOf, thumbnailsOf } from './photos.ts';
import { Presence, type Locks } from './presence.ts';
import { join } from './outbox.ts';
import { rangeOf } from './range.ts';
import { listClashes, listRecords, readVersions } from './reading.ts';
import { mergeRecords } from './merging.ts';
import type { Changed } from './revision.ts';
import { writeRecords } from './writing.ts';
import { ensureReserve } from './reserve.ts';
import type { Drafts, Preferences, Store, Stored } from './store.ts';
import { caches, keystrokes, records } from './worth.ts';

export interface StoreDeps extends Source {
  readonly random: Random;
  /** Absent in engines without BroadcastChannel. */
  readonly channel: BroadcastChannel | undefined;
  /** Absent in engines without Web Locks: photo bytes are never swept then. */
  readonly locks: Locks | undefined;
}

/** Opens the phone's storage; answers at once, its calls wait for the database. */
export function openStore(deps: StoreDeps): Store {
  const feed = new ChangeFeed(deps.channel);
  const database = new Database(deps, () => feed.anything());
  const { random } = deps;
  const presence = new Presence(deps.locks, deps.name, random);
  const told = <T, E>(done: Result<Changed<T>, E>): Result<T, E> => {
    if (!done.ok) return done;
    feed.announce(done.value.keys);
    return { ok: true, value: done.value.answer };
  };
  const merge = async (versions: readonly Version[], furthest: number) =>
    told(await mergeRecords(database, random, versions, furthest));
  return {
    status: database.status,
    changes: feed,
    drafts: draftsOf(database),
    photos: photosOf(database, presence),
    thumbnails: thumbnailsOf(database),
    preferences: preferencesOf(database),
    write: async (writes, options = {}) => told(await writeRecords(database, random, writes, options)),
    merge: (versions) => merge(versions, furthestAhead),
    read: (key) => readVersions(database, key),
    list: (page) => listRecords(database, page),
    clashes: () => listClashes(database),
    derive: (derivation) => derive(database, derivation),
    exportAll: () => exportVersions(database),
    importAll: (batches) => importVersions(batches, (batch) => merge(batch, furthestInBackup)),
    wipeDemo: async () => told(await wipeDemo(database, random)),
    device: () => deviceOf(database, random),
    join: () => join(database, random),
    ensureReserve: () => ensureReserve(database, random),
    probe: () => probe(database, random),
    beforeClose: (flush) => database.beforeClose(flush),
    close: () => {
      feed.close();
      presence.leave();
      database.close();
    },
  };
}

const nothing = (): undefined => undefined;

const draftsOf = (database: Database): Drafts => ({
  get: (key) => database.read(['drafts'], async (tx) => (await tx.objectStore('drafts').get(key))?.value),
  put: (key, value) =>
    database.write(['drafts'], keystrokes, (tx) =>
      tx.objectStore('drafts').put({ key, value }).then(nothing),
    ),
  delete: (key) =>
    database.write(['drafts'], keystrokes, (tx) => tx.objectStore('drafts').delete(key).then(nothing)),
  list: (prefix) => database.read(['drafts'], (tx) => tx.objectStore('drafts').getAll(rangeOf({ prefix }))),
});

const preferencesOf = (database: Database): Preferences => ({
  get: (name) =>
    database.read(['meta'], async (tx) => {
      const row = await tx.objectStore('meta').get(`preference/${name}`);
      return row !== undefined && 'value' in row ? row.value : undefined;
    }),
  put: (name, value) =>
    database.write(['meta'], caches, (tx) =>
      tx
        .objectStore('meta')
        .put({ name: `preference/${name}`, value })
        .then(nothing),
    ),
});

const deviceOf = (database: Database, random: Random): ReturnType<Store['device']> =>
  database.write(['meta'], records, async (tx) => {
    const clock = await readClock(tx, random);
    if (clock.counter === 0) await tx.objectStore('meta').put(clock);
    return clock.device;
  });

function probe(database: Database, random: Random): Promise<Stored<undefined>> {
  database.testAgain();
  if (database.status.current() === 'full') return ensureReserve(database, random);
  return database.read(['meta'], (tx) => tx.objectStore('meta').getKey('clock').then(nothing));
}
