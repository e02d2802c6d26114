import 'fake-indexeddb/auto';
import { forceCloseDatabase, IDBFactory } from 'fake-indexeddb';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { openStore, type StoreDeps } from '../../src/storage/open-store.ts';
import { schemaVersion } from '../../src/storage/schema.ts';
import type { StatusCode } from '../../src/storage/status.ts';
import type { Store } from '../../src/storage/store.ts';
import { FaultyFactory } from './faults.ts';
import v1 from './fixtures/v1.json' with { type: 'json' };
import { answered, good, refused } from './lab.ts';
import { makeDatabase } from './older-build.ts';
import { demoWalk, foreign, keyOf, lug, machine, walk, write } from './samples.ts';
import { HandTimers, settled } from './timers.ts';

const stores: Store[] = [];
afterEach(() => {
  for (const store of stores.splice(0)) store.close();
});

interface Scene {
  readonly inner: IDBFactory;
  readonly faulty: FaultyFactory;
  readonly timers: HandTimers;
  readonly statuses: StatusCode[];
  readonly open: (deps?: Partial<StoreDeps>) => Store;
}

function scene(): Scene {
  const inner = new IDBFactory();
  const faulty = new FaultyFactory(inner);
  const timers = new HandTimers();
  const statuses: StatusCode[] = [];
  const open = (deps: Partial<StoreDeps> = {}): Store => {
    const random = (bytes: Uint8Array<ArrayBuffer>): void => void crypto.getRandomValues(bytes);
    const store = openStore({
      factory: faulty.factory,
      name: 'sagline',
      timers,
      random,
      channel: undefined,
      locks: undefined,
      ...deps,
    });
    store.status.subscribe((code) => statuses.push(code));
    stores.push(store);
    return store;
  };
  return { inner, faulty, timers, statuses, open };
}

const server = new DOMException('Connection to Indexed Database server lost.', 'UnknownError');
const backing = new DOMException('Internal error opening backing store for indexedDB.open.', 'UnknownError');
const security = new DOMException('The operation is insecure.', 'SecurityError');

describe('opening that does not go well', () => {
  test('[S80] an opening that never answers is slow, tried again, then stuck, and still comes back', async () => {
    const { faulty, timers, statuses, open } = scene();
    faulty.silent = true;
    const store = open();
    const early = store.read(walk);
    await timers.pass(1_499);
    expect([statuses, faulty.opens]).toEqual([[], 1]);
    await timers.pass(1);
    expect([statuses, faulty.opens]).toEqual([['slow'], 1]);
    await timers.pass(1_500);
    expect([statuses, faulty.opens]).toEqual([['slow'], 2]);
    await timers.pass(7_000);
    expect([statuses, faulty.opens]).toEqual([['slow', 'stuck'], 3]);
    expect(refused(await early)).toEqual({ kind: 'stuck', detail: 'still-opening' });
    expect(refused(await store.write([write(walk, 'x')])).kind).toBe('stuck');
    await timers.pass(9_999);
    expect(faulty.opens).toBe(3);
    faulty.silent = false;
    await timers.pass(1);
    expect([statuses, faulty.opens]).toEqual([['slow', 'stuck', 'open'], 4]);
    expect(good(await store.write([write(walk, 'x')]))).toHaveLength(1);
    expect(timers.waiting).toBe(0);
  });

  test('[S80] of two attempts that both answer the first counts and the other is closed', async () => {
    const { faulty, timers, statuses, open } = scene();
    faulty.holding = true;
    const store = open();
    await timers.pass(3_000);
    expect(faulty.opens).toBe(2);
    faulty.release();
    await settled();
    expect(statuses).toEqual(['slow', 'open']);
    const [first, second] = faulty.connections;
    expect(() => second?.transaction('meta')).toThrow();
    expect(() => first?.transaction('meta')).not.toThrow();
    expect(good(await store.write([write(walk, 'x')]))).toHaveLength(1);
  });

  test('[S81] where there is no database at all, or none is allowed, nothing can be kept and that is said', async () => {
    const { open, statuses } = scene();
    const store = open({ factory: undefined });
    expect(refused(await store.write([write(walk, 'x')]))).toEqual({
      kind: 'denied',
      detail: 'no-indexeddb',
    });
    expect(statuses).toEqual(['denied']);
  });

  test.each([
    [security, 'denied'],
    [new DOMException('no', 'NotAllowedError'), 'denied'],
    [new DOMException('The user denied permission to access the database.', 'UnknownError'), 'denied'],
    [new DOMException('A mutation operation was attempted', 'InvalidStateError'), 'denied'],
    [backing, 'corrupt'],
    [new DOMException('disk', 'QuotaExceededError'), 'full'],
    [new DOMException('?', 'OtherError'), 'lost'],
  ] as const)(
    '[S82] %s while opening is %s, tried again by itself and at every call',
    async (failure, code) => {
      const { faulty, timers, statuses, open } = scene();
      faulty.failure = failure;
      const store = open();
      const answer = refused(await store.read(walk));
      expect(answer.detail).toBe(`${failure.name}: ${failure.message}`);
      expect(statuses).toEqual([code]);
      const tries = faulty.opens;
      await store.read(walk);
      expect(faulty.opens).toBeGreaterThan(tries);
      await timers.pass(9_999);
      faulty.failure = undefined;
      await timers.pass(1);
      expect(statuses.at(-1)).toBe(code === 'full' ? 'full' : 'open');
      expect(good(await store.write([write(walk, 'x')]))).toHaveLength(1);
    },
  );

  test('[S83] a start at which nothing can be written allows reading only, until a probe finds it better', async () => {
    const { inner, faulty, statuses, open } = scene();
    const before = open({ factory: inner });
    good(await before.write([write(walk, 'x')]));
    faulty.readOnly = true;
    const store = open();
    expect(good(await store.read(walk))).toHaveLength(1);
    expect(statuses).toEqual(['open', 'denied']);
    expect(refused(await store.write([write(walk, 'y')])).kind).toBe('denied');
    expect(refused(await store.drafts.put('k', 1)).kind).toBe('denied');
    expect(faulty.opens).toBe(2);
    expect(() => faulty.connections[0]?.transaction('meta')).toThrow();
    good(await store.probe());
    expect([statuses.at(-1), faulty.opens]).toEqual(['denied', 4]);
    faulty.readOnly = false;
    expect(refused(await store.write([write(walk, 'y')])).kind).toBe('denied');
    good(await store.probe());
    expect([statuses.at(-1), faulty.opens]).toEqual(['open', 5]);
    good(await store.probe());
    expect(faulty.opens).toBe(5);
    expect(good(await store.write([write(walk, 'y')]))).toHaveLength(1);
  });

  test('[S83] a start at which what was written cannot be read back is no better', async () => {
    const { faulty, statuses, open } = scene();
    faulty.forgetful = true;
    const store = open();
    expect(refused(await store.drafts.put('k', 1))).toEqual({
      kind: 'unknown',
      detail: 'UnknownError: what was written cannot be read back',
    });
    expect(statuses).toEqual(['denied']);
    expect(good(await store.read(walk))).toEqual([]);
  });

  test('[S83] a connection that dies in every self test is lost, not denied', async () => {
    const { faulty, timers, statuses, open } = scene();
    faulty.failSelfTest = new DOMException('The database connection is closing.', 'InvalidStateError');
    const store = open();
    expect(refused(await store.read(walk)).kind).toBe('closed');
    expect([statuses, faulty.opens]).toEqual([['lost'], 2]);
    for (const connection of faulty.connections) expect(() => connection.transaction('meta')).toThrow();
    faulty.failSelfTest = undefined;
    await timers.pass(10_000);
    expect(statuses).toEqual(['lost', 'open']);
  });

  test('[S80] slowness is told while reopening, and does not hide that a tab blocks or that the disk is full', async () => {
    const { inner, faulty, timers, statuses, open } = scene();
    const store = open();
    good(await store.write([write(walk, 'x')]));
    faulty.holding = true;
    faulty.connections[0]?.close();
    const waiting = store.read(walk);
    await settled();
    await timers.pass(1_500);
    expect(statuses).toEqual(['open', 'slow']);
    faulty.release();
    expect(good(await waiting)).toHaveLength(1);
    expect(statuses).toEqual(['open', 'slow', 'open']);
    faulty.full = true;
    expect(refused(await store.preferences.put('length', 'mm')).kind).toBe('quota');
    faulty.holding = true;
    faulty.connections.at(-1)?.close();
    const again = store.read(walk);
    await settled();
    await timers.pass(1_500);
    expect(statuses.at(-1)).toBe('full');
    faulty.release();
    good(await again);
    store.close();
    const blocking = await answered(inner.open('blocked', 1));
    const blocked = open({ name: 'blocked' });
    await settled();
    await timers.pass(20_000);
    expect(blocked.status.current()).toBe('blocked');
    expect(statuses).not.toContain('stuck');
    blocking.close();
    await settled();
    expect(blocked.status.current()).not.toBe('blocked');
  });

  test('[S61] a tab that gives way within a second and a half is not called a block', async () => {
    const { inner, timers, statuses, open } = scene();
    const polite = await makeDatabase(inner, 'sagline', v1);
    const store = open();
    await settled();
    await timers.pass(1_499);
    expect(statuses).toEqual([]);
    polite.close();
    expect(good(await store.read(walk))).toHaveLength(1);
    expect(statuses).toEqual(['open']);
    await timers.pass(60_000);
    expect(statuses).toEqual(['open']);
  });

  test('[S61] a tab that does not is, and the way is free once it has gone', async () => {
    const { inner, timers, statuses, open } = scene();
    const stubborn = await makeDatabase(inner, 'sagline', v1);
    const store = open();
    const waiting = store.read(walk);
    await settled();
    await timers.pass(1_500);
    expect(statuses).toEqual(['slow', 'blocked']);
    expect(refused(await waiting).kind).toBe('blocked');
    stubborn.close();
    await settled();
    expect(statuses).toEqual(['slow', 'blocked', 'open']);
  });

  test('[S64] what is too new is not tried again', async () => {
    const { inner, faulty, timers, statuses, open } = scene();
    (await answered(inner.open('sagline', 99))).close();
    const store = open();
    expect(refused(await store.read(walk)).kind).toBe('too-new');
    const { opens } = faulty;
    await timers.pass(60_000);
    expect(refused(await store.write([write(walk, 'x')])).kind).toBe('too-new');
    expect([faulty.opens, statuses]).toEqual([opens, ['too-new']]);
  });

  test('[S84] writing that is refused later is denied, without a second try', async () => {
    const { faulty, statuses, open } = scene();
    const store = open();
    good(await store.write([write(walk, 'x')]));
    faulty.readOnly = true;
    expect(refused(await store.write([write(walk, 'y')])).kind).toBe('denied');
    expect([faulty.opens, statuses]).toEqual([1, ['open', 'denied']]);
    expect(good(await store.read(walk))[0]?.value?.['note']).toBe('x');
    expect(statuses).toEqual(['open', 'denied']);
    faulty.readOnly = false;
    good(await store.probe());
    expect(statuses).toEqual(['open', 'denied', 'open']);
  });
});

describe('a database without our stores', () => {
  test('[S82] is damaged, which is told, and nothing of it is used', async () => {
    const { inner, open, statuses } = scene();
    const request = inner.open('sagline', schemaVersion);
    request.onupgradeneeded = () => request.result.createObjectStore('other');
    await settled();
    request.result.close();
    const store = open();
    expect(refused(await store.write([write(walk, 'x')])).kind).toBe('corrupt');
    expect(refused(await store.read(walk)).kind).toBe('corrupt');
    expect(statuses).toEqual(['corrupt']);
  });
});

describe('a connection that goes away', () => {
  test('[S85] ten calls on a dead connection reopen it once and are all answered', async () => {
    const { faulty, statuses, open } = scene();
    const store = open();
    good(await store.probe());
    faulty.connections[0]?.close();
    const calls = Array.from({ length: 10 }, (_, at) => store.write([write(keyOf(`limits/${at}`), 'x')]));
    for (const answer of await Promise.all(calls)) expect(good(answer)).toHaveLength(1);
    expect([faulty.opens, statuses]).toEqual([2, ['open']]);
  });

  test('[S86] a connection that the browser ends is reopened at once, and screens are told to read again', async () => {
    const { faulty, open } = scene();
    const store = open();
    good(await store.write([write(walk, 'x')]));
    const told: unknown[] = [];
    store.changes.subscribe('walk/', (keys) => told.push(keys));
    store.changes.subscribe('person/', (keys) => told.push(keys));
    forceCloseDatabase(faulty.connections[0] as never);
    await settled();
    expect([faulty.opens, told]).toEqual([2, [[], []]]);
    expect(good(await store.read(walk))).toHaveLength(1);
    forceCloseDatabase(faulty.connections[0] as never);
    await settled();
    expect(faulty.opens).toBe(2);
  });

  test.each([
    [server, 'unknown', 'lost'],
    [new DOMException('The database connection is closing.', 'InvalidStateError'), 'closed', 'lost'],
    [new DOMException('unreadable', 'NotReadableError'), 'corrupt', 'corrupt'],
  ] as const)('[S87] %s twice in a row is told, and it comes back by itself', async (failure, kind, code) => {
    const { faulty, timers, statuses, open } = scene();
    const store = open();
    good(await store.write([write(walk, 'x')]));
    const connection = faulty.connections[0];
    faulty.failLater = failure;
    expect(refused(await store.write([write(walk, 'y')])).kind).toBe(kind);
    expect(statuses).toEqual(['open', code]);
    expect(faulty.opens).toBe(2);
    expect(() => connection?.transaction('meta')).toThrow();
    faulty.failLater = undefined;
    await timers.pass(10_000);
    expect(statuses).toEqual(['open', code, 'open']);
    expect(good(await store.read(walk))[0]?.value?.['note']).toBe('x');
  });

  test('[S88] a bug is thrown, not taken for a fault of storage, and costs no connection', async () => {
    const { faulty, statuses, open } = scene();
    const store = open();
    await expect(store.drafts.put('k', () => 1)).rejects.toThrow();
    expect(good(await store.drafts.get('k'))).toBeUndefined();
    expect([faulty.opens, statuses]).toEqual([1, ['open']]);
  });

  test('[S89] a flush that never ends holds another tab up for one second', async () => {
    const { inner, timers, statuses, open } = scene();
    const store = open();
    good(await store.probe());
    store.beforeClose(() => new Promise(() => undefined));
    const request = inner.open('sagline', schemaVersion + 1);
    let opened = false;
    request.onsuccess = () => void (opened = true);
    await settled();
    await timers.pass(999);
    expect([opened, statuses]).toEqual([false, ['open']]);
    await timers.pass(1);
    expect([opened, statuses]).toEqual([true, ['open', 'updated-elsewhere']]);
    request.result.close();
    await timers.pass(60_000);
    expect(refused(await store.probe()).kind).toBe('updated-elsewhere');
    expect(refused(await store.ensureReserve()).kind).toBe('updated-elsewhere');
    expect(statuses.at(-1)).toBe('updated-elsewhere');
  });
});

describe('a full disk', () => {
  test('[S90] the reserve makes room for the last readings; more is said to be full until there is room again', async () => {
    const { faulty, statuses, open } = scene();
    const store = open();
    good(await store.ensureReserve());
    faulty.full = true;
    const [made] = good(await store.write([write(lug, '13 mm')]));
    expect(good(await store.read(lug))).toEqual([made]);
    expect(statuses).toEqual(['open', 'full']);
    expect(faulty.opens).toBe(2);
    expect(good(await store.write([write(lug, '12 mm')]))).toHaveLength(1);
    expect(statuses.at(-1)).toBe('full');
    good(await store.ensureReserve());
    expect(statuses).toEqual(['open', 'full', 'open']);
    faulty.full = true;
    good(await store.drafts.put('pad', '1'));
    expect(statuses.at(-1)).toBe('full');
    good(await store.probe());
    expect(statuses.at(-1)).toBe('open');
    expect(good(await store.drafts.get('pad'))).toBe('1');
  });

  test('[S91] photos, lists and preferences never take the reserve', async () => {
    const { faulty, statuses, open } = scene();
    const store = open();
    good(await store.ensureReserve());
    faulty.full = true;
    const photo = { sha256: 'a'.repeat(64), type: 'image/jpeg', bytes: new Uint8Array(10) };
    expect(refused(await store.photos.put(photo)).kind).toBe('quota');
    expect(refused(await store.preferences.put('length', 'mm')).kind).toBe('quota');
    expect([statuses, faulty.full]).toEqual([['open', 'full'], true]);
    const derived = {
      name: 'row',
      core: '1',
      from: [walk],
      compute: () => Promise.resolve({ ok: true, value: 7 } as const),
    };
    expect(good(await store.derive(derived))).toBe(7);
    expect(faulty.full).toBe(true);
    expect(good(await store.photos.get(photo.sha256))).toBeUndefined();
  });

  test.each([1, 2])('[S89] room of the reserve that comes back %i tries late is waited for', async (late) => {
    const { faulty, timers, statuses, open } = scene();
    const store = open();
    good(await store.ensureReserve());
    faulty.full = true;
    faulty.late = late;
    const saved = store.write([write(lug, 'last')]);
    for (let waits = 0; waits < late; waits += 1) {
      await settled();
      await timers.pass(1_000);
    }
    good(await saved);
    expect(statuses.at(-1)).toBe('full');
    expect(good(await store.read(lug))[0]?.value?.['note']).toBe('last');
  });

  test('[S88] once the disk is known to be full, a write that the engine calls forbidden is one that found it full', async () => {
    const { faulty, statuses, open } = scene();
    const store = open();
    good(await store.ensureReserve());
    faulty.full = true;
    good(await store.write([write(lug, 'first')]));
    faulty.readOnly = true;
    expect(refused(await store.write([write(lug, 'second')])).kind).toBe('quota');
    expect(statuses.at(-1)).toBe('full');
    faulty.readOnly = false;
    good(await store.write([write(lug, 'third')]));
  });

  test('[S92] when even the reserve is not enough, nothing of it is half there and the old state stands', async () => {
    const { faulty, statuses, open } = scene();
    const store = open();
    good(await store.write([write(lug, 'old')]));
    good(await store.drafts.put('pad', '13'));
    faulty.full = true;
    faulty.reserveHelps = false;
    expect(
      refused(await store.write([write(lug, 'new'), write(walk, 'w')], { dropDrafts: ['pad'] })).kind,
    ).toBe('quota');
    expect(statuses.at(-1)).toBe('full');
    expect(good(await store.read(lug))[0]?.value?.['note']).toBe('old');
    expect(good(await store.read(walk))).toEqual([]);
    expect(good(await store.drafts.get('pad'))).toBe('13');
    expect(refused(await store.ensureReserve()).kind).toBe('quota');
    expect(refused(await store.probe()).kind).toBe('quota');
    faulty.full = false;
    expect(good(await store.write([write(lug, 'new')]))).toHaveLength(1);
  });
});

describe('ten thousand walks', () => {
  test('[S15] a page of them reads no more rows than it shows, from either end', async () => {
    const { faulty, open } = scene();
    const store = open();
    const keys = Array.from({ length: 10_000 }, (_, at) => keyOf(`walk/${String(at).padStart(5, '0')}`));
    for (let at = 0; at < keys.length; at += 2_000) {
      good(await store.merge(keys.slice(at, at + 2_000).map((key, n) => foreign(key, at + n + 1, 'w'))));
    }
    const all = vi.spyOn(IDBObjectStore.prototype, 'getAll');
    const newest = good(await store.list({ prefix: 'walk/', reverse: true, limit: 20 }));
    expect(newest.map(({ key }) => key)).toEqual(keys.slice(-20).reverse());
    expect(faulty.steps).toBeLessThanOrEqual(21);
    expect(all).not.toHaveBeenCalled();
    expect(good(await store.list({ prefix: 'walk/', limit: 20 })).map(({ key }) => key)).toEqual(
      keys.slice(0, 20),
    );
    expect(all.mock.calls.map(([, limit]) => limit)).toEqual([20]);
    vi.restoreAllMocks();
  });
});

describe('what reaches the disk', () => {
  test('[S93] whatever is the only copy is written with strict durability, the rest is not', async () => {
    const { faulty, open } = scene();
    const store = open();
    good(await store.join());
    good(await store.write([write(walk, 'x'), write(demoWalk, 'demo')]));
    good(await store.merge([foreign(lug, 3, 'x')]));
    good(await store.photos.put({ sha256: 'a'.repeat(64), type: 'image/png', bytes: new Uint8Array(1) }));
    good(await store.device());
    good(await store.wipeDemo());
    good(await store.drafts.put('k', 1));
    good(await store.drafts.delete('k'));
    good(await store.preferences.put('length', 'mm'));
    good(await store.ensureReserve());
    const compute = (): Promise<{ readonly ok: true; readonly value: number }> =>
      Promise.resolve({ ok: true, value: 1 });
    good(await store.derive({ name: 'n', core: '1', from: [machine], compute }));
    const writing = faulty.begun.filter(({ mode }) => mode === 'readwrite');
    const only = ['versions', 'outbox', 'photos'];
    const important = writing.filter(({ stores: names }) => names.some((name) => only.includes(name)));
    expect(important.map(({ durability }) => durability)).toEqual(Array.from({ length: 5 }, () => 'strict'));
    const rest = writing.filter((one) => !important.includes(one));
    expect(rest.map(({ stores: names, durability }) => [names.join(), durability])).toEqual([
      ['meta', 'relaxed'], // self test
      ['meta', 'strict'], // the device's id
      ['drafts', 'relaxed'],
      ['drafts', 'relaxed'],
      ['meta', 'relaxed'], // a preference
      ['reserve', 'relaxed'],
      ['derived,meta', 'relaxed'],
    ]);
  });

  test('[S94] what was answered as saved had completed: the next opening of the database finds it', async () => {
    const { inner, open } = scene();
    const store = open();
    const [made] = good(await store.write([write(walk, 'x')]));
    const other = open({ factory: inner });
    expect(good(await other.read(walk))).toEqual([made]);
  });
});
