import { heldAgainst, sequence as words } from '../../words/en/rental-walks.ts';
import { machinePath, walkPath } from '../data/paths.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { ButtonLink } from '../parts/button.tsx';

/** The contract of a walk's hire, with the way back to the walk. */
export const contractPath = ({ key, walk }: WalkModel, step = 'verdict'): string =>
  `${machinePath(walk.machine, 'contract')}?${new URLSearchParams({
    from: walkPath(key, step),
    ...(walk.contract !== undefined && { contract: walk.contract }),
  })}`;

/** From a rental walk to its photos in order, and to what it is held against. */
export function Links({ model }: { model: WalkModel }) {
  const { rental, walk, key } = model;
  if (!rental) return null;
  const { shots, missing, handOut } = rental;
  return (
    <>
      <ButtonLink href={walkPath(key, 'sequence')}>
        {words.link(shots.length - missing.length, shots.length)}
      </ButtonLink>
      {walk.purpose === 'rental-return' && (
        <ButtonLink href={walkPath(key, 'hand-out')}>
          {handOut ? heldAgainst.link(handOut.day) : heldAgainst.linkNone}
        </ButtonLink>
      )}
      <ButtonLink href={contractPath(model)}>{heldAgainst.contract}</ButtonLink>
    </>
  );
}
