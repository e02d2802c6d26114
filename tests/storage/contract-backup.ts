import { ok } from '../../src/core/result.ts';
import { counterOf } from '../../src/core/stamp.ts';
import type { Version } from '../../src/core/versions.ts';
import type { Store } from '../../src/storage/store.ts';
import { good, refused, same, type Case } from './lab.ts';
import { demoLug, demoWalk, foreign, keyOf, lug, machine, walk, write } from './samples.ts';

async function everything(store: Store): Promise<readonly Version[]> {
  const all: Version[] = [];
  for await (const batch of store.exportAll()) all.push(...good(batch));
  return all;
}

export const backupCases: readonly Case[] = [
  {
    title: '[S50] a backup holds every version but the demo, and comes back equal on an empty phone',
    run: async (lab) => {
      const store = lab.open();
      const many = Array.from({ length: 450 }, (_, at) => write(keyOf(`limits/${at}`), String(at)));
      good(await store.write([write(machine, 'm'), write(demoWalk, 'demo'), ...many]));
      good(await store.write([{ key: machine, removed: true }, write(lug, 'mine')]));
      good(await store.merge([foreign(lug, 7_000_000 / 7, 'theirs')]));
      const saved = await everything(store);
      same(saved.length, 453, 'versions');
      same(
        saved.some(({ key }) => key.startsWith('demo/')),
        false,
        'no demo',
      );
      const back = lab.open();
      good(await back.wipeDemo());
      same(good(await back.importAll([saved])), { added: 0, known: 453, clashes: [] }, 'on the same phone');
      same(await everything(back), saved, 'equal');
    },
  },
  {
    title: '[S51] an empty phone takes a backup in batches, counters of a large fleet included',
    run: async (lab) => {
      const store = lab.open();
      const far = foreign(lug, 50_000_000, 'far');
      const batches = [
        [foreign(walk, 1, 'w'), far],
        [foreign(lug, 2, 'near', {}, far.stamp.slice(13) as never)],
      ];
      async function* streamed(): AsyncGenerator<readonly Version[]> {
        for (const batch of batches) yield await Promise.resolve(batch);
      }
      same(good(await store.importAll(streamed())), { added: 3, known: 0, clashes: [lug] }, 'taken in');
      same(good(await store.importAll(batches)), { added: 0, known: 3, clashes: [] }, 'again');
      const [made] = good(await store.write([write(machine, 'm')]));
      same(made && counterOf(made.stamp), 50_000_001, 'counts on');
      const absurd = foreign(lug, 2 ** 41, 'absurd');
      same(
        refused(await store.importAll([[absurd]])),
        { kind: 'counts-ahead', stamp: absurd.stamp },
        'absurd',
      );
      same(good(await store.importAll([])), { added: 0, known: 0, clashes: [] }, 'empty');
    },
  },
  {
    title: '[S52] a phone with nothing gives an empty backup',
    run: async (lab) => {
      same(await everything(lab.open()), [], 'nothing');
      const store = lab.open();
      good(await store.write([write(demoWalk, 'demo')]));
      const batches = [];
      for await (const batch of store.exportAll()) batches.push(batch);
      same(batches, [], 'only the demo');
      store.close();
      for await (const batch of store.exportAll()) batches.push(batch);
      same(batches, [{ ok: false, error: { kind: 'closed', detail: 'closed-by-app' } }], 'a failure ends it');
    },
  },
  {
    title: '[S53] the demo goes without a trace: records, drafts and lists, and nothing else',
    run: async (lab) => {
      const store = lab.open();
      good(await store.write([write(demoWalk, 'demo'), write(demoLug, 'demo'), write(walk, 'real')]));
      good(await store.drafts.put(`${demoLug}#2`, '1'));
      good(await store.drafts.put(`${lug}#2`, '2'));
      const row = (name: string, from: typeof walk) =>
        store.derive({ name, core: '1', from: [from], compute: () => Promise.resolve(ok(name)) });
      good(await row('demo-row', demoWalk));
      good(await row('real-row', walk));
      const heard: string[] = [];
      store.changes.subscribe('demo/', (keys) => heard.push(...keys));
      good(await store.wipeDemo());
      same(heard, [demoLug, demoWalk], 'told');
      same(
        good(await store.list({ prefix: '' })).map(({ key }) => key),
        [walk],
        'records',
      );
      same(
        good(await store.drafts.list('')).map(({ key }) => key),
        [`${lug}#2`],
        'drafts',
      );
      const again = (name: string, from: typeof walk) =>
        store.derive({ name, core: '1', from: [from], compute: () => Promise.resolve(ok('anew')) });
      same(
        [good(await again('demo-row', demoWalk)), good(await again('real-row', walk))],
        ['anew', 'real-row'],
        'lists',
      );
      good(await store.wipeDemo());
    },
  },
];
