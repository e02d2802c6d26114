import { err, ok } from '../../src/core/result.ts';
import type { RecordKey } from '../../src/core/keys.ts';
import type { Store, Stored } from '../../src/storage/store.ts';
import { good, refused, same, type Case } from './lab.ts';
import { foreign, keyOf, lug, machine, walk, write } from './samples.ts';

const summary = (
  store: Store,
  text: string,
  from: readonly RecordKey[] = [walk, machine],
  core = '1',
): Promise<Stored<string>> =>
  store.derive({ name: 'row/w1', core, from, compute: () => Promise.resolve(ok(text)) });

export const derivedCases: readonly Case[] = [
  {
    title: '[S40] what was worked out is kept until a record that it comes from changes',
    run: async (lab) => {
      const store = lab.open();
      good(await store.write([write(walk, 'w'), write(machine, 'm')]));
      same(good(await summary(store, 'one')), 'one', 'worked out');
      same(good(await summary(lab.open(), 'two')), 'one', 'kept');
      good(
        await store.write([
          write(keyOf('walk/other'), 'x'),
          write(keyOf('reading/other/left.track/sag/1'), 'x'),
        ]),
      );
      same(good(await summary(store, 'two')), 'one', 'kept when others change');
      good(await store.write([write(lug, 'a reading of the walk')]));
      same(good(await summary(store, 'two')), 'two', 'worked out anew after a reading');
      good(await store.write([write(keyOf('work/digger/1'), 'a work of the machine')]));
      same(good(await summary(store, 'three')), 'three', 'after work');
      good(await store.merge([foreign(lug, 90, 'theirs')]));
      same(good(await summary(store, 'four')), 'four', 'after a merge');
      good(await store.write([write(machine, 'm')]));
      same(good(await summary(store, 'five')), 'four', 'kept when nothing was new');
    },
  },
  {
    title: '[S41] the result of another core is not used',
    run: async (lab) => {
      const store = lab.open();
      same(good(await summary(store, 'old', [walk], '1')), 'old', 'old core');
      same(good(await summary(store, 'new', [walk], '2')), 'new', 'new core');
      same(good(await summary(store, 'newer', [walk], '2')), 'new', 'kept');
    },
  },
  {
    title: '[S42] what was worked out from a state that has changed meanwhile is answered but not kept',
    run: async (lab) => {
      const store = lab.open();
      good(await store.write([write(walk, 'w')]));
      const compute = async (): Promise<Stored<string>> => {
        const before = good(await store.read(lug)).length;
        good(await store.write([write(lug, 'meanwhile')]));
        return ok(`readings: ${before}`);
      };
      same(
        good(await store.derive({ name: 'row/w1', core: '1', from: [walk], compute })),
        'readings: 0',
        'answered',
      );
      same(good(await summary(store, 'anew')), 'anew', 'not kept');
    },
  },
  {
    title: '[S43] a failure to work it out is answered and not kept',
    run: async (lab) => {
      const store = lab.open();
      const failure = { kind: 'unknown', detail: '' } as const;
      const compute = (): Promise<Stored<string>> => Promise.resolve(err(failure));
      same(
        refused(await store.derive({ name: 'row/w1', core: '1', from: [walk], compute })),
        failure,
        'failure',
      );
      same(good(await summary(store, 'fine')), 'fine', 'next time');
      store.close();
      same(refused(await summary(store, 'closed')).kind, 'closed', 'after closing');
    },
  },
];
