import { signal, type ReadonlySignal } from '@preact/signals';
import type { Store } from '../../storage/store.ts';
import type { StatusCode } from '../../storage/status.ts';
import { openStore } from '../../storage/open-store.ts';

/** The one store of this page; screens only read it, `actions/` are the only writers. */
export const store: Store = openStore();

const code = signal<StatusCode>(store.status.current());
store.status.subscribe((next) => (code.value = next));

/** How the phone's storage stands, for the banner. */
export const storageStatus: ReadonlySignal<StatusCode> = code;

// iOS drops the connection of an app in the background: find out before the next tap does.
for (const event of ['visibilitychange', 'pageshow']) {
  document.addEventListener(event, () => {
    if (document.visibilityState === 'visible') void store.probe();
  });
}
