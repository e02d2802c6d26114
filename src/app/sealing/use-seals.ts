import { ok } from '../../core/result.ts';
import { forksOf } from '../../seal/check-seal.ts';
import type { Stored } from '../../storage/store.ts';
import { useLive } from '../data/live.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { besideOnPhone } from './beside.ts';
import { lateIn, viewSeal, type Later, type SealView } from '../../files/seal-view.ts';
import { keptSealsOf, sealsOfMachine } from './walk-seals.ts';

/** The seals of a walk as they stand on this phone, the oldest first. */
export interface WalkSeals {
  readonly all: readonly SealView[];
  /** What came to the walk since, and is part of none of them. */
  readonly late: readonly Later[];
  /** One of them names the same seal before it as another seal of the machine. */
  readonly fork: boolean;
}

const none: WalkSeals = { all: [], late: [], fork: false };

const timeOf = ({ says }: SealView): string => says?.sealedAt.utc ?? '';

async function isForked(machine: string, all: readonly SealView[]): Promise<Stored<boolean>> {
  const seals = await sealsOfMachine(machine);
  if (!seals.ok) return seals;
  const mine = new Set(all.map(({ hash }) => hash));
  return ok(forksOf(seals.value).some((fork) => fork.some(({ hash }) => mine.has(hash))));
}

/** The seals of a walk, each checked against what is on this phone. */
export async function sealsFor(
  { key, walk }: WalkModel,
  depth: 'records' | 'all',
): Promise<Stored<WalkSeals>> {
  const kept = await keptSealsOf(key);
  if (!kept.ok) return kept;
  if (kept.value.length === 0) return ok(none);
  const beside = await besideOnPhone(key, depth === 'all');
  if (!beside.ok) return beside;
  const all: SealView[] = [];
  for (const seal of kept.value) all.push(await viewSeal(seal.jws, beside.value, seal.key));
  all.sort((a, b) => (timeOf(a) < timeOf(b) ? -1 : 1));
  const fork = depth === 'all' ? await isForked(walk.machine, all) : ok(false);
  return fork.ok ? ok({ all, late: lateIn(all), fork: fork.value }) : fork;
}

const watched = ['seal/', 'contract/', 'reading/', 'photo/', 'walk/', 'person/', 'machine/', 'demo/'];

/**
 * Checks the seals of a walk, again whenever one of its records changes; with `all` their pictures too, and whether
 * they fork. `failed` where storage does not answer.
 */
export function useSeals(model: WalkModel, depth: 'records' | 'all'): WalkSeals | 'failed' | undefined {
  const live = useLive(`seals ${depth} ${model.key}`, watched, () => sealsFor(model, depth));
  return live && ('value' in live ? live.value : 'failed');
}
