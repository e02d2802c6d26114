import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { describe, expect, test } from 'vitest';
import { openStore } from '../../src/storage/open-store.ts';
import type { Store } from '../../src/storage/store.ts';
import { answered } from './lab.ts';
import { FaultyFactory, oneShots, type Style } from './faults.ts';
import { demoWalk, deviceAt, foreign, keyOf, lug, machine, roller, value, verdict, walk } from './samples.ts';
import { realTimers } from './timers.ts';

/** What a person does, each step one save that the screen waits for. */
const actions: readonly {
  readonly name: string;
  readonly steps: readonly ((store: Store) => Promise<{ ok: boolean }>)[];
}[] = [
  {
    name: 'start',
    steps: [
      (store) =>
        store.write([
          { key: machine, value: value('digger') },
          { key: demoWalk, value: value('demo') },
        ]),
      (store) =>
        store.write([
          { key: walk, value: value('step 1') },
          { key: keyOf('limits/own'), value: value('sheet') },
        ]),
    ],
  },
  {
    name: 'reading',
    steps: [
      (store) => store.drafts.put('pad', '1'),
      (store) => store.drafts.put('pad', '13'),
      (store) =>
        store.write(
          [
            { key: lug, value: value('13 mm') },
            { key: walk, value: value('step 2') },
          ],
          { dropDrafts: ['pad'] },
        ),
    ],
  },
  {
    name: 'note',
    steps: [
      (store) => store.drafts.put('note', 'chunks out of the l'),
      (store) => store.write([{ key: lug, value: value('13 mm, chunked') }], { dropDrafts: ['note'] }),
    ],
  },
  {
    name: 'hand over and take in',
    steps: [
      (store) => store.join(),
      (store) =>
        store.merge([
          foreign(roller, 30, 'theirs'),
          foreign(lug, 31, 'theirs'),
          foreign(lug, 31, 'mine', {}, deviceAt(1)),
        ]),
      (store) => store.write([{ key: lug, value: value('settled'), decides: true }]),
      (store) => store.wipeDemo(),
    ],
  },
  {
    name: 'finish',
    steps: [
      (store) =>
        store.write(
          [
            { key: walk, value: value('finished') },
            { key: verdict, value: value('replace') },
          ],
          {
            dropDrafts: ['pad', 'note'],
          },
        ),
    ],
  },
];
/** Put, get, delete, get, after opening and beginning. */
const selfTestCalls = [3, 4, 5, 6];

const steps = actions.flatMap((action) => action.steps);

function openOn(factory: IDBFactory): Store {
  return openStore({
    factory,
    name: 'sagline',
    timers: realTimers,
    random: (bytes) => void bytes.fill(1),
    channel: undefined,
    locks: undefined,
  });
}

/** All that is stored, as a store finds it that is opened on the untouched database. */
async function stateOf(factory: IDBFactory): Promise<string> {
  const store = openOn(factory);
  const [rows, drafts] = [await store.list({ prefix: '' }), await store.drafts.list('')];
  store.close();
  const db = await answered(factory.open('sagline'));
  const tx = db.transaction(['outbox', 'meta']);
  const [outbox, meta] = [tx.objectStore('outbox').getAll(), tx.objectStore('meta').getAll()];
  const rest = [await answered(outbox), await answered(meta)];
  db.close();
  return JSON.stringify([rows, drafts, rest]);
}

/** The states that a run without faults goes through: before everything, and after each step. */
async function soundStates(): Promise<readonly string[]> {
  const factory = new IDBFactory();
  const states = [await stateOf(factory)];
  for (const step of steps) {
    const store = openOn(factory);
    expect((await step(store)).ok).toBe(true);
    store.close();
    states.push(await stateOf(factory));
  }
  return states;
}

/** Runs all steps on a database that fails at its n-th call; answers what it saw. */
async function runWithFault(
  at: number,
  style: Style,
): Promise<{ faulty: FaultyFactory; acked: boolean[]; state: string }> {
  const inner = new IDBFactory();
  const faulty = new FaultyFactory(inner, at, style);
  const store = openOn(faulty.factory);
  const acked: boolean[] = [];
  for (const step of steps) {
    const { ok } = await step(store);
    acked.push(ok);
    if (!ok && style === 'dead') break;
  }
  store.close();
  return { faulty, acked, state: await stateOf(inner) };
}

/** Some hundred runs of the whole story. */
const timeout = 120_000;

describe('failing the n-th call, for every n', { timeout }, () => {
  test('[S70] the states of a sound run all differ', async () => {
    expect(new Set(await soundStates()).size).toBe(steps.length + 1);
  });

  test.each(oneShots)(
    '[S71] one fault (%s) costs nothing: every step is saved, with exactly one reopening',
    async (style) => {
      const wanted = (await soundStates()).at(-1);
      let at = 1;
      for (; ; at += 1) {
        const { faulty, acked, state } = await runWithFault(at, style);
        expect(acked, `fault at call ${at}`).toEqual(steps.map(() => true));
        expect(state, `fault at call ${at}`).toBe(wanted);
        // The self test of a start shrugs a full disk off: there is nothing to save yet.
        const isShrugged = style === 'quota' && selfTestCalls.includes(at);
        expect(faulty.opens, `fault at call ${at}`).toBe(faulty.reached && !isShrugged ? 2 : 1);
        if (!faulty.reached) break;
      }
      expect(at).toBeGreaterThan(style === 'complete-unheard' ? steps.length : 50);
    },
  );

  test('[S72] when all is dead from the n-th call on, the state is the one before or after the step at hand', async () => {
    const states = await soundStates();
    let at = 1;
    for (; ; at += 1) {
      const { faulty, acked, state } = await runWithFault(at, 'dead');
      const saved = acked.filter(Boolean).length;
      expect([states[saved], states[saved + 1]], `dead from call ${at}`).toContain(state);
      if (!faulty.reached) break;
      expect(saved, `dead from call ${at}`).toBeLessThan(steps.length);
    }
    expect(at).toBeGreaterThan(50);
  });
});

describe('a photo, failing the n-th call, for every n', { timeout }, () => {
  const sha256 = 'a'.repeat(64);
  const photo = keyOf(`photo/w1/${sha256}`);

  test.each([...oneShots, 'dead'] as const)(
    '[PH10] with a fault (%s) bytes, thumbnail and record are all there or none is, and the answer is true',
    async (style) => {
      let at = 1;
      for (; ; at += 1) {
        const inner = new IDBFactory();
        const faulty = new FaultyFactory(inner, at, style);
        const store = openOn(faulty.factory);
        const answer = await store.write([{ key: photo, value: value('wide') }], {
          photos: [{ sha256, type: 'image/jpeg', bytes: Uint8Array.of(1) }],
          thumbnails: [{ sha256, bytes: Uint8Array.of(2) }],
        });
        store.close();
        const after = openOn(inner);
        const found = [await after.photos.get(sha256), await after.thumbnails.get(sha256)];
        const rows = await after.read(photo);
        after.close();
        const there = [
          ...found.map((one) => one.ok && one.value !== undefined),
          rows.ok && rows.value.length > 0,
        ];
        const acked = answer.ok || style === 'complete-unheard' ? [true] : [false];
        expect([...new Set(there)], `fault at call ${at}`).toEqual(style === 'dead' ? [answer.ok] : acked);
        if (!faulty.reached) break;
      }
      expect(at).toBeGreaterThan(1);
    },
  );
});
