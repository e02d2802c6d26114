import type { RecordKey } from '../core/keys.ts';
import type { Changes } from './store.ts';

type Listener = (keys: readonly RecordKey[]) => void;

/** More keys than this are announced to other tabs as "anything". */
const mostKeys = 500;

/** Tells this tab and the others what has changed. No keys at all means that anything may have changed. */
export class ChangeFeed implements Changes {
  readonly #listeners = new Map<Listener, string>();
  readonly #channel: BroadcastChannel | undefined;

  /** The channel is absent in engines without BroadcastChannel: other tabs then learn of changes on return. */
  constructor(channel: BroadcastChannel | undefined) {
    this.#channel = channel;
    channel?.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
      if (Array.isArray(data)) this.#tell(data as RecordKey[]);
    });
  }

  subscribe(prefix: string, listener: Listener): () => void {
    const own: Listener = (keys) => listener(keys);
    this.#listeners.set(own, prefix);
    return () => void this.#listeners.delete(own);
  }

  /** Called after commit only. */
  announce(keys: readonly RecordKey[]): void {
    if (keys.length === 0) return;
    this.#tell(keys);
    this.#channel?.postMessage(keys.length > mostKeys ? [] : keys);
  }

  anything(): void {
    this.#tell([]);
  }

  close(): void {
    this.#listeners.clear();
    this.#channel?.close();
  }

  #tell(keys: readonly RecordKey[]): void {
    for (const [listener, prefix] of [...this.#listeners]) {
      const matching = keys.filter((key) => key.startsWith(prefix));
      if (keys.length === 0 || matching.length > 0) listener(matching);
    }
  }
}
