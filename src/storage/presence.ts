import type { Random } from './clock.ts';

/** What of Web Locks is used here; absent in engines without them. */
export type Locks = Pick<LockManager, 'request' | 'query'>;

/**
 * One open store, to all others of this origin: it holds a shared lock from opening to closing, which the browser
 * gives back when the page goes, however it goes. Nothing ever waits for this lock.
 */
export class Presence {
  /** Names this run of the app. */
  readonly run: string;
  readonly #locks: Locks | undefined;
  readonly #name: string;
  #leave = (): void => undefined;

  constructor(locks: Locks | undefined, name: string, random: Random) {
    const bytes = new Uint8Array(8);
    random(bytes);
    this.run = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
    this.#locks = locks;
    this.#name = `${name}-open`;
    const left = new Promise<void>((resolve) => (this.#leave = resolve));
    locks?.request(this.#name, { mode: 'shared' }, () => left).catch(() => undefined);
  }

  /** True when this is known to be the only open one. */
  async isAlone(): Promise<boolean> {
    try {
      const { held = [] } = (await this.#locks?.query()) ?? {};
      return held.filter(({ name }) => name === this.#name).length === 1;
    } catch {
      return false;
    }
  }

  leave(): void {
    this.#leave();
  }
}
