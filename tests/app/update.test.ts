import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';

/** The browser's side: a registration whose worker can be moved through its states. */
class FakeRegistration extends EventTarget {
  installing: EventTarget | null = null;
  waiting: { postMessage(message: unknown): void } | null = null;
  active: object | null = null;
  updates = 0;

  async update(): Promise<void> {
    this.updates += 1;
  }

  found(): EventTarget {
    this.installing = new EventTarget();
    this.dispatchEvent(new Event('updatefound'));
    return this.installing;
  }
}

const posted: unknown[] = [];
let registration: FakeRegistration;
let container: EventTarget & { register: ReturnType<typeof vi.fn> };
let reload: ReturnType<typeof vi.fn>;
let update: typeof import('../../src/app/update.ts');

beforeEach(async () => {
  vi.useFakeTimers({ now: 1_000_000, toFake: ['Date'] });
  vi.stubGlobal('__BUILD_ID__', '0123abcd');
  posted.length = 0;
  registration = new FakeRegistration();
  container = Object.assign(new EventTarget(), { register: vi.fn(async () => registration) });
  Object.defineProperty(navigator, 'serviceWorker', { configurable: true, value: container });
  reload = vi.fn();
  Object.defineProperty(location, 'reload', { configurable: true, value: reload });
  vi.resetModules();
  update = await import('../../src/app/update.ts');
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

function takeOver(): void {
  container.dispatchEvent(new Event('controllerchange'));
}

function waitingVersion(): void {
  const worker = registration.found();
  registration.waiting = { postMessage: (message) => posted.push(message) };
  worker.dispatchEvent(new Event('statechange'));
}

describe('state', () => {
  test('[B16] the app is ready offline once its worker is active', async () => {
    await update.keepUpToDate();
    expect(update.appState.value).toBe('starting');
    const worker = registration.found();
    registration.active = {};
    worker.dispatchEvent(new Event('statechange'));
    expect(update.appState.value).toBe('ready');
  });

  test('[B16] a newer version that waits is told', async () => {
    registration.active = {};
    await update.keepUpToDate();
    expect(update.appState.value).toBe('ready');
    waitingVersion();
    expect(update.appState.value).toBe('update-waiting');
  });

  test('[B16] where the browser refuses a worker, the state says so', async () => {
    container.register.mockRejectedValueOnce(new DOMException('no', 'SecurityError'));
    await update.keepUpToDate();
    expect(update.appState.value).toBe('unsupported');
  });

  test('[B16] the page says which version runs', async () => {
    await update.keepUpToDate();
    expect(document.documentElement.dataset['build']).toBe('0123abcd');
  });
});

describe('taking a new version', () => {
  test('[B17] nothing reloads until a person asks, and then once', async () => {
    registration.active = {};
    await update.keepUpToDate();
    waitingVersion();
    takeOver();
    expect([reload.mock.calls.length, posted]).toEqual([0, []]);
    update.applyUpdate();
    expect(posted).toEqual([{ type: 'SKIP_WAITING' }]);
    takeOver();
    takeOver();
    expect(reload).toHaveBeenCalledTimes(1);
  });
});

test('[B17] when another tab took the new version, this one stays as it is until a person asks', async () => {
  registration.active = {};
  await update.keepUpToDate();
  const worker = registration.found();
  registration.waiting = { postMessage: (message) => posted.push(message) };
  worker.dispatchEvent(new Event('statechange'));
  registration.waiting = null;
  worker.dispatchEvent(new Event('statechange'));
  takeOver();
  expect([reload.mock.calls.length, update.appState.value]).toEqual([0, 'update-waiting']);
  update.applyUpdate();
  expect([reload.mock.calls.length, posted]).toEqual([1, []]);
});

describe('looking for a new version', () => {
  test('[B18] it looks at the start and when the app comes to the front, at most every 30 s', async () => {
    await update.keepUpToDate();
    expect(registration.updates).toBe(1);
    for (const [afterMs, event, updates] of [
      [29_000, 'focus', 1],
      [1_000, 'focus', 2],
      [30_000, 'pageshow', 3],
      [1_000, 'pageshow', 3],
    ] as const) {
      vi.setSystemTime(Date.now() + afterMs);
      dispatchEvent(new Event(event));
      expect(registration.updates).toBe(updates);
    }
    vi.setSystemTime(Date.now() + 30_000);
    document.dispatchEvent(new Event('visibilitychange'));
    expect(registration.updates).toBe(4);
  });

  test('[B18] the worker is asked past every cache', async () => {
    await update.keepUpToDate();
    expect(container.register).toHaveBeenCalledWith('/sw.js', { updateViaCache: 'none' });
  });
});
