import { useEffect, useRef, useState } from 'preact/hooks';
import { prefixOf } from '../../core/keys.ts';
import type { Outlook } from '../../core/outlook.ts';
import type { AheadScreens } from '../ahead-screens.ts';
import { store } from './phone.ts';
import type { WalkModel } from './walk-model.ts';

/** Hours left and the plan of a walk, with the screens that show them, which are loaded when first wanted. */
export interface Ahead {
  readonly outlook: Outlook;
  readonly screens: AheadScreens;
}

const ofMachine = ['hold', 'machine', 'work'] as const;
const changing = [
  ...(['price', 'rate', ...ofMachine] as const).map((kind) => prefixOf(kind)),
  ...ofMachine.map((kind) => prefixOf(kind, { demo: true })),
];

/**
 * Worked out after what is on the screen has been drawn, and again when a price, a rate or a hold changes; the plan
 * that is shown is then the earlier one. Undefined until the first time, `failed` where storage does not answer.
 */
export function useAhead(model: WalkModel): Ahead | 'failed' | undefined {
  const [ahead, setAhead] = useState<{ readonly key: string; readonly value: Ahead | 'failed' }>();
  const shown = useRef<Outlook['plan'] | undefined>(undefined);
  useEffect(() => {
    let current = true;
    // Only a price or a hold that changes leaves the plan on the screen standing; another reading makes it anew.
    shown.current = undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const work = async (): Promise<void> => {
      const { aheadScreens } = await import('../ahead-screens.ts');
      const plan = shown.current;
      const loaded = await aheadScreens.loadOutlook(
        model,
        plan && 'chosen' in plan ? plan.chosen : undefined,
      );
      if (!current) return;
      if (loaded.ok) shown.current = loaded.value.plan;
      const value = loaded.ok ? { outlook: loaded.value, screens: aheadScreens } : ('failed' as const);
      setAhead({ key: model.key, value });
    };
    const soon = (): void => {
      clearTimeout(timer);
      timer = setTimeout(() => void work().catch(() => setAhead({ key: model.key, value: 'failed' })), 0);
    };
    const stops = changing.map((prefix) => store.changes.subscribe(prefix, soon));
    soon();
    return () => {
      current = false;
      clearTimeout(timer);
      for (const stop of stops) stop();
    };
  }, [model]);
  return ahead?.key === model.key ? ahead.value : undefined;
}
