import { byteAt, textAt, u16le, u32le } from '../../files/bytes.ts';
import { readExif } from '../../files/exif.ts';
import type { Picture } from '../../files/jpeg.ts';

export const isWebp = (bytes: Uint8Array): boolean =>
  textAt(bytes, 0, 4) === 'RIFF' && textAt(bytes, 8, 4) === 'WEBP';

/** 24 bits, little end first. */
const u24le = (bytes: Uint8Array, at: number): number => u16le(bytes, at) + byteAt(bytes, at + 2) * 65_536;

/** The size that a chunk of image data or the canvas states (RFC 9649); of several the largest counts. */
function sizeIn(bytes: Uint8Array, name: string, data: number): readonly [width: number, height: number] {
  if (name === 'VP8X') return [u24le(bytes, data + 4) + 1, u24le(bytes, data + 7) + 1];
  if (name === 'VP8 ') return [u16le(bytes, data + 6) & 0x3fff, u16le(bytes, data + 8) & 0x3fff];
  if (name !== 'VP8L') return [0, 0];
  const bits = u32le(bytes, data + 1);
  return [(bits & 0x3fff) + 1, ((bits >>> 14) & 0x3fff) + 1];
}

export function readWebp(bytes: Uint8Array): Picture {
  const complete = u32le(bytes, 4) + 8 <= bytes.length;
  let [width, height] = [0, 0];
  let takenAt: string | undefined;
  for (let at = 12; at + 8 <= bytes.length;) {
    const [name, length] = [textAt(bytes, at, 4), u32le(bytes, at + 4)];
    const size = sizeIn(bytes, name, at + 8);
    width = Math.max(width, size[0]);
    height = Math.max(height, size[1]);
    if (name === 'EXIF') ({ takenAt } = readExif(bytes.subarray(at + 8, at + 8 + length)));
    at += 8 + length + (length % 2);
  }
  return { width, height, complete, ...(takenAt !== undefined && { takenAt }) };
}
