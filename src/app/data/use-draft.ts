import { useEffect, useRef, useState } from 'preact/hooks';
import { store } from './phone.ts';

/**
 * What is half typed, kept on disk at every change and given back when the screen is opened again. Drafts are
 * never scored; they leave with the reading that is made of them.
 */
export function useDraft<T extends object>(key: string, initial: T): readonly [T, (next: T) => void] {
  // While nothing is typed the record speaks, also when another tab changes it meanwhile.
  const [value, setValue] = useState<T>();
  const touched = useRef(false);
  const from = useRef(initial);
  from.current = initial;
  useEffect(() => {
    let current = true;
    void store.drafts.get(key).then((answer) => {
      const kept = answer.ok ? answer.value : undefined;
      if (current && !touched.current && typeof kept === 'object' && kept !== null) {
        setValue({ ...from.current, ...kept });
      }
    });
    return () => {
      current = false;
    };
  }, [key]);
  const change = (next: T): void => {
    touched.current = true;
    setValue(next);
    void store.drafts.put(key, next);
  };
  return [value ?? initial, change];
}

/** Runs when the screen is left: a readable number becomes a reading, a half-typed one stays a draft. */
export function useSaveOnLeave(save: () => void): void {
  const latest = useRef(save);
  latest.current = save;
  useEffect(() => () => latest.current(), []);
}
