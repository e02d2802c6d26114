import { callRank, type Call } from './calls.ts';
import { numbersOf } from './groups.ts';
import { isNumbered } from './items.ts';
import { makePlace } from './keys.ts';
import type { ItemOutcome } from './score.ts';
import { stateKey, type PlacedReading } from './states.ts';
import type { Step } from './steps.ts';

/** How far a step is: nothing read, some of it, all of it, or all with something that could not be seen. */
export type StepState = 'todo' | 'partly' | 'done' | 'open';

export interface Progress {
  readonly state: StepState;
  readonly call: Call;
}

export type OutcomeMap = ReadonlyMap<string, ItemOutcome>;

export const byState = (outcomes: readonly ItemOutcome[]): OutcomeMap =>
  new Map(outcomes.map((outcome) => [stateKey(outcome.state.place, outcome.state.item.id), outcome]));

/** The outcomes that a step's readings lead to. */
export function outcomesOfStep(step: Step, outcomes: OutcomeMap): readonly ItemOutcome[] {
  const numbers = isNumbered(step.component) ? step.numbers : numbersOf(step.component, 1);
  return numbers.flatMap((number) => {
    const place = makePlace({
      side: step.side,
      component: step.component,
      ...(number !== undefined && { number }),
    });
    return step.items.flatMap(({ id }) => outcomes.get(stateKey(place, id)) ?? []);
  });
}

/** The readings of one item and spot that a measuring step makes; several are repeats. */
export function readingsAtSpot(step: Step, readings: readonly PlacedReading[]): readonly PlacedReading[] {
  const ids = new Set(step.items.map(({ id }) => id));
  return readings.filter(
    ({ place, item, n, reading }) =>
      place === step.place &&
      ids.has(item) &&
      (reading.spot ?? n) === step.spot &&
      reading.what.kind !== 'pass',
  );
}

const isAnswered = ({ state, open }: ItemOutcome): boolean =>
  state.known || open.some(({ kind }) => kind !== 'not-read' && kind !== 'taken-back');

function stateOfStep(
  step: Step,
  mine: readonly ItemOutcome[],
  readings: readonly PlacedReading[],
): StepState {
  const unseen = mine.some(({ open }) => open.some(({ kind }) => kind === 'not-seen'));
  if (step.kind === 'measure') {
    const here = readingsAtSpot(step, readings);
    if (here.length === 0) return unseen ? 'open' : 'todo';
    return here.every(({ reading }) => reading.what.kind === 'unseen') ? 'open' : 'done';
  }
  const byEye = readings.some(({ place, item }) => place === step.place && item === 'sag-by-eye');
  if (step.kind === 'sag' && byEye) return 'done';
  const answered = mine.filter(isAnswered).length;
  if (answered === 0) return 'todo';
  if (answered < mine.length) return 'partly';
  return unseen ? 'open' : 'done';
}

/** How far a step is and the worst call of what it has read. */
export function progressOf(step: Step, outcomes: OutcomeMap, readings: readonly PlacedReading[]): Progress {
  const mine = outcomesOfStep(step, outcomes);
  const call = mine.reduce<Call>(
    (worst, { atLeast }) => (callRank(atLeast) > callRank(worst) ? atLeast : worst),
    'run',
  );
  return { state: stateOfStep(step, mine, readings), call };
}

/** The next step that is not answered: after this one, else from the start; undefined when none is left. */
export function nextStep(
  steps: readonly Step[],
  after: string | undefined,
  isLeft: (step: Step) => boolean,
): Step | undefined {
  const at = steps.findIndex(({ id }) => id === after);
  return steps.slice(at + 1).find(isLeft) ?? steps.find((step) => step.id !== after && isLeft(step));
}
