import { textAt, u32 } from '../../files/bytes.ts';
import { readExif } from '../../files/exif.ts';
import type { Picture } from '../../files/jpeg.ts';

export const isPng = (bytes: Uint8Array): boolean =>
  u32(bytes, 0) === 0x89504e47 && u32(bytes, 4) === 0x0d0a1a0a;

/** Walks the chunks of a PNG (ISO/IEC 15948): length, name, data, checksum. */
export function readPng(bytes: Uint8Array): Picture {
  let picture: Picture = { width: 0, height: 0, complete: false };
  for (let at = 8; at + 12 <= bytes.length; at += 12 + u32(bytes, at)) {
    const name = textAt(bytes, at + 4, 4);
    if (at === 8 && name !== 'IHDR') break;
    if (at === 8) picture = { ...picture, width: u32(bytes, 16), height: u32(bytes, 20) };
    if (name === 'eXIf')
      picture = { ...picture, ...takenIn(bytes.subarray(at + 8, at + 8 + u32(bytes, at))) };
    if (name === 'IEND') return { ...picture, complete: true };
  }
  return picture;
}

/** The date alone: whether a browser turns such a picture upright differs. */
function takenIn(tiff: Uint8Array): { takenAt?: string } {
  const { takenAt } = readExif(tiff);
  return takenAt === undefined ? {} : { takenAt };
}
