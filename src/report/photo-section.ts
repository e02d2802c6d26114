import type { ItemState } from '../core/states.ts';
import { parsePlace } from '../core/keys.ts';
import type { Photo } from '../core/photo.ts';
import { placeName } from '../words/en/items.ts';
import { photoScaleWords, report as words } from '../words/en/report.ts';
import { capital } from '../words/outcome-text.ts';
import type { Block } from './blocks.ts';
import { section } from './parts.ts';
import type { ReportInput } from './report-input.ts';

/** The numbers of the pictures that show an item at its place. */
export const picturesOf = (state: ItemState, { photos }: Pick<ReportInput, 'photos'>): string =>
  photos
    .flatMap(({ photo }, at) =>
      photo.shows.some(({ place, item }) => place === state.place && item === state.item.id) ? [at + 1] : [],
    )
    .join(', ');

function whatIn({ shows }: Photo, { format }: ReportInput): string {
  const names = shows.map(({ place, item }) => {
    const where = placeName(parsePlace(place));
    return item === undefined ? where : `${format.item(item)}, ${where}`;
  });
  return [...new Set(names)].join('; ');
}

function aboutIt(
  { scale, at, takenAt, from, position, note }: Photo,
  { dates, format }: ReportInput,
): string {
  const when = at ? dates.moment(at) : takenAt;
  const parts = [
    scale && photoScaleWords[scale],
    when === undefined ? undefined : words.photoTaken(when),
    from === 'gallery' ? words.photoGallery : undefined,
    position && words.photoAt(format.number(position.lat), format.number(position.lon)),
    note,
  ];
  return parts.filter(Boolean).join(', ');
}

/** Every picture with what it shows and when it was taken; its hash ties it to the record. */
export function photoSection(of: ReportInput): readonly Block[] {
  const blocks = of.photos.map(({ sha256, photo }, at): Block => {
    const what = whatIn(photo, of);
    const about = [what === '' ? words.photoNothing : capital(what), aboutIt(photo, of)];
    const caption = words.photoName(at + 1, about.filter(Boolean).join(', '));
    return {
      kind: 'photo',
      sha256,
      alt: what === '' ? words.photoNothing : words.photoOf(what),
      caption: `${caption}. ${words.photoHash(sha256.slice(0, 16))}`,
    };
  });
  return section(words.photos, blocks);
}
