import 'fake-indexeddb/auto';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { askToKeep, browserDeps, probeOnReturn } from '../../src/storage/browser.ts';
import { ChangeFeed } from '../../src/storage/changes.ts';
import { openStore } from '../../src/storage/open-store.ts';
import { StatusHolder } from '../../src/storage/status.ts';
import type { Store } from '../../src/storage/store.ts';
import { good } from './lab.ts';
import { keyOf, walk, write } from './samples.ts';

afterEach(() => vi.unstubAllGlobals());

const manager = (persist: unknown): StorageManager => ({ persist }) as unknown as StorageManager;

describe('what the browser offers', () => {
  test('[S95] a store opens on what is there', async () => {
    const store = openStore(browserDeps());
    good(await store.write([write(walk, 'x')]));
    expect(good(await store.read(walk))).toHaveLength(1);
    const bytes = new Uint8Array(64);
    const { random, channel } = browserDeps();
    random(bytes);
    expect([new Set(bytes).size > 8, channel?.name]).toEqual([true, 'sagline']);
    channel?.close();
    expect((await indexedDB.databases()).map(({ name }) => name)).toEqual(['sagline']);
    store.close();
  });

  test('[S95] without BroadcastChannel, and where asking for the database throws, it says so and goes on', async () => {
    vi.stubGlobal('BroadcastChannel', undefined);
    Object.defineProperty(globalThis, 'indexedDB', {
      configurable: true,
      get: () => {
        throw new DOMException('blocked', 'SecurityError');
      },
    });
    const deps = browserDeps();
    expect([deps.factory, deps.channel]).toEqual([undefined, undefined]);
    const store = openStore(deps);
    expect((await store.probe()).ok).toBe(false);
    expect(store.status.current()).toBe('denied');
    store.close();
  });

  test('[S95] timers run and can be cancelled', async () => {
    const { timers } = browserDeps();
    const rung: number[] = [];
    timers.after(1, () => rung.push(1));
    timers.after(1, () => rung.push(2))();
    await new Promise((resolve) => setTimeout(resolve, 30));
    expect(rung).toEqual([1]);
  });

  test.each([
    [undefined, 'unknown'],
    [manager(undefined), 'unknown'],
    [manager(() => Promise.resolve(true)), 'kept'],
    [manager(() => Promise.resolve(false)), 'may-go'],
    [manager(() => Promise.reject(new Error('no'))), 'unknown'],
  ] as const)('[S96] asked to keep the data, %o means %s', async (asked, answer) => {
    expect(await askToKeep(asked)).toBe(answer);
  });

  test('[S97] on return the connection is probed, on going away it is not', () => {
    const page = Object.assign(new EventTarget(), { visibilityState: 'hidden' });
    const view = new EventTarget();
    let probes = 0;
    const store = { probe: () => Promise.resolve(void (probes += 1)) } as unknown as Store;
    const stop = probeOnReturn(store, page as unknown as Document, view as unknown as Window);
    page.dispatchEvent(new Event('visibilitychange'));
    expect(probes).toBe(0);
    page.visibilityState = 'visible';
    page.dispatchEvent(new Event('visibilitychange'));
    view.dispatchEvent(new Event('pageshow'));
    expect(probes).toBe(2);
    stop();
    page.dispatchEvent(new Event('visibilitychange'));
    view.dispatchEvent(new Event('pageshow'));
    expect(probes).toBe(2);
  });
});

describe('telling of changes', () => {
  const pairOf = (): {
    readonly here: ChangeFeed;
    readonly there: EventTarget;
    readonly posted: unknown[];
  } => {
    const posted: unknown[] = [];
    const there = Object.assign(new EventTarget(), {
      postMessage: (data: unknown) => void posted.push(data),
      close: () => void posted.push('closed'),
    });
    return { here: new ChangeFeed(there as unknown as BroadcastChannel), there, posted };
  };

  test('[S98] more than 500 keys are told to other tabs as anything', () => {
    const { here, posted } = pairOf();
    const keys = (count: number) => Array.from({ length: count }, (_, at) => keyOf(`limits/${at}`));
    here.announce(keys(500));
    here.announce(keys(501));
    here.announce([]);
    expect(posted.map((data) => (data as unknown[]).length)).toEqual([500, 0]);
  });

  test('[S98] what another tab says is passed on, what is no list of keys is not', () => {
    const { here, there } = pairOf();
    const heard: unknown[] = [];
    here.subscribe('walk/', (keys) => heard.push(keys));
    for (const data of [[walk], ['machine/x'], [], 'walk/1', undefined, { 0: walk }]) {
      there.dispatchEvent(new MessageEvent('message', { data }));
    }
    expect(heard).toEqual([[walk], []]);
  });

  test('[S98] one function may listen twice; closing ends everything', () => {
    const { here, posted } = pairOf();
    const heard: unknown[] = [];
    const listener = (): void => void heard.push(1);
    const stop = here.subscribe('', listener);
    here.subscribe('', listener);
    here.announce([walk]);
    stop();
    here.announce([walk]);
    here.close();
    here.anything();
    expect([heard.length, posted.at(-1)]).toEqual([3, 'closed']);
  });

  test('[S99] a status is told once for each change, and to nobody who stopped, also while telling', () => {
    const status = new StatusHolder();
    const heard: string[] = [];
    const stop = status.subscribe((code) => {
      heard.push(`a ${code}`);
      stop();
    });
    status.subscribe((code) => heard.push(`b ${code}`));
    expect(status.current()).toBe('opening');
    for (const code of ['opening', 'open', 'open', 'full'] as const) status.set(code);
    expect(heard).toEqual(['a open', 'b open', 'b full']);
    expect(status.current()).toBe('full');
  });
});
