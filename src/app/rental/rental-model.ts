import { handedOutAt, ledBy, markedIn } from '../../core/hand-out.ts';
import { progressOf } from '../../core/progress.ts';
import { damagesOf } from '../../core/rental-damage.ts';
import { shortParts, type ShortPart } from '../../core/rental-short.ts';
import { missingShots, shotsOf, type Shot } from '../../core/shots.ts';
import type { PlacedReading } from '../../core/states.ts';
import type { Step } from '../../core/steps.ts';
import type { Answer, Judged } from '../../words/purpose-answers.ts';
import { rentalAnswers, type RentalFacts } from '../../words/rental-answers.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { photosOf } from '../photos/walk-photos.ts';
import { HandOut } from './hand-out.tsx';
import { handedOutIn, type HandedOut } from './handed-out.ts';
import { Links } from './links.tsx';
import { lookNote } from './look-note.tsx';
import { contractAt, handOutKeyOf } from './lookup.ts';
import { Sequence } from './sequence.tsx';
import { noteAt } from './step-note.tsx';

/** What a hand-out or a return has beside other walks, and the parts of its screens. */
export interface Rental extends RentalFacts {
  readonly answers: (of: Judged) => readonly Answer[];
  readonly shots: readonly Shot[];
  /** The ids of those that were taken. */
  readonly taken: ReadonlySet<string>;
  /** Photos of the sequence that were neither taken nor left out. */
  readonly missing: readonly Shot[];
  /** Of a return; absent too where the walk that it names is not on this phone. */
  readonly handOut?: HandedOut;
  readonly handedOutAt: (step: Step) => PlacedReading | undefined;
  readonly HandOut: typeof HandOut;
  readonly Links: typeof Links;
  readonly Sequence: typeof Sequence;
  readonly lookNote: typeof lookNote;
  readonly noteAt: typeof noteAt;
}

/** A walk with its sequence of photos and, on a return, led by its hand-out. */
export async function modelOf(model: WalkModel): Promise<WalkModel> {
  const { walk, outcomes } = model;
  const { readings } = model.assembled.input;
  const isReturn = walk.purpose === 'rental-return';
  const handOut = isReturn
    ? await handedOutIn(await handOutKeyOf(model.key, walk), { key: model.key, machine: walk.machine })
    : undefined;
  const marked = handOut?.marked ?? [];
  const steps = ledBy(model.steps, marked);
  const shots = shotsOf(walk, steps);
  const photos = await photosOf(model.key);
  const taken = photos.ok ? photos.value.map(({ photo }) => photo) : [];
  const shotsTaken = new Set(taken.flatMap(({ shot }) => shot ?? []));
  const facts = {
    missing: missingShots(shots, taken, walk),
    unmarked: walk.purpose === 'hand-out' ? markedIn(readings).filter(isUnmarked).length : 0,
    ...(handOut && { handOut }),
    damages: damagesOf(model.scored.outcomes, handOut?.scored.outcomes),
    shortHire: isReturn ? [] : await shortHireOf(model),
  };
  const rental: Rental = {
    ...facts,
    shots,
    taken: shotsTaken,
    answers: (of) => rentalAnswers(of, facts),
    handedOutAt: (step) => handedOutAt(step, marked),
    HandOut,
    Links,
    Sequence,
    lookNote,
    noteAt,
  };
  return {
    ...model,
    rental,
    steps,
    progress: new Map(steps.map((step) => [step.id, progressOf(step, outcomes, readings)])),
    last: handOut?.input.readings ?? model.last,
  };
}

/** Parts of which the hire that a hand-out begins is too short to tell usual wear, by the contract that it names. */
async function shortHireOf({ key, walk, assembled, scored }: WalkModel): Promise<readonly ShortPart[]> {
  const contract = await contractAt(walk.contract);
  return contract ? shortParts(contract, { key, input: assembled.input, scored, photos: [] }) : [];
}

const isUnmarked = ({ reading }: PlacedReading): boolean => (reading.mark ?? '').trim() === '';
