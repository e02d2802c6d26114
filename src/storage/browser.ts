import type { StoreDeps } from './open-store.ts';
import { databaseName } from './schema.ts';
import type { Store } from './store.ts';

/** What a page or a worker offers; each of these is missing in some engine or mode. */
export function browserDeps(): StoreDeps {
  return {
    factory: factoryHere(),
    name: databaseName,
    timers: {
      after: (ms, callback) => {
        const timer = setTimeout(callback, ms);
        return () => clearTimeout(timer);
      },
    },
    random: (bytes) => void crypto.getRandomValues(bytes),
    channel: channelHere(),
    locks: locksHere(),
  };
}

/** Even asking for the factory may throw where cookies are blocked. */
function factoryHere(): IDBFactory | undefined {
  try {
    return globalThis.indexedDB;
  } catch {
    return undefined;
  }
}

/** So does making a channel, in Firefox. */
function channelHere(): BroadcastChannel | undefined {
  try {
    return new BroadcastChannel(databaseName);
  } catch {
    return undefined;
  }
}

/** There are none without a secure context. */
const locksHere = (): LockManager | undefined =>
  (globalThis.navigator as { locks?: LockManager } | undefined)?.locks;

/**
 * Looks after the connection whenever the person comes back: iOS ends the process behind it while the app is
 * in the background, and says so only to whoever uses it next. Answers how to stop.
 */
export function probeOnReturn(store: Store, page: Document, view: Window): () => void {
  const look = (): void => {
    if (page.visibilityState === 'visible') void store.probe();
  };
  page.addEventListener('visibilitychange', look);
  view.addEventListener('pageshow', look);
  return () => {
    page.removeEventListener('visibilitychange', look);
    view.removeEventListener('pageshow', look);
  };
}

/** Whether the browser has promised to keep the data: `unknown` where it cannot be asked or does not answer. */
export type Persistence = 'kept' | 'may-go' | 'unknown';

/**
 * Asks the browser to keep the data. Never to be awaited before anything that matters: Firefox asks the person
 * and answers only then. A fact to show, nothing depends on it.
 */
export async function askToKeep(manager: StorageManager | undefined): Promise<Persistence> {
  try {
    const kept = await manager?.persist?.();
    return kept === undefined ? 'unknown' : kept ? 'kept' : 'may-go';
  } catch {
    return 'unknown';
  }
}
