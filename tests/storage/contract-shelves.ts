import { reserveBytes } from '../../src/storage/reserve.ts';
import type { ReserveRow } from '../../src/storage/schema.ts';
import { answered, good, same, type Case } from './lab.ts';
import { walk, write } from './samples.ts';

export const shelfCases: readonly Case[] = [
  {
    title: '[S30] drafts are kept as typed, by key, and listed by prefix',
    run: async (lab) => {
      const store = lab.open();
      good(await store.drafts.put('pad/b', '1'));
      good(await store.drafts.put('pad/b', '1,'));
      good(await store.drafts.put('pad/a', { text: '', unit: 'in/32' }));
      good(await store.drafts.put('other', 1));
      const other = lab.open();
      same(good(await other.drafts.get('pad/b')), '1,', 'last text');
      same(
        good(await other.drafts.list('pad/')).map(({ key }) => key),
        ['pad/a', 'pad/b'],
        'prefix',
      );
      good(await other.drafts.delete('pad/b'));
      good(await other.drafts.delete('absent'));
      same(
        [good(await store.drafts.get('pad/b')), good(await store.drafts.get('absent'))],
        [undefined, undefined],
        'gone',
      );
      same(good(await store.list({ prefix: '' })), [], 'no record of it');
    },
  },
  {
    title: '[S31] photo bytes come back by their hash as they were; absent is a state, not a fault',
    run: async (lab) => {
      const store = lab.open();
      const bytes = Uint8Array.from({ length: 70_000 }, (_, at) => at % 251);
      const photo = { sha256: 'a'.repeat(64), type: 'image/jpeg', bytes };
      good(await store.photos.put(photo));
      good(await store.photos.put({ ...photo, type: 'rewritten' }));
      const found = good(await lab.open().photos.get(photo.sha256));
      same(found?.type, 'image/jpeg', 'never rewritten');
      same(found?.bytes, bytes, 'bytes');
      same(good(await store.photos.get('b'.repeat(64))), undefined, 'absent');
    },
  },
  {
    title: '[S32] preferences outlive the tab',
    run: async (lab) => {
      const store = lab.open();
      same(good(await store.preferences.get('length')), undefined, 'not chosen');
      good(await store.preferences.put('length', 'in/32'));
      good(await store.preferences.put('seen', { tips: ['pad'] }));
      same(good(await lab.open().preferences.get('length')), 'in/32', 'chosen');
      same(good(await store.preferences.get('seen')), { tips: ['pad'] }, 'a structure');
    },
  },
  {
    title: '[S33] the reserve is set aside once and is as large as promised',
    run: async (lab) => {
      const store = lab.open();
      const read = async (): Promise<readonly ReserveRow[]> => {
        const db = await answered(lab.factory.open(lab.name));
        const found = await answered(db.transaction('reserve').objectStore('reserve').getAll());
        db.close();
        return found as ReserveRow[];
      };
      good(await store.ensureReserve());
      const [once] = await read();
      good(await store.ensureReserve());
      const rows = await read();
      same(
        rows.map(({ name, bytes }) => [name, bytes.length]),
        [['reserve', reserveBytes]],
        'one reserve',
      );
      same(rows[0]?.bytes.subarray(0, 100), once?.bytes.subarray(0, 100), 'made once');
      const [first] = rows;
      const kinds = new Set(first?.bytes.subarray(-100_000)).size;
      same(kinds > 200, true, 'filled with randomness to the end');
    },
  },
  {
    title: '[S34] a probe answers while the connection lives, also on an empty phone',
    run: async (lab) => {
      const store = lab.open();
      same(good(await store.probe()), undefined, 'empty');
      good(await store.write([write(walk, 'x')]));
      same(good(await store.probe()), undefined, 'used');
      same(store.status.current(), 'open', 'status');
      const db = await answered(lab.factory.open(lab.name));
      const names = await answered(db.transaction('meta').objectStore('meta').getAllKeys());
      same(names, ['clock', 'schema'], 'the self test leaves nothing behind');
      db.close();
    },
  },
];
