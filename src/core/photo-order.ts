import type { Place } from './keys.ts';
import { photoScales, type Photo, type PhotoScale } from './photo.ts';

/** What a picture is looked for by: a place and, where there is one question there, its items. */
export interface ShownAt {
  readonly place: Place;
  readonly items: readonly string[];
}

/** Whether a picture was taken for this place, and for one of these items where it was taken for an item. */
export const showsAt = ({ shows }: Photo, { place, items }: ShownAt): boolean =>
  shows.some((each) => each.place === place && (each.item === undefined || items.includes(each.item)));

/** How near the next picture of damage is best taken: the first of wide, mid and close that is not there yet. */
export const nextScale = (photos: readonly Photo[]): PhotoScale | undefined =>
  photoScales.find((scale) => photos.every((photo) => photo.scale !== scale));
