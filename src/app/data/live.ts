import { useEffect, useRef, useState } from 'preact/hooks';
import type { Stored } from '../../storage/store.ts';
import { store } from './phone.ts';

/** A query's last answer; `undefined` until the first one has come. */
export type Live<T> = { readonly value: T } | { readonly error: string } | undefined;

/**
 * Reads from storage and reads again when a record changes whose key begins with one of the prefixes.
 * @param query reads only; a changed `id` asks anew and drops the old answer
 */
export function useLive<T>(
  id: string,
  prefixes: readonly string[],
  query: () => Promise<Stored<T>>,
): Live<T> {
  const [answer, setAnswer] = useState<{ id: string; live: Live<T> }>();
  // The id names the question: a new closure for the same one is no reason to ask again.
  const question = useRef({ query, prefixes });
  question.current = { query, prefixes };
  useEffect(() => {
    let current = true;
    let asked = 0;
    const ask = async (): Promise<void> => {
      asked += 1;
      const mine = asked;
      const result = await question.current.query();
      if (!current || mine !== asked) return;
      setAnswer({ id, live: result.ok ? { value: result.value } : { error: result.error.kind } });
    };
    const stops = question.current.prefixes.map((prefix) =>
      store.changes.subscribe(prefix, () => void ask()),
    );
    void ask();
    return () => {
      current = false;
      for (const stop of stops) stop();
    };
  }, [id]);
  return answer?.id === id ? answer.live : undefined;
}

/** The value of a live answer, or undefined. */
export const valueOf = <T>(live: Live<T>): T | undefined =>
  live && 'value' in live ? live.value : undefined;
