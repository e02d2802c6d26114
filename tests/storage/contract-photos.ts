import type { Store } from '../../src/storage/store.ts';
import { good, pause, refused, same, type Case, type Lab } from './lab.ts';
import { foreign, keyOf, lug, walk, write } from './samples.ts';

const hashAt = (at: number): string => at.toString(16).padStart(64, '0');
const keyAt = (at: number) => keyOf(`photo/w1/${hashAt(at)}`);
const photoAt = (at: number) => ({ sha256: hashAt(at), type: 'image/jpeg', bytes: Uint8Array.of(at, 1, 2) });
const smallAt = (at: number) => ({ sha256: hashAt(at), bytes: Uint8Array.of(at) });

/** Takes photos: records with their bytes and thumbnails. */
const take = (store: Store, ...numbers: number[]) =>
  store.write(
    numbers.map((at) => write(keyAt(at), 'photo')),
    { photos: numbers.map(photoAt), thumbnails: numbers.map(smallAt) },
  );

/** Which of photos 1 to 9 have bytes, and which thumbnails. */
async function here(store: Store): Promise<readonly [string, string]> {
  let [photos, thumbnails] = ['', ''];
  for (let at = 1; at < 10; at += 1) {
    if (good(await store.photos.get(hashAt(at))) !== undefined) photos += at;
    if (good(await store.thumbnails.get(hashAt(at))) !== undefined) thumbnails += at;
  }
  return [photos, thumbnails];
}

/** The app started anew, alone: earlier pages are gone for the engine too, which may take a moment. */
async function anew(lab: Lab, old: Store): Promise<Store> {
  old.close();
  await pause(50);
  return lab.open();
}

export const photoCases: readonly Case[] = [
  {
    title: '[PH1] bytes, thumbnail and the record that names them are there together, for every tab',
    run: async (lab) => {
      const store = lab.open();
      good(await store.drafts.put('pending', 1));
      const made = good(
        await store.write([write(keyAt(1), 'wide'), write(lug, 'x')], {
          photos: [photoAt(1)],
          thumbnails: [smallAt(1)],
          dropDrafts: ['pending'],
        }),
      );
      const other = lab.open();
      same(good(await other.read(keyAt(1))), [made[0]], 'record');
      same(good(await other.photos.get(hashAt(1))), photoAt(1), 'bytes');
      same(good(await other.thumbnails.get(hashAt(1))), smallAt(1), 'thumbnail');
      same(good(await other.drafts.get('pending')), undefined, 'draft');
    },
  },
  {
    title: '[PH2] where the record is refused, its bytes are not put either',
    run: async (lab) => {
      const store = lab.open();
      good(await store.write([write(lug, 'mine')]));
      good(await store.merge([foreign(lug, 1, 'theirs')]));
      const answer = await store.write([write(keyAt(1), 'wide'), write(lug, 'edit')], {
        photos: [photoAt(1)],
        thumbnails: [smallAt(1)],
      });
      same(refused(answer), { kind: 'clash', key: lug }, 'refusal');
      same(await here(store), ['', ''], 'nothing put');
      same(good(await store.read(keyAt(1))), [], 'no record');
    },
  },
  {
    title: '[PH3] a thumbnail is kept by the hash of its photo and can be made anew',
    run: async (lab) => {
      const store = lab.open();
      same(good(await store.thumbnails.get(hashAt(1))), undefined, 'absent');
      good(await store.thumbnails.put(smallAt(1)));
      good(await store.thumbnails.put({ sha256: hashAt(1), bytes: Uint8Array.of(7) }));
      same(good(await lab.open().thumbnails.get(hashAt(1)))?.bytes, Uint8Array.of(7), 'the later one');
      good(await take(store, 2));
      good(await store.write([write(keyAt(2), 'again')], { photos: [{ ...photoAt(2), type: 'rewritten' }] }));
      same(good(await store.photos.get(hashAt(2))), photoAt(2), 'photo bytes are never rewritten');
    },
  },
  {
    title: '[PH4] bytes that no record names go, but only when a later run finds them so once more',
    run: async (lab) => {
      const first = lab.open();
      good(await take(first, 1, 2, 3));
      good(await first.write([{ key: keyAt(2), removed: true }]));
      same(
        [good(await first.photos.sweep()), good(await first.photos.sweep())],
        [0, 0],
        'not in the same run',
      );
      same(await here(first), ['123', '123'], 'all there');
      const second = await anew(lab, first);
      same(await here(second), ['123', '123'], 'still there');
      same(good(await second.photos.sweep()), 1, 'one went');
      same(await here(second), ['13', '13'], 'photo and thumbnail of the removed one');
      same(good(await second.photos.sweep()), 0, 'no more');
      const third = await anew(lab, second);
      same(good(await third.photos.sweep()), 0, 'nor later');
      same(await here(third), ['13', '13'], 'what is named stays');
    },
  },
  {
    title: '[PH5] what an undo may bring back in this run is never swept, whatever was noted before',
    run: async (lab) => {
      const first = lab.open();
      good(await take(first, 1));
      good(await first.write([{ key: keyAt(1), removed: true }]));
      good(await first.photos.sweep());
      good(await first.write([write(keyAt(1), 'photo')]));
      const second = await anew(lab, first);
      good(await second.write([{ key: keyAt(1), removed: true }]));
      same(good(await second.photos.sweep()), 0, 'noted by the run before, but removed by this one');
      good(await second.write([write(keyAt(1), 'photo')]));
      const third = await anew(lab, second);
      same(good(await third.photos.sweep()), 0, 'brought back');
      same(await here(third), ['1', '1'], 'bytes are there');
    },
  },
  {
    title: '[PH6] bytes that an import puts before their records survive a sweep beside it',
    run: async (lab) => {
      const first = lab.open();
      good(await first.photos.put(photoAt(1)));
      good(await first.photos.sweep());
      const importing = await anew(lab, first);
      good(await importing.photos.put(photoAt(1)));
      good(await importing.photos.put(photoAt(2)));
      same(good(await importing.photos.sweep()), 0, 'in its own page');
      const other = lab.open();
      await pause(50);
      same(good(await other.photos.sweep()), 0, 'from another page');
      good(await importing.merge([foreign(keyAt(1), 1, 'photo'), foreign(keyAt(2), 2, 'photo')]));
      const last = await anew(lab, importing);
      other.close();
      await pause(50);
      same(good(await last.photos.sweep()), 0, 'named by now');
      same(await here(last), ['12', ''], 'all there');
    },
  },
  {
    title: '[PH7] while another page is open nothing is swept, and then it is',
    run: async (lab) => {
      const first = lab.open();
      good(await take(first, 1));
      good(await first.write([{ key: keyAt(1), removed: true }]));
      good(await first.photos.sweep());
      const second = await anew(lab, first);
      const other = lab.open();
      await pause(50);
      same(good(await second.photos.sweep()), 0, 'not beside another');
      same(await here(second), ['1', '1'], 'there');
      other.close();
      await pause(50);
      same(good(await second.photos.sweep()), 1, 'alone again');
    },
  },
  {
    title: '[PH8] of a clash either side keeps the bytes, and the demo keeps its own until it is wiped',
    run: async (lab) => {
      const first = lab.open();
      good(await take(first, 1));
      good(await first.merge([foreign(keyAt(1), 1, undefined)]));
      const demo = keyOf(`demo/photo/w1/${hashAt(2)}`);
      good(await first.write([write(demo, 'photo'), write(walk, 'w')], { photos: [photoAt(2)] }));
      good(await first.photos.sweep());
      const second = await anew(lab, first);
      same(good(await second.photos.sweep()), 0, 'named');
      good(await second.wipeDemo());
      good(await second.photos.sweep());
      const third = await anew(lab, second);
      same(good(await third.photos.sweep()), 1, "the demo's");
      same(await here(third), ['1', '1'], 'the one in a clash');
    },
  },
];
