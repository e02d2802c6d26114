import { textAt, u32 } from '../../files/bytes.ts';
import type { Picture } from '../../files/jpeg.ts';

/** A box of the ISO base media format (ISO/IEC 14496-12): its name and where its content lies. */
interface Box {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

function* boxes(bytes: Uint8Array, from: number, to: number): Generator<Box> {
  for (let at = from; at + 8 <= to;) {
    const size = u32(bytes, at);
    // 0: to the end; 1: the size follows in 64 bits.
    const long = size === 1 ? u32(bytes, at + 8) * 2 ** 32 + u32(bytes, at + 12) : size;
    const end = size === 0 ? to : at + long;
    const head = size === 1 ? 16 : 8;
    if (end < at + head) return;
    yield { name: textAt(bytes, at + 4, 4), from: at + head, to: end };
    at = end;
  }
}

/** Down a path of boxes; those of the last name. `meta` has four bytes before its content. */
function* within(bytes: Uint8Array, path: readonly string[], from: number, to: number): Generator<Box> {
  const [name, ...rest] = path;
  for (const box of boxes(bytes, from, Math.min(to, bytes.length))) {
    if (box.name !== name) continue;
    if (rest.length === 0) yield box;
    else yield* within(bytes, rest, box.from + (name === 'meta' ? 4 : 0), box.to);
  }
}

const heicBrands = ['heic', 'heix', 'hevc', 'hevx', 'heim', 'heis', 'mif1', 'msf1'];

/** Which of the two the brands name, if any; the first 64 are looked at. */
export function heifType(bytes: Uint8Array): 'image/avif' | 'image/heic' | undefined {
  if (textAt(bytes, 4, 4) !== 'ftyp') return undefined;
  const brands: string[] = [];
  const end = Math.min(u32(bytes, 0), bytes.length, 8 + 64 * 4);
  for (let at = 8; at + 4 <= end; at += 4) brands.push(textAt(bytes, at, 4));
  if (brands.includes('avif') || brands.includes('avis')) return 'image/avif';
  return brands.some((brand) => heicBrands.includes(brand)) ? 'image/heic' : undefined;
}

/**
 * The largest size that a property states: the picture's own, tiles are smaller. Whether all of it is there is left
 * to the decoder.
 */
export function readHeif(bytes: Uint8Array): Picture {
  let [width, height] = [0, 0];
  for (const { from } of within(bytes, ['meta', 'iprp', 'ipco', 'ispe'], 0, bytes.length)) {
    width = Math.max(width, u32(bytes, from + 4));
    height = Math.max(height, u32(bytes, from + 8));
  }
  return { width, height, complete: true };
}
