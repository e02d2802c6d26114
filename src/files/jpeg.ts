import { byteAt, textAt, u16 } from './bytes.ts';
import { readExif } from './exif.ts';

/** What the head of a picture says, before anything is decoded. */
export interface Picture {
  /** Pixels, upright; 0 where none is stated. */
  readonly width: number;
  readonly height: number;
  /** False when it breaks off before its end. */
  readonly complete: boolean;
  /** When the camera says that it was taken: local time without a zone. */
  readonly takenAt?: string;
}

/** A segment of a JPEG with its marker; of a scan also the coded data that follow. */
interface Segment {
  /** The second byte of the marker, the first is 0xFF (ITU-T T.81, table B.1). */
  readonly marker: number;
  readonly from: number;
  readonly to: number;
}

const startOfScan = 0xda;
const endOfImage = 0xd9;

export const isJpeg = (bytes: Uint8Array): boolean => u16(bytes, 0) === 0xffd8 && byteAt(bytes, 2) === 0xff;

/** All segments up to the end of the image; ends early, without that end, where the bytes break off. */
function* segments(bytes: Uint8Array): Generator<Segment> {
  let at = 2;
  while (at < bytes.length) {
    if (byteAt(bytes, at) !== 0xff) return;
    const marker = byteAt(bytes, at + 1);
    if (marker === 0xff) {
      at += 1; // filling
      continue;
    }
    const to = marker === endOfImage ? at + 2 : at + 2 + u16(bytes, at + 2);
    if (to > bytes.length || to < at + 4 - (marker === endOfImage ? 2 : 0)) return;
    const end = marker === startOfScan ? endOfScan(bytes, to) : to;
    yield { marker, from: at, to: end };
    if (marker === endOfImage) return;
    at = end;
  }
}

/** Where the coded data end: at a marker that is neither a stuffed zero nor a restart. */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = bytes.indexOf(0xff, from); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    const next = byteAt(bytes, at + 1);
    if (next !== 0 && next !== 0xff && (next < 0xd0 || next > 0xd7)) return at;
  }
  return bytes.length;
}

/** Start of frame, of any coding; not the tables that lie between them. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);

/** Size and date as the segments say; `complete` is false where the image breaks off. */
export function readJpeg(bytes: Uint8Array): Picture {
  let [width, height, complete, exif] = [0, 0, false, {} as ReturnType<typeof readExif>];
  for (const { marker, from, to } of segments(bytes)) {
    // Of several frames the largest counts, so that none is decoded unseen.
    if (isFrame(marker)) {
      height = Math.max(height, u16(bytes, from + 5));
      width = Math.max(width, u16(bytes, from + 7));
    }
    if (marker === 0xe1 && textAt(bytes, from + 4, 6) === 'Exif\0\0')
      exif = { ...readExif(bytes.subarray(from + 10, to)), ...exif };
    complete ||= marker === endOfImage;
  }
  const { orientation = 1, takenAt } = exif;
  const upright = orientation < 5 ? { width, height } : { width: height, height: width };
  return { ...upright, complete, ...(takenAt !== undefined && { takenAt }) };
}

/** What a picture needs to be shown: no application data but JFIF's and the colour transform's, no comment. */
const isNeeded = ({ marker }: Segment): boolean =>
  marker === 0xe0 || marker === 0xee || !((marker >= 0xe0 && marker <= 0xef) || marker === 0xfe);

/**
 * The picture without metadata: an encoder may add some of its own (Apple's writes Exif and Photoshop segments).
 * Undefined when it is no whole JPEG.
 */
export function bareJpeg(bytes: Uint8Array): Uint8Array<ArrayBuffer> | undefined {
  const all = isJpeg(bytes) ? [...segments(bytes)] : [];
  if (all.at(-1)?.marker !== endOfImage) return undefined;
  const kept = all.filter(isNeeded);
  const bare = new Uint8Array(kept.reduce((sum, { from, to }) => sum + to - from, 2));
  bare.set([0xff, 0xd8]);
  let at = 2;
  for (const { from, to } of kept) {
    bare.set(bytes.subarray(from, to), at);
    at += to - from;
  }
  return bare;
}
