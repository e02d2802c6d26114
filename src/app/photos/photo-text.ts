import { parsePlace } from '../../core/keys.ts';
import type { Photo, Shown } from '../../core/photo.ts';
import { makeDates } from '../../words/dates.ts';
import { itemName, placeName } from '../../words/en/items.ts';
import { photos as words, scaleWords } from '../../words/en/photos.ts';
import { preferences } from '../data/preferences.ts';

/** What a picture was taken for: item and place. */
export const shownText = ({ place, item }: Shown): string => {
  const where = placeName(parsePlace(place));
  return item === undefined ? where : `${itemName(item)}, ${where}`;
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** All that a picture was taken for. */
export const showsText = ({ shows }: Photo): string =>
  shows.length === 0 ? words.nothingNamed : capital(shows.map(shownText).join('; '));

/** What a picture shows, in words, for whoever does not see it. */
export const photoAlt = ({ shows, scale, note }: Photo): string =>
  words.alt(
    shows.map(shownText).join('; ') || words.nothingNamed,
    scale && scaleWords[scale].label,
    note === undefined || note === '' ? undefined : note,
  );

/** When a picture was taken in. */
export const takenText = ({ at }: Photo): string =>
  at ? makeDates(preferences.value.locale).moment(at) : '';
