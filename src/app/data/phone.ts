import { signal, type ReadonlySignal } from '@preact/signals';
import { browserDeps, probeOnReturn } from '../../storage/browser.ts';
import { openStore } from '../../storage/open-store.ts';
import type { Store } from '../../storage/store.ts';
import type { StatusCode } from '../../storage/status.ts';

/** The one store of this page; screens only read it, `actions/` are the only writers. */
export const store: Store = openStore(browserDeps());

const code = signal<StatusCode>(store.status.current());
store.status.subscribe((next) => (code.value = next));

/** How the phone's storage stands, for the banner. */
export const storageStatus: ReadonlySignal<StatusCode> = code;

probeOnReturn(store, document, window);
