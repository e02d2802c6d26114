import type { Place } from '../../core/keys.ts';
import { mostShown, type Shown } from '../../core/photo.ts';
import type { WalkPhoto } from './walk-photos.ts';

const isSame = (one: Shown, other: Shown): boolean => one.place === other.place && one.item === other.item;

/** Ties put together, each once, as many as a record may hold. */
export const united = (shows: readonly Shown[], more: readonly Shown[]): Shown[] =>
  [...shows, ...more.filter((each) => !shows.some((known) => isSame(known, each)))].slice(0, mostShown);

/** A tie put there, or taken away where it stands. */
export const toggled = (shows: readonly Shown[], tie: Shown): Shown[] =>
  shows.some((each) => isSame(each, tie)) ? shows.filter((each) => !isSame(each, tie)) : united(shows, [tie]);

interface Group {
  /** Absent for pictures that are tied to nothing. */
  readonly place?: Place;
  readonly photos: readonly WalkPhoto[];
}

/** Pictures by the places that they show, in the order of these places; one that shows several stands at each. */
export function groupsOf(all: readonly WalkPhoto[], places: readonly Place[]): readonly Group[] {
  const byPlace = new Map<Place, WalkPhoto[]>(places.map((place) => [place, []]));
  for (const each of all)
    for (const place of new Set(each.photo.shows.map((tie) => tie.place))) {
      const there = byPlace.get(place);
      if (there) there.push(each);
      else byPlace.set(place, [each]);
    }
  const loose = all.filter(({ photo }) => photo.shows.length === 0);
  const tied = [...byPlace].map(([place, photos]) => ({ place, photos }));
  return [...tied, { photos: loose }].filter(({ photos }) => photos.length > 0);
}

/** The order in which one goes from picture to picture: that of the groups, each picture once. */
export const inOrder = (groups: readonly Group[]): readonly WalkPhoto[] => [
  ...new Map(groups.flatMap(({ photos }) => photos.map((each) => [each.key, each] as const))).values(),
];
