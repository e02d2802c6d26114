import { schemaVersion } from '../../src/storage/schema.ts';
import v1 from './fixtures/v1.json' with { type: 'json' };
import { answered, completed, good, reaches, refused, same, type Case, type Lab } from './lab.ts';
import { makeDatabase, type Fixture } from './older-build.ts';
import { keyOf, lug, machine, walk, write } from './samples.ts';

const old: Fixture = v1;

const derivedRow = { name: 'row', core: '1', from: [lug], value: 'kept' };

/** What a later build makes of a database of ours: one more store, and how far back it stays usable. */
async function laterBuild(lab: Lab, addsOnlySince: number): Promise<void> {
  const request = lab.factory.open(lab.name, schemaVersion + 1);
  request.onupgradeneeded = () => request.result.createObjectStore('from-later', { keyPath: 'id' });
  const db = await answered(request);
  const tx = db.transaction(['from-later', 'meta', 'versions'], 'readwrite');
  tx.objectStore('from-later').put({ id: 1 });
  tx.objectStore('meta').put({ name: 'schema', addsOnlySince, writtenBy: schemaVersion + 1 });
  const rows = await answered(tx.objectStore('versions').getAll());
  for (const row of rows as object[]) tx.objectStore('versions').put({ ...row, fromLater: true });
  await completed(tx);
  db.close();
}

async function raw(lab: Lab, store: string): Promise<unknown> {
  const db = await answered(lab.factory.open(lab.name));
  const rows = await answered(db.transaction(store).objectStore(store).getAll());
  db.close();
  return rows;
}

export const upgradeCases: readonly Case[] = [
  {
    title: '[S60] a database of version 1 is upgraded with every record, draft, photo and preference',
    run: async (lab) => {
      (await makeDatabase(lab.factory, lab.name, old)).close();
      const store = lab.open();
      const rows = old.stores.find(({ name }) => name === 'versions')?.rows.map((row) => row['versions']);
      same(
        good(await store.list({ prefix: '' })).map(({ versions }) => versions),
        rows,
        'records',
      );
      same(good(await store.device()), 'a1a1a1a1a1a1a1a1', 'device');
      same(good(await store.drafts.get('reading/w1/left.bottom-roller.3/tread/1')), '1', 'draft');
      same(good(await store.preferences.get('length')), 'in/32', 'preference');
      const hash = '9f64a747e1b97f131fabb6b447296c9b6f0201e79fb3c5356e6c77e89b6a806a';
      same(good(await store.photos.get(hash))?.bytes, Uint8Array.of(1, 2, 3, 4), 'photo');
      same(
        good(await store.clashes()).map(({ key }) => key),
        [lug],
        'its clash is listed',
      );
      const [made] = good(await store.write([write(walk, 'goes on')]));
      same(made?.stamp, '000000000006-a1a1a1a1a1a1a1a1', 'counts on');
    },
  },
  {
    title: '[PH9] a database of version 2 is upgraded with every record, photo and derived list',
    run: async (lab) => {
      const two = {
        version: 2,
        stores: [
          ...old.stores,
          { name: 'derived', keyPath: 'name', indexes: { from: 'from' }, rows: [derivedRow] },
        ].map((store) => (store.name === 'versions' ? { ...store, indexes: { clash: 'clash' } } : store)),
      };
      (await makeDatabase(lab.factory, lab.name, two)).close();
      const store = lab.open();
      same(good(await store.list({ prefix: '' })).length, 4, 'records');
      const [photo] = old.stores.find(({ name }) => name === 'photos')?.rows ?? [];
      const hash = String(photo?.['sha256']);
      same(good(await store.photos.get(hash))?.bytes, Uint8Array.of(1, 2, 3, 4), 'photo');
      same(await raw(lab, 'derived'), [derivedRow], 'list');
      good(await store.thumbnails.put({ sha256: hash, bytes: Uint8Array.of(5) }));
      same(good(await store.thumbnails.get(hash))?.bytes, Uint8Array.of(5), 'thumbnail');
      same(good(await store.photos.sweep()), 0, 'sweeping begins');
    },
  },
  {
    title: '[S61] an upgrade waits for the old tab to close, says so, and then opens without loss',
    run: async (lab) => {
      const tab = await makeDatabase(lab.factory, lab.name, old);
      const store = lab.open();
      await reaches(store, 'blocked');
      same(refused(await store.read(machine)).kind, 'blocked', 'nobody waits');
      const tx = tab.transaction('drafts', 'readwrite');
      tx.objectStore('drafts').put({ key: 'last', value: 'words' });
      await completed(tx);
      tab.close();
      await reaches(store, 'open');
      same(good(await store.drafts.get('last')), 'words', 'the old tab lost nothing');
      same(good(await store.list({ prefix: '' })).length, 4, 'records');
    },
  },
  {
    title: '[S62] a tab gives way to a newer build: it flushes, closes, and says so',
    run: async (lab) => {
      const store = lab.open();
      good(await store.write([write(walk, 'w')]));
      const stop = store.beforeClose(() => store.drafts.put('stopped', 'never'));
      stop();
      store.beforeClose(() => store.drafts.put('half', 'typed'));
      store.beforeClose(() => Promise.reject(new Error('a failing flush')));
      await laterBuild(lab, 1);
      same(store.status.current(), 'updated-elsewhere', 'status');
      same(refused(await store.write([write(walk, 'too late')])).kind, 'updated-elsewhere', 'writing');
      same(refused(await store.read(walk)).kind, 'updated-elsewhere', 'reading');
      same(await raw(lab, 'drafts'), [{ key: 'half', value: 'typed' }], 'flushed');
    },
  },
  {
    title: '[S63] a later database that only adds is used, and what it added survives',
    run: async (lab) => {
      const first = lab.open();
      good(await first.write([write(walk, 'w')]));
      first.close();
      await laterBuild(lab, schemaVersion);
      const store = lab.open();
      const [made] = good(await store.write([write(walk, 'edited by the older build')]));
      same(good(await store.read(walk)), [made], 'edited');
      same(await raw(lab, 'from-later'), [{ id: 1 }], 'its store');
    },
  },
  {
    title: '[S64] a later database that did more than add is refused in one value and not touched',
    run: async (lab) => {
      const first = lab.open();
      good(await first.write([write(walk, 'w')]));
      first.close();
      await laterBuild(lab, schemaVersion + 1);
      const before = await raw(lab, 'versions');
      const store = lab.open();
      same(refused(await store.write([write(walk, 'x')])).kind, 'too-new', 'writing');
      same(refused(await store.read(walk)).kind, 'too-new', 'reading');
      same(store.status.current(), 'too-new', 'status');
      same(await raw(lab, 'versions'), before, 'untouched');
    },
  },
  {
    title: '[S65] a later database of unknown making is refused',
    run: async (lab) => {
      const request = lab.factory.open(lab.name, 99);
      request.onupgradeneeded = () => request.result.createObjectStore('something');
      (await answered(request)).close();
      same(refused(await lab.open().read(walk)).kind, 'too-new', 'no store of ours');
      const more = lab.factory.open(lab.name, 100);
      more.onupgradeneeded = () => more.result.createObjectStore('meta', { keyPath: 'name' });
      (await answered(more)).close();
      same(refused(await lab.open().read(walk)).kind, 'too-new', 'no mark of ours');
    },
  },
  {
    title: '[S66] what an older build wrote into our database is caught up with',
    run: async (lab) => {
      const first = lab.open();
      good(await first.write([write(lug, 'w')]));
      const derivation = { name: 'row', core: '1', from: [lug] };
      const ok = (value: string) => ({
        ...derivation,
        compute: () => Promise.resolve({ ok: true, value } as const),
      });
      good(await first.derive(ok('before')));
      first.close();
      const db = await answered(lab.factory.open(lab.name));
      const tx = db.transaction(['versions', 'meta'], 'readwrite');
      const fixture = old.stores[0]?.rows.find((row) => row['key'] === lug);
      tx.objectStore('versions').put(fixture);
      tx.objectStore('meta').put({ name: 'schema', addsOnlySince: 2, writtenBy: 1 });
      await completed(tx);
      db.close();
      const store = lab.open();
      same(good(await store.derive(ok('anew'))), 'anew', 'lists are worked out anew');
      same(
        good(await store.clashes()).map(({ key }) => key),
        [lug],
        'the clash is found',
      );
      const [schema] = ((await raw(lab, 'meta')) as { name: string }[]).filter(
        ({ name }) => name === 'schema',
      );
      same(schema, { name: 'schema', addsOnlySince: 2, writtenBy: schemaVersion }, 'noted');
      good(await store.write([{ key: keyOf('limits/1'), value: {} }]));
    },
  },
  {
    title: '[S67] an upgrade that fails leaves the old database as it was, and says so',
    run: async (lab) => {
      const damaged = old.stores.map((store) =>
        store.name === 'versions' ? { ...store, rows: [...store.rows, { key: 'walk/zz' }] } : store,
      );
      (await makeDatabase(lab.factory, lab.name, { ...old, stores: damaged })).close();
      const before = await raw(lab, 'versions');
      const store = lab.open();
      same(refused(await store.read(machine)).kind, 'unknown', 'reading');
      same(store.status.current(), 'lost', 'status');
      store.close();
      const db = await answered(lab.factory.open(lab.name));
      same([db.version, [...db.objectStoreNames].includes('derived')], [1, false], 'still version 1');
      db.close();
      same(await raw(lab, 'versions'), before, 'untouched');
    },
  },
];
