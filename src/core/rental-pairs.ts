import { makePlace, parsePlace, type Place, type PlaceSide } from './keys.ts';
import { photoScales, type Photo } from './photo.ts';
import type { RentalInput, RentalWalk } from './rental-input.ts';
import type { OwnerFault } from './rental-damage.ts';

/** Faults of the owner's that may have harmed items of a side; those of the whole machine count for both. */
export const harming = (
  faults: readonly OwnerFault[],
  side: PlaceSide,
  items: readonly string[],
): readonly OwnerFault[] =>
  faults.filter(
    (fault) =>
      (fault.side === side || fault.side === 'whole' || side === 'whole') &&
      items.some((item) => fault.harms.includes(item)),
  );

/** How well a picture shows a place and item: the item there, the place, its row of parts; 0 where it does not. */
function fit({ shows }: Photo, place: Place, item: string): number {
  const { side, component } = parsePlace(place);
  const row = makePlace({ side, component });
  const fits = shows.map((each) => {
    if (each.place === place) return each.item === item ? 3 : each.item === undefined ? 2 : 1;
    return each.place === row ? 1 : 0;
  });
  return Math.max(0, ...fits);
}

const scaleRank = ({ scale }: Photo): number => (scale === undefined ? -1 : photoScales.indexOf(scale));

/**
 * The picture of a walk that shows a place and item best: of equal ones the one that stands at the same place of the
 * sequence as its counterpart, then the nearest, then the latest.
 */
function bestOf(
  walk: RentalWalk | undefined,
  place: Place,
  item: string,
  shot?: string,
): RentalWalk['photos'][number] | undefined {
  const isSame = ({ photo }: RentalWalk['photos'][number]): number =>
    Number(shot !== undefined && photo.shot === shot);
  const fitting = (walk?.photos ?? [])
    .map((each) => ({ each, fits: fit(each.photo, place, item) }))
    .filter(({ fits }) => fits > 0);
  fitting.sort(
    (a, b) =>
      a.fits - b.fits || isSame(a.each) - isSame(b.each) || scaleRank(a.each.photo) - scaleRank(b.each.photo),
  );
  return fitting.at(-1)?.each;
}

/** The pictures of both walks that show a place and item; of a sequence, those of the same mark or corner. */
export function pairOf(
  { handOut, returned }: RentalInput,
  place: Place,
  item: string,
): { readonly before: string | undefined; readonly after: string | undefined } {
  const after = bestOf(returned, place, item);
  const before = bestOf(handOut, place, item, after?.photo.shot);
  return { before: before?.sha256, after: after?.sha256 };
}
