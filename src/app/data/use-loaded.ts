import { useEffect, useState } from 'preact/hooks';

/** Data of this build once it is there; what cannot be had is left out, as help is no part of the walk. */
export function useLoaded<T>(load: () => Promise<T>): T | undefined {
  const [value, setValue] = useState<T>();
  useEffect(() => void load().then(setValue, () => undefined), [load]);
  return value;
}
