import { textAt, u16, u16le, u32, u32le } from './bytes.ts';

/** What is read of the metadata of an original: the rest of it is never looked at. */
export interface Exif {
  /** 1 to 8; 5 to 8 swap the sides. */
  readonly orientation?: number;
  /** Local time without a zone, as `2026-05-01T09:30:00`. */
  readonly takenAt?: string;
}

// Tags of Exif 2.3 (CIPA DC-008): 0x0112 Orientation, 0x8769 Exif IFD, 0x9003 DateTimeOriginal.
const orientationTag = 0x0112;
const exifTag = 0x8769;
const takenTag = 0x9003;

/** Entries of one directory; more are not looked through. */
const mostEntries = 500;

/** Reads a TIFF structure as in an Exif segment; whatever is wrong in it is as if it were not there. */
export function readExif(tiff: Uint8Array): Exif {
  const order = textAt(tiff, 0, 2);
  if (order !== 'II' && order !== 'MM') return {};
  const [short, long] = order === 'II' ? [u16le, u32le] : [u16, u32];
  const entry = (directory: number, tag: number): number | undefined => {
    const count = Math.min(short(tiff, directory), mostEntries);
    for (let at = directory + 2; at < directory + 2 + count * 12; at += 12)
      if (short(tiff, at) === tag) return at;
    return undefined;
  };
  const first = long(tiff, 4);
  const turned = entry(first, orientationTag);
  const orientation = turned === undefined ? 0 : short(tiff, turned + 8);
  const pointer = entry(first, exifTag);
  const taken = pointer === undefined ? undefined : entry(long(tiff, pointer + 8), takenTag);
  const takenAt = taken === undefined ? undefined : localTime(textAt(tiff, long(tiff, taken + 8), 19));
  return {
    ...(orientation >= 1 && orientation <= 8 && { orientation }),
    ...(takenAt !== undefined && { takenAt }),
  };
}

const pattern =
  /^((?!0000)\d{4}):(0[1-9]|1[0-2]):(0[1-9]|[12]\d|3[01]) ([01]\d|2[0-3]):([0-5]\d):([0-5]\d|60)$/;

/** `2026:05:01 09:30:00` as ISO text; blanks or zeros, as of a camera without a clock, are no time. */
function localTime(text: string): string | undefined {
  const [, year, month, day, hour, minute, second] = pattern.exec(text) ?? [];
  return year && `${year}-${month}-${day}T${hour}:${minute}:${second}`;
}
