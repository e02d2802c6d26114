/** What the app's banner has to know; sentences are made of it elsewhere. */
export type StatusCode =
  | 'opening'
  | 'open'
  | 'slow' // opening takes longer than it should
  | 'blocked' // another tab has to be closed first
  | 'stuck' // opening has not answered for long; it is still being tried
  | 'denied' // reading at most, nothing can be kept
  | 'full' // the last save found no room of its own
  | 'corrupt'
  | 'lost' // the connection went away and did not come back; it is still being tried
  | 'too-new'
  | 'updated-elsewhere';

export interface Status {
  current(): StatusCode;
  /** Calls back at every change, not at once; answers how to stop. */
  subscribe(listener: (code: StatusCode) => void): () => void;
}

/** The status and the only way to change it. */
export class StatusHolder implements Status {
  #code: StatusCode = 'opening';
  readonly #listeners = new Set<(code: StatusCode) => void>();

  current(): StatusCode {
    return this.#code;
  }

  subscribe(listener: (code: StatusCode) => void): () => void {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  }

  set(code: StatusCode): void {
    if (code === this.#code) return;
    this.#code = code;
    for (const listener of [...this.#listeners]) listener(code);
  }
}
