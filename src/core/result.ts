/** What a function that may fail by expectation answers; neither side is ever thrown. */
export type Result<T, E> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: E };

/** The good answer. */
export function ok(): { readonly ok: true; readonly value: undefined };
export function ok<T>(value: T): { readonly ok: true; readonly value: T };
export function ok<T>(value?: T): { readonly ok: true; readonly value: T | undefined } {
  return { ok: true, value };
}

/** The expected failure; `error` is a value that the caller can switch on. */
export function err<E>(error: E): { readonly ok: false; readonly error: E } {
  return { ok: false, error };
}

/** Throws when `condition` does not hold: for bugs only, never for bad input. */
export function assert(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(`assertion failed: ${message}`);
}

/** Closes a switch over a union: does not compile while a case is missing. */
export function unreachable(value: never): never {
  throw new Error(`unreachable: ${JSON.stringify(value)}`);
}
