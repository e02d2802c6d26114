import { canonicalJson } from '../../src/core/canonical-json.ts';
import type { Result } from '../../src/core/result.ts';
import type { StatusCode } from '../../src/storage/status.ts';
import type { Store } from '../../src/storage/store.ts';

/** One database of its own, wherever the contract runs. */
export interface Lab {
  readonly factory: IDBFactory;
  readonly name: string;
  /** Opens one more store on it, as another tab would; all are closed after the case. */
  open(factory?: IDBFactory): Store;
}

/** One rule that storage keeps in every engine; `run` rejects when it does not. */
export interface Case {
  readonly title: string;
  run(lab: Lab): Promise<void>;
}

const text = (value: unknown): string => (value === undefined ? 'undefined' : canonicalJson(plain(value)));

/** What JSON lacks, made visible. */
function plain(value: unknown): unknown {
  if (value instanceof Uint8Array) return { bytes: [...value] };
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, plain(part)]));
}

export function same(actual: unknown, expected: unknown, what: string): void {
  if (text(actual) !== text(expected)) throw new Error(`${what}: ${text(actual)} is not ${text(expected)}`);
}

/** The value of an answer that has to be good. */
export function good<T>(result: Result<T, unknown>): T {
  if (!result.ok) throw new Error(`refused: ${text(result.error)}`);
  return result.value;
}

/** The error of an answer that has to be one. */
export function refused<E>(result: Result<unknown, E>): E {
  if (result.ok) throw new Error(`not refused: ${text(result.value)}`);
  return result.error;
}

/** Resolves once the store is in this state. */
export function reaches(store: Store, code: StatusCode): Promise<void> {
  return new Promise((resolve) => {
    const look = (now: StatusCode): void => {
      if (now === code) resolve();
    };
    store.status.subscribe(look);
    look(store.status.current());
  });
}

export const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** The answer of a request, and only that: for databases that another build makes. */
export function answered<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('no reason'));
  });
}

export function completed(tx: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    tx.oncomplete = () => resolve();
    tx.onabort = () => reject(tx.error ?? new Error('aborted'));
  });
}
