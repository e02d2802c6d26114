import { isKind, type RecordKey } from '../../core/keys.ts';
import { demo } from '../../words/en/settings.ts';
import { loadDemo } from '../data/built-in.ts';
import { tell } from '../data/notice.ts';
import { store } from '../data/phone.ts';
import { notSavedLine } from '../data/saving.ts';
import { put, save, type Saved } from './saved.ts';

/** Puts the demo machines with their walks on this phone, apart from real data; answers the first machine. */
export async function addDemo(): Promise<RecordKey<'machine'> | undefined> {
  const records = await loadDemo();
  const saved = await save(records.map(({ key, value }) => put(key, value)));
  if (!saved.ok) {
    tell(notSavedLine(saved.error));
    return undefined;
  }
  const [first] = records.flatMap(({ key }) => (isKind(key, 'machine') ? [key] : []));
  return first;
}

/** Takes everything of the demo away for good. */
export async function removeDemo(): Promise<Saved> {
  const wiped = await store.wipeDemo();
  tell(wiped.ok ? demo.removed : notSavedLine(wiped.error));
  return wiped;
}
