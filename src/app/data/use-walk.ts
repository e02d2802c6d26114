import { useEffect, useState } from 'preact/hooks';
import { parseKey, type RecordKey } from '../../core/keys.ts';
import { store } from './phone.ts';
import { loadWalk, type WalkError, type WalkModel } from './walk-model.ts';

export type WalkState =
  | { readonly kind: 'loading' }
  | { readonly kind: 'ready'; readonly model: WalkModel }
  | { readonly kind: 'failed'; readonly error: WalkError };

const watched = ['machine', 'limits', 'rules', 'work'];

/** A walk, scored anew whenever one of its records changes, also by another tab. */
export function useWalk(key: RecordKey<'walk'>): WalkState {
  const [state, setState] = useState<{ key: string; state: WalkState }>();
  useEffect(() => {
    let current = true;
    let asked = 0;
    const load = async (): Promise<void> => {
      asked += 1;
      const mine = asked;
      const loaded = await loadWalk(key);
      if (!current || mine !== asked) return;
      const next: WalkState = loaded.ok
        ? { kind: 'ready', model: loaded.value }
        : { kind: 'failed', error: loaded.error };
      setState({ key, state: next });
    };
    const stop = store.changes.subscribe('', (keys) => {
      const id = parseKey(key);
      const walkId = id?.kind === 'walk' ? id.id : '';
      const matters = keys.some(
        (each) => each.includes(walkId) || watched.includes(each.split('/')[0] ?? ''),
      );
      if (matters) void load();
    });
    void load();
    return () => {
      current = false;
      stop();
    };
  }, [key]);
  return state?.key === key ? state.state : { kind: 'loading' };
}
