import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, describe, test } from 'vitest';
import { openStore } from '../../src/storage/open-store.ts';
import type { Store } from '../../src/storage/store.ts';
import { contract } from './contract.ts';
import { locksOf } from './locks.ts';
import { realTimers } from './timers.ts';

const open: Store[] = [];
afterEach(() => {
  for (const store of open.splice(0)) store.close();
});

describe('storage contract', () => {
  test.each(contract.map((one) => [one.title, one] as const))('%s', async (title, one) => {
    const factory = new IDBFactory();
    const locks = locksOf();
    await one.run({
      factory,
      name: 'sagline',
      open: (from = factory) => {
        const store = openStore({
          factory: from,
          name: 'sagline',
          timers: realTimers,
          random: (bytes) => void crypto.getRandomValues(bytes),
          channel: new BroadcastChannel(title),
          locks,
        });
        open.push(store);
        return store;
      },
    });
  });
});
