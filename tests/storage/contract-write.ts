import { wrap } from 'idb';
import { idSchema } from '../../src/core/keys.ts';
import { counterOf, deviceOf } from '../../src/core/stamp.ts';
import { inTransaction } from '../../src/storage/transaction.ts';
import type { Connection } from '../../src/storage/schema.ts';
import { answered, good, pause, refused, same, type Case } from './lab.ts';
import { foreign, keyOf, lug, machine, roller, value, walk, write } from './samples.ts';

export const writeCases: readonly Case[] = [
  {
    title: '[S1] what was written is read back by another tab and after reopening, with its stamp',
    run: async (lab) => {
      const store = lab.open();
      const [made] = good(await store.write([write(machine, 'new')]));
      const device = good(await store.device());
      same(made && [counterOf(made.stamp), deviceOf(made.stamp), made.by], [1, device, device], 'stamp');
      same(good(await lab.open().read(machine)), [made], 'other tab');
      store.close();
      same(good(await lab.open().read(machine)), [made], 'reopened');
      same(good(await lab.open().device()), device, 'device after reopening');
    },
  },
  {
    title: '[S2] writes of one call stand together, one counter each, in order',
    run: async (lab) => {
      const store = lab.open();
      const made = good(
        await store.write([write(walk, 'a'), write(lug, 'b'), write(lug, 'c')], {
          by: idSchema.parse('ann'),
        }),
      );
      same(
        made.map(({ stamp, by }) => [counterOf(stamp), by]),
        [
          [1, 'ann'],
          [2, 'ann'],
          [3, 'ann'],
        ],
        'counters',
      );
      same(good(await store.read(lug)), [made[2]], 'the later write of one call');
      same(Object.values(made[2]?.seen ?? {}), [2], 'what it covers');
      same(good(await store.write([])), [], 'no writes');
    },
  },
  {
    title: '[S3] a write covers what was there; a removal stays as a version without a value',
    run: async (lab) => {
      const store = lab.open();
      good(await store.write([write(lug, 'old')]));
      const [next] = good(await store.write([write(lug, 'new')]));
      same(good(await store.read(lug)), [next], 'one version left');
      const [gone] = good(await store.write([{ key: lug, removed: true }]));
      same([gone?.value, gone && counterOf(gone.stamp)], [undefined, 3], 'removal');
      same(good(await store.read(lug)), [gone], 'removal is kept');
      same(good(await store.read(walk)), [], 'never written');
    },
  },
  {
    title: '[S4] saying what is there already makes no version and uses no counter',
    run: async (lab) => {
      const store = lab.open();
      const [first] = good(await store.write([{ key: lug, value: { v: 1, a: 1, b: 2 } }]));
      const [again] = good(await store.write([{ key: lug, value: { b: 2, v: 1, a: 1 } }]));
      same(again, first, 'same version');
      const [removed] = good(await store.write([{ key: walk, removed: true }]));
      same(good(await store.write([{ key: walk, removed: true }])), [removed], 'removed twice');
      const [next] = good(await store.write([write(machine, 'm')]));
      same(next && counterOf(next.stamp), 3, 'counter');
    },
  },
  {
    title: '[S5] drafts leave in the transaction that makes their records',
    run: async (lab) => {
      const store = lab.open();
      for (const key of ['one', 'two', 'three']) good(await store.drafts.put(key, key));
      good(await store.write([write(lug, 'x')], { dropDrafts: ['one', 'absent'] }));
      same(
        good(await store.drafts.list('')).map(({ key }) => key),
        ['three', 'two'],
        'left',
      );
      good(await store.write([write(lug, 'x')], { dropDrafts: ['two'] }));
      same(good(await store.drafts.get('two')), undefined, 'dropped although nothing was new');
    },
  },
  {
    title: '[S6] a value that a newer build made is not edited, and nothing of that call is written',
    run: async (lab) => {
      const store = lab.open();
      const newer = { ...foreign(lug, 5, 'x'), value: { v: 2, secret: [1] } };
      good(await store.merge([newer]));
      good(await store.drafts.put('d', 1));
      const answer = await store.write([write(walk, 'w'), write(lug, 'mine')], { dropDrafts: ['d'] });
      same(refused(answer), { kind: 'made-by-newer', key: lug }, 'refusal');
      same(
        refused(await store.write([{ key: lug, removed: true }])),
        { kind: 'made-by-newer', key: lug },
        'removal',
      );
      same([good(await store.read(walk)), good(await store.read(lug))], [[], [newer]], 'untouched');
      same(good(await store.drafts.get('d')), 1, 'draft kept');
    },
  },
  {
    title: '[S7] an edit over a clash is refused until it is a decision, which covers every side',
    run: async (lab) => {
      const store = lab.open();
      const [mine] = good(await store.write([write(lug, 'mine')]));
      const theirs = foreign(lug, 1, 'theirs');
      same(good(await store.merge([theirs])), { added: 1, known: 0, clashes: [lug] }, 'merged');
      same(refused(await store.write([write(lug, 'edit')])), { kind: 'clash', key: lug }, 'refusal');
      same(good(await store.read(lug)).length, 2, 'both stand');
      same(
        good(await store.clashes()).map(({ key }) => key),
        [lug],
        'listed',
      );
      const shown = good(await store.read(lug)).at(-1)?.value?.['note'];
      const [decided] = good(await store.write([{ ...write(lug, String(shown)), decides: true }]));
      same(decided && counterOf(decided.stamp), 2, 'a decision for what is shown is news all the same');
      same(good(await store.read(lug)), [decided], 'one left');
      same(good(await store.clashes()), [], 'none listed');
      same(good(await store.merge([theirs, ...(mine ? [mine] : [])])).added, 0, 'no side comes back');
    },
  },
  {
    title: '[S8] two tabs that write at once use no stamp twice and lose nothing',
    run: async (lab) => {
      const [one, two] = [lab.open(), lab.open()];
      const keys = Array.from({ length: 20 }, (_, at) => keyOf(`limits/${at}`));
      const made = await Promise.all(keys.map((key, at) => (at % 2 ? one : two).write([write(key, 'x')])));
      const stamps = made.flatMap((answer) => good(answer).map(({ stamp }) => stamp));
      same(new Set(stamps).size, 20, 'stamps');
      same(good(await two.list({ prefix: 'limits/' })).length, 20, 'records');
      await Promise.all([one.write([write(walk, '1')]), two.write([write(walk, '2')])]);
      same(good(await one.read(walk)).length, 1, 'the later one covers the earlier');
    },
  },
  {
    title: '[S9] changes are told after commit, here and in the other tab, by prefix',
    run: async (lab) => {
      const [one, two] = [lab.open(), lab.open()];
      const heard: string[] = [];
      const stop = one.changes.subscribe('reading/w1/', (keys) => heard.push(`here ${keys.join()}`));
      two.changes.subscribe('walk/', (keys) => heard.push(`there ${keys.join()}`));
      good(await one.write([write(walk, 'w'), write(lug, 'x'), write(machine, 'm')]));
      same(heard[0], `here ${lug}`, 'in this tab at once');
      for (let wait = 0; wait < 100 && heard.length < 2; wait += 1) await pause(10);
      same(heard, [`here ${lug}`, `there ${walk}`], 'in the other tab');
      stop();
      good(await one.write([write(lug, 'y')]));
      good(await one.write([write(lug, 'y')]));
      same(heard.length, 2, 'after stopping');
    },
  },
  {
    title: '[S10] a list is a range of keys, from either end, page by page',
    run: async (lab) => {
      const store = lab.open();
      const names = ['a', 'b', 'c', 'd', 'e'];
      good(await store.write(names.map((name) => write(keyOf(`walk/${name}`), name))));
      good(await store.write([write(machine, 'm'), write(keyOf('work/walk/1'), 'x')]));
      const list = async (page: Parameters<typeof store.list>[0]): Promise<string> =>
        good(await store.list(page))
          .map(({ versions }) => versions[0]?.value?.['note'])
          .join('');
      same(await list({ prefix: 'walk/' }), 'abcde', 'all');
      same(await list({ prefix: 'walk/', limit: 2 }), 'ab', 'first page');
      same(await list({ prefix: 'walk/', limit: 2, after: 'walk/b' }), 'cd', 'next page');
      same(await list({ prefix: 'walk/', after: 'walk/e' }), '', 'after the last');
      same(await list({ prefix: 'walk/', reverse: true, limit: 2 }), 'ed', 'from the end');
      same(await list({ prefix: 'walk/', reverse: true, after: 'walk/d' }), 'cba', 'on from there');
      same(await list({ prefix: 'walk/c' }), 'c', 'one');
      const itself = { prefix: 'walk/c', reverse: true, after: 'walk/d' };
      same(await list(itself), 'c', 'the key that is the prefix');
      same(await list({ prefix: 'person/' }), '', 'none');
    },
  },
  {
    title: '[S11] values come back as they went in, whatever a person writes into them',
    run: async (lab) => {
      const store = lab.open();
      const odd = {
        v: 1,
        text: '</script>\u2028 \u0000 😀 \u202e',
        list: [null, -0.5, 1e21, '', []],
        nested: { '': {} },
      };
      good(await store.write([{ key: roller, value: odd }]));
      same(good(await lab.open().read(roller))[0]?.value, odd, 'value');
    },
  },
  {
    title: '[S12] a transaction that awaits anything foreign is a bug, and one that throws leaves nothing',
    run: async (lab) => {
      const store = lab.open();
      good(await store.write([write(walk, 'before')]));
      const db = await answered(lab.factory.open(lab.name));
      const connection = wrap(db) as unknown as Connection;
      const job = { stores: ['drafts'], mode: 'readwrite', durability: 'relaxed' } as const;
      const slow = inTransaction(connection, {
        ...job,
        work: async (tx) => {
          await tx.objectStore('drafts').put({ key: 'a', value: 1 });
          await pause(30);
        },
      });
      same(
        await fails(slow),
        'assertion failed: a transaction awaited something foreign',
        'no request after',
      );
      const late = inTransaction(connection, {
        ...job,
        work: async (tx) => {
          await tx.objectStore('drafts').put({ key: 'b', value: 1 });
          await pause(30);
          await tx.objectStore('drafts').put({ key: 'c', value: 1 });
        },
      });
      same(await fails(late), 'assertion failed: a transaction awaited something foreign', 'a request after');
      const thrown = inTransaction(connection, {
        ...job,
        work: async (tx) => {
          await tx.objectStore('drafts').put({ key: 'd', value: 1 });
          throw new Error('a bug');
        },
      });
      same(await fails(thrown), 'a bug', 'its own error');
      same(good(await store.drafts.get('d')), undefined, 'first half undone');
      db.close();
    },
  },
  {
    title: '[S13] after closing every call is answered, none waits',
    run: async (lab) => {
      const store = lab.open();
      good(await store.write([write(walk, 'x')]));
      store.close();
      store.close();
      same(refused(await store.read(walk)).kind, 'closed', 'reading');
      same(refused(await store.write([write(walk, 'y')])).kind, 'closed', 'writing');
      same(store.status.current(), 'lost', 'status');
      const early = lab.open();
      const answer = early.drafts.put('k', value('x'));
      early.close();
      same(refused(await answer).kind, 'closed', 'closed while opening');
    },
  },
  {
    title: '[S14] a connection closed behind its back is reopened once, and the edit is saved',
    run: async (lab) => {
      const connections: IDBDatabase[] = [];
      const open = (name: string, version?: number): IDBOpenDBRequest => {
        const request = lab.factory.open(name, version);
        request.addEventListener('success', () => connections.push(request.result));
        return request;
      };
      const store = lab.open({ open } as IDBFactory);
      good(await store.write([write(lug, '12')]));
      connections[0]?.close();
      const [made] = good(await store.write([write(lug, '13')]));
      connections[1]?.close();
      good(await store.drafts.put('pad', '1'));
      same(connections.length, 3, 'openings');
      same(good(await lab.open().read(lug)), [made], 'saved');
      same(store.status.current(), 'open', 'status');
    },
  },
  {
    title: '[S16] two tabs that edit one record at once undo nothing of each other',
    run: async (lab) => {
      const [one, two] = [lab.open(), lab.open()];
      const add = (name: string) => ({
        key: walk,
        edit: (now: object | undefined) => ({ v: 1, ...now, [name]: true }),
      });
      const names = ['a', 'b', 'c', 'd', 'e', 'f'];
      await Promise.all(names.map((name, at) => (at % 2 ? one : two).write([add(name)])));
      const [left] = good(await one.read(walk));
      same(left?.value, { v: 1, a: true, b: true, c: true, d: true, e: true, f: true }, 'every edit');
      same(good(await two.write([add('a')])), [left], 'what changes nothing makes no version');
      good(await one.write([{ key: walk, removed: true }]));
      const [anew] = good(await two.write([add('anew')]));
      same(anew?.value, { v: 1, anew: true }, 'after a removal there is nothing to start from');
    },
  },
];

const fails = (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => 'nothing',
    (error: unknown) => (error instanceof Error ? error.message : String(error)),
  );
