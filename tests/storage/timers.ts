import type { Timers } from '../../src/storage/opening.ts';

export const realTimers: Timers = {
  after: (ms, callback) => {
    const timer = setTimeout(callback, ms);
    return () => clearTimeout(timer);
  },
};

/** Timers that only the test moves; the database's own work goes on in real time. */
export class HandTimers implements Timers {
  #now = 0;
  #waiting: { readonly due: number; readonly callback: () => void }[] = [];

  after(ms: number, callback: () => void): () => void {
    const entry = { due: this.#now + ms, callback };
    this.#waiting.push(entry);
    return () => void (this.#waiting = this.#waiting.filter((one) => one !== entry));
  }

  /** How many timers are set. */
  get waiting(): number {
    return this.#waiting.length;
  }

  /** Lets so much time pass, everything due happening in order. */
  async pass(ms: number): Promise<void> {
    const until = this.#now + ms;
    for (;;) {
      const [next] = this.#waiting.filter(({ due }) => due <= until).sort((a, b) => a.due - b.due);
      if (next === undefined) break;
      this.#now = next.due;
      this.#waiting = this.#waiting.filter((one) => one !== next);
      next.callback();
      await settled();
    }
    this.#now = until;
    await settled();
  }
}

/** Lets the fake database finish whatever it has to do. */
export async function settled(): Promise<void> {
  for (let turn = 0; turn < 60; turn += 1) await new Promise((resolve) => setImmediate(resolve));
}
