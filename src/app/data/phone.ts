import { signal, type ReadonlySignal } from '@preact/signals';
import { databaseName } from '../../storage/schema.ts';
import { openStore } from '../../storage/open-store.ts';
import type { Store } from '../../storage/store.ts';
import type { StatusCode } from '../../storage/status.ts';

/** The one store of this page; screens only read it, `actions/` are the only writers. */
export const store: Store = openStore({
  factory: globalThis.indexedDB,
  name: databaseName,
  timers: {
    after: (ms, callback) => {
      const timer = setTimeout(callback, ms);
      return () => clearTimeout(timer);
    },
  },
  random: (bytes) => void crypto.getRandomValues(bytes),
  channel: typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel(databaseName),
});

const code = signal<StatusCode>(store.status.current());
store.status.subscribe((next) => (code.value = next));

/** How the phone's storage stands, for the banner. */
export const storageStatus: ReadonlySignal<StatusCode> = code;

function probeWhenBack(): void {
  if (document.visibilityState === 'visible') void store.probe();
}

// iOS drops the connection of an app in the background: find out before the next tap does.
document.addEventListener('visibilitychange', probeWhenBack);
addEventListener('pageshow', probeWhenBack);
