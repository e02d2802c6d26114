import { signal, type ReadonlySignal } from '@preact/signals';
import { trustedAddress } from './trusted-address.ts';

/**
 * How the app on this device stands: `starting` until all its files are here, `ready` once it works with no network,
 * `update-waiting` when a newer one lies ready for a quiet moment, `unsupported` where it cannot be kept.
 */
export type AppState = 'starting' | 'ready' | 'update-waiting' | 'unsupported';

/** Names the version that runs: eight hex digits over everything it is made from. */
export const buildId: string = __BUILD_ID__;

const state = signal<AppState>('starting');

/** Read-only for screens. */
export const appState: ReadonlySignal<AppState> = state;

/** Asking more often than this wakes the radio for nothing. */
const throttleMs = 30_000;

let registration: ServiceWorkerRegistration | undefined;
let lastAsked = 0;
let applying = false;

/** Call once at start: keeps the app on the device and watches for a newer one. It never reloads by itself. */
export async function keepUpToDate(): Promise<void> {
  document.documentElement.dataset['build'] = buildId;
  if (!('serviceWorker' in navigator)) {
    state.value = 'unsupported';
    return;
  }
  navigator.serviceWorker.addEventListener('controllerchange', reloadIfAsked);
  try {
    registration = await navigator.serviceWorker.register(trustedAddress('sagline-worker', '/sw.js'), {
      updateViaCache: 'none',
    });
  } catch {
    state.value = 'unsupported'; // private windows of some browsers refuse; the page itself still works
    return;
  }
  watch(registration);
  // Installed apps on iOS are seldom loaded anew: they only come back to the front.
  document.addEventListener('visibilitychange', askForUpdate);
  addEventListener('pageshow', askForUpdate);
  addEventListener('focus', askForUpdate);
  askForUpdate();
}

/** Swaps to the waiting version and reloads once. Only ever from a tap of a person, outside a walk. */
export function applyUpdate(): void {
  const waiting = registration?.waiting;
  if (!waiting) return location.reload(); // another tab took it already: this one only has to load it
  applying = true;
  waiting.postMessage({ type: 'SKIP_WAITING' });
}

function reloadIfAsked(): void {
  if (!applying) return; // another tab took the update: this one goes on with the files it has
  applying = false;
  location.reload();
}

function watch(watched: ServiceWorkerRegistration): void {
  const show = (): void => {
    if (watched.waiting !== null && watched.active !== null) state.value = 'update-waiting';
    else if (watched.active !== null && state.value === 'starting') state.value = 'ready';
  };
  const follow = (): void => {
    watched.installing?.addEventListener('statechange', show);
    show();
  };
  watched.addEventListener('updatefound', follow);
  follow();
}

function askForUpdate(): void {
  if (document.visibilityState === 'hidden' || Date.now() - lastAsked < throttleMs) return;
  lastAsked = Date.now();
  registration?.update().catch(() => undefined); // no network: the next time will do
}
