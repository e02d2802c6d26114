import type { Person } from '../../core/person.ts';
import type { SealView } from '../../files/seal-view.ts';
import type { ReportSeal } from '../../report/report-input.ts';

/** A seal as a report tells of it. */
export const sealOf = ({ hash, fingerprint, state, says }: SealView): ReportSeal => ({
  hash,
  state,
  fingerprint,
  sealedAt: says?.sealedAt,
});

/** Who signed any of the seals, each once, as far as their record is the one that was sealed. */
export function peopleOf(seals: readonly SealView[]): readonly Person[] {
  const people = new Map<string, Person>();
  for (const { people: named } of seals)
    for (const { key, state, person } of named) if (person && state === 'as-sealed') people.set(key, person);
  return [...people.values()];
}
