import { useLocation } from 'preact-iso';
import { parsePlace } from '../../core/keys.ts';
import { nextStep } from '../../core/progress.ts';
import type { PlacedReading } from '../../core/states.ts';
import type { Step } from '../../core/steps.ts';
import type { Saved } from '../actions/saved.ts';
import { walkPath } from './paths.ts';
import { tell } from './notice.ts';
import { receipt } from './receipt.ts';
import { notSavedLine } from './saving.ts';
import type { WalkModel } from './walk-model.ts';

/** Where Next leads: the next step that is not answered, else the verdict. */
export function pathAfter(model: WalkModel, step: Step): string {
  const isLeft = ({ id }: Step): boolean => {
    const state = model.progress.get(id)?.state;
    return id !== step.id && (state === 'todo' || state === 'partly');
  };
  const next = nextStep(model.steps, step.id, isLeft);
  return walkPath(model.key, next?.id ?? 'verdict');
}

/** The step before this one in walking order, or the walk's overview. */
export function pathBefore(model: WalkModel, step: Step): string {
  const at = model.steps.findIndex(({ id }) => id === step.id);
  return walkPath(model.key, model.steps[at - 1]?.id ?? 'map');
}

export interface Flow {
  /** Goes on without saving anything. */
  readonly goOn: () => void;
  /** Saves, notes what was saved for the receipt, and goes on; stays where it is if saving failed. */
  readonly saveAnd: (
    save: () => Promise<Saved>,
    made: readonly Omit<PlacedReading, 'reading'>[],
    stay?: boolean,
  ) => Promise<boolean>;
}

export function useFlow(model: WalkModel, step: Step): Flow {
  const { route } = useLocation();
  const goOn = (): void => route(pathAfter(model, step));
  return {
    goOn,
    saveAnd: async (save, made, stay = false) => {
      const names = new Set(made.map(({ place, item, n }) => `${place}/${item}/${n}`));
      const before = model.assembled.input.readings.filter(({ place, item, n }) =>
        names.has(`${place}/${item}/${n}`),
      );
      const saved = await save();
      if (!saved.ok) {
        tell(notSavedLine(saved.error));
        return false;
      }
      receipt.value = { walk: model.key, step, made, before };
      if (!stay) goOn();
      return true;
    },
  };
}

/** The first free number for another reading of an item at a place. */
export function freeNumber(model: WalkModel, step: Step, itemId: string): number {
  const used = model.assembled.input.readings.filter(
    ({ place, item }) => place === step.place && item === itemId,
  );
  return Math.max(0, ...used.map(({ n }) => n)) + 1;
}

/** True when nothing of a step is left to read, even if some of it could not be reached. */
export function isAnswered(model: WalkModel, step: Step): boolean {
  const state = model.progress.get(step.id)?.state;
  return state === 'done' || state === 'open';
}

/** What was read at a look's parts and taken back since. */
export function takenBackAt(model: WalkModel, step: Step): readonly Omit<PlacedReading, 'reading'>[] {
  return (model.assembled.input.takenBack ?? []).filter(({ place, item }) => {
    const { side, component } = parsePlace(place);
    return side === step.side && component === step.component && step.items.some(({ id }) => id === item);
  });
}
