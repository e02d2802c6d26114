import { isDemo, parseKey, prefixOf } from '../../core/keys.ts';
import { ok } from '../../core/result.ts';
import { common } from '../../words/en/common.ts';
import { sealed as words } from '../../words/en/sealing.ts';
import { walk as walkWords } from '../../words/en/walk.ts';
import { reopenWalk } from '../actions/walk.ts';
import { useLive, valueOf } from '../data/live.ts';
import { walkPath } from '../data/paths.ts';
import { store } from '../data/phone.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Correction } from './late-readings.tsx';

/** Whether a walk is sealed; undefined until that is known. */
export function useIsSealed(key: string): boolean | undefined {
  const parts = parseKey(key);
  const prefix = parts?.kind === 'walk' ? prefixOf('seal', { owner: parts.id, demo: isDemo(key) }) : key;
  return valueOf(
    useLive(`sealed ${prefix}`, [prefix], async () => {
      const rows = await store.list({ prefix, limit: 1 });
      return rows.ok ? ok(rows.value.length > 0) : rows;
    }),
  );
}

/** The main action of a finished verdict: seal it; once that is done, to the first screen. */
export function VerdictMain({ model }: { model: WalkModel }) {
  const isSealed = useIsSealed(model.key);
  return isSealed === false && !isDemo(model.key) ? (
    <ButtonLink look="main" href={walkPath(model.key, 'seal')}>
      {words.seal}
    </ButtonLink>
  ) : (
    <ButtonLink look="main" href="/">
      {common.toHome}
    </ButtonLink>
  );
}

/** A finished walk can be gone on with until it is sealed; from then on a new walk corrects it. */
export function VerdictAgain({ model }: { model: WalkModel }) {
  const isSealed = useIsSealed(model.key);
  if (isSealed === undefined) return null;
  if (isSealed) return <Correction model={model} />;
  return (
    <Button look="plain" onTap={() => void reopenWalk(model.key)}>
      {walkWords.reopen}
    </Button>
  );
}
