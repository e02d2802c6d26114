import { store } from '../data/phone.ts';

const preference = 'inspector';

/** Who sealed last on this phone; nobody the first time. */
export async function inspectorName(): Promise<string> {
  const stored = await store.preferences.get(preference);
  return stored.ok && typeof stored.value === 'string' ? stored.value : '';
}

/** Keeps the name, so that it stands there the next time. */
export const keepInspector = (name: string): Promise<unknown> => store.preferences.put(preference, name);
