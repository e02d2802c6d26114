import { err, ok, type Result } from '../../core/result.ts';
import type { PhotoFault } from '../../words/en/photos.ts';
import { sha256Hex } from '../../seal/hash.ts';
import { drawPicture, within } from '../data/draw-picture.ts';
import { thumbnailQuality, thumbnailSide } from './thumbnail-size.ts';
import { readOriginal, type Original } from './picture.ts';

/** Pixels of the longer side: a crack of 0.5 mm on a part of 700 mm is a pixel and a half wide; estimate. */
const longSide = 2048;
const quality = 0.8;

/** A picture made smaller and upright, without metadata, and what it was made from. */
export interface Made {
  readonly sha256: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly width: number;
  readonly height: number;
  /** A JPEG of at most 320 pixels. */
  readonly thumbnail: Uint8Array<ArrayBuffer>;
  /** The file as it came; its bytes are counted, not kept. */
  readonly original: { readonly sha256: string; readonly bytes: number; readonly type: string };
  /** Local time without a zone, as the camera wrote it. */
  readonly takenAt?: string;
}

/** Runs in a worker: decodes, turns upright, makes smaller, encodes anew, which leaves all metadata behind. */
export async function makePhoto(bytes: Uint8Array<ArrayBuffer>): Promise<Result<Made, PhotoFault>> {
  const head = readOriginal(bytes);
  if (!head.ok) return head;
  const { type, takenAt } = head.value;
  const original = { sha256: await sha256Hex(bytes), bytes: bytes.length, type };
  const bitmap = await decode(bytes, head.value);
  if (bitmap === undefined) return err({ kind: type === 'image/heic' ? 'heic' : 'undecodable' });
  try {
    const picture = await drawPicture(bitmap, longSide, quality);
    if (!picture.ok) return picture;
    const small = await drawPicture(bitmap, thumbnailSide, thumbnailQuality);
    if (!small.ok) return small;
    const sha256 = await sha256Hex(picture.value.bytes);
    const made = { sha256, ...picture.value, thumbnail: small.value.bytes, original };
    return ok({ ...made, ...(takenAt !== undefined && { takenAt }) });
  } finally {
    bitmap.close();
  }
}

/** Upright, and not larger than needed: iOS has no room for a canvas of a whole photo. */
async function decode(bytes: Uint8Array<ArrayBuffer>, original: Original): Promise<ImageBitmap | undefined> {
  const blob = new Blob([bytes], { type: original.type });
  const { width, height } = within(original, longSide);
  const options = { imageOrientation: 'from-image', resizeQuality: 'high' } as const;
  try {
    if (width === original.width) return await createImageBitmap(blob, options);
    const small = await createImageBitmap(blob, { ...options, resizeWidth: width, resizeHeight: height });
    if (small.width === width && small.height === height) return small;
    // Made smaller before it was turned, so that its sides are out of proportion.
    small.close();
    return await createImageBitmap(blob, options);
  } catch {
    return undefined;
  }
}
