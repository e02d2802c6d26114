import type { ReadSeal } from '../../seal/seals.ts';

/**
 * The seal to be named as the one before the next: of those that no other names, the newest by its own clock. A clock
 * that was put back must not make a chain look like a fork. Undefined where there is none.
 */
export function lastSeal(seals: readonly ReadSeal[]): ReadSeal | undefined {
  const named = new Set(seals.map(({ payload }) => payload.previous));
  const timeOf = ({ payload }: ReadSeal): string => payload.sealedAt.utc;
  return seals
    .filter(({ hash }) => !named.has(hash))
    .sort((a, b) => (timeOf(a) < timeOf(b) ? -1 : 1))
    .at(-1);
}
