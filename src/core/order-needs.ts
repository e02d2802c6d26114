import type { JobKind } from './job-kinds.ts';
import type { Job } from './jobs.ts';
import type { PartFact } from './part-facts.ts';
import { traitsOfPart, type PartKind } from './part-kinds.ts';

/** A kind of part that a job takes. */
export interface Need {
  readonly kind: PartKind;
  readonly goesWith?: true;
  /** How many were found, where the walk counted them. */
  readonly found?: number | undefined;
}

/** What goes with a part that is renewed is common practice, no source. */
const along = (kind: PartKind): Need => ({ kind, goesWith: true });

/** The parts that a job takes, whatever asks for it; others go by what was found. */
const byJob: Readonly<Partial<Record<JobKind, readonly Need[]>>> = {
  'renew-track': [{ kind: 'rubber-track' }],
  'renew-chain': [{ kind: 'chain' }, along('shoe-bolts')],
  'renew-shoes': [{ kind: 'shoes' }, along('shoe-bolts')],
  'renew-pads': [{ kind: 'pads' }],
  'renew-sprocket': [{ kind: 'sprocket' }, along('sprocket-bolts')],
  'renew-idler': [{ kind: 'idler' }],
  'renew-bottom-roller': [{ kind: 'bottom-roller' }, along('roller-bolts')],
  'renew-carrier-roller': [{ kind: 'carrier-roller' }],
  'renew-slide-plate': [{ kind: 'slide-plate' }],
  'renew-spring': [{ kind: 'recoil-spring' }],
  'mend-motor': [{ kind: 'motor-seals' }],
  'mend-suspension': [{ kind: 'suspension-arm' }],
  // A wet turn takes new seals, a greased or dry one uses the old ones again (conequip.com; Carter Machinery).
  'turn-bushings': [{ kind: 'joint-seals' }],
};

/** The part that a finding asks for where its job does not say. */
const byItem: Readonly<Record<string, PartKind>> = {
  'links-cracked': 'chain-link',
  'bolt-holes': 'chain-link',
  'master-joint': 'master-joint',
  shoes: 'shoe',
  pads: 'pad',
  'shoe-bolts': 'shoe-bolts',
  'pad-bolts': 'pad-bolts',
  'roller-bolts': 'roller-bolts',
  'sprocket-bolts': 'sprocket-bolts',
  'motor-bolts': 'motor-bolts',
  'idler-play': 'idler-guides',
  'adjuster-leak': 'adjuster-seals',
  guards: 'guard',
};

function allNeeds(job: Job): readonly Need[] {
  const always = byJob[job.kind];
  if (always) return always;
  return job.outcomes.flatMap(({ state, atLeast }): readonly Need[] => {
    const isValve = state.item.id === 'adjuster-leak' && state.finding === 'valve-damaged';
    const known = isValve ? 'grease-valve' : byItem[state.item.id];
    const kind = known ?? (atLeast === 'replace' ? 'other' : undefined);
    return kind ? [{ kind, found: state.count ?? (state.finding === 'one' ? 1 : undefined) }] : [];
  });
}

/** The parts that a job takes; several findings that ask for the same part are one need. */
export function needsOf(job: Job): readonly Need[] {
  const needs = allNeeds(job);
  const kinds = [...new Set(needs.map(({ kind }) => kind))];
  return kinds.flatMap((kind) => {
    const [first, ...others] = needs.filter((need) => need.kind === kind);
    return first ? [{ ...first, found: sumOf([first, ...others].map(({ found }) => found)) }] : [];
  });
}

const sumOf = (counts: readonly (number | undefined)[]): number | undefined =>
  counts.reduce((sum, each) => (sum === undefined || each === undefined ? undefined : sum + each), 0);

/** A number that is known for certain enough to multiply with. */
const countIn = (facts: readonly PartFact[], name: PartFact['name']): number | undefined => {
  const found = facts.find((fact) => fact.name === name);
  const isSure = found !== undefined && !found.doubts.includes('counts-differ');
  return isSure && typeof found.value === 'number' ? found.value : undefined;
};

const times = (one: number | undefined, other: number | undefined): number | undefined =>
  one === undefined || other === undefined ? undefined : one * other;

/** What a set of bolts is for: those of the whole chain, or of each roller that is changed. */
function boltsOf(need: Need, numbers: readonly number[], facts: readonly PartFact[]): number | undefined {
  if (need.goesWith !== true) return need.found;
  if (need.kind === 'shoe-bolts') return times(countIn(facts, 'links'), countIn(facts, 'shoe-holes'));
  return times(Math.max(1, numbers.length), countIn(facts, 'bolts'));
}

/** How many of a part a need comes to; undefined where somebody has to count. */
export function countOf(
  need: Need,
  numbers: readonly number[],
  facts: readonly PartFact[],
): number | undefined {
  switch (traitsOfPart(need.kind).counted) {
    case 'one':
      return 1;
    case 'places':
      return Math.max(1, numbers.length);
    case 'links':
      return countIn(facts, 'links');
    case 'found':
      return need.found;
    case 'bolts':
      return boltsOf(need, numbers, facts);
  }
}
