import { err, ok, type Result } from '../../core/result.ts';
import type { PhotoFault } from '../../words/en/photos.ts';
import { bareJpeg, readJpeg } from '../../files/jpeg.ts';
import { readOriginal, type Original } from './picture.ts';

/** Pixels of the longer side: a crack of 0.5 mm on a part of 700 mm is a pixel and a half wide; estimate. */
const longSide = 2048;
const quality = 0.8;
/** Of lists, on screens with three pixels to the point. */
const thumbnailSide = 320;
const thumbnailQuality = 0.7;

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
  const original = { sha256: await sha256Of(bytes), bytes: bytes.length, type };
  const bitmap = await decode(bytes, head.value);
  if (bitmap === undefined) return err({ kind: type === 'image/heic' ? 'heic' : 'undecodable' });
  try {
    const picture = await drawn(bitmap, longSide, quality);
    if (!picture.ok) return picture;
    const small = await drawn(bitmap, thumbnailSide, thumbnailQuality);
    if (!small.ok) return small;
    const sha256 = await sha256Of(picture.value.bytes);
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

interface Size {
  readonly width: number;
  readonly height: number;
}

/** The size of a picture whose longer side is to have so many pixels at most. */
function within({ width, height }: Size, most: number): Size {
  const share = Math.min(1, most / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * share)), height: Math.max(1, Math.round(height * share)) };
}

interface Drawn extends Size {
  readonly bytes: Uint8Array<ArrayBuffer>;
}

async function drawn(bitmap: ImageBitmap, most: number, encoded: number): Promise<Result<Drawn, PhotoFault>> {
  const { width, height } = within(bitmap, most);
  const canvas = new OffscreenCanvas(width, height);
  try {
    const isDrawn = draw(canvas, bitmap);
    if (!isDrawn) return err({ kind: 'blank' });
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: encoded });
    const bytes = bareJpeg(new Uint8Array(await blob.arrayBuffer()));
    if (bytes === undefined) return err({ kind: 'failed' });
    const { width: wide, height: high } = readJpeg(bytes);
    return wide === width && high === height ? ok({ bytes, width, height }) : err({ kind: 'failed' });
  } finally {
    // Some engines keep the memory of a canvas until it is collected, unless it has no pixels.
    canvas.width = canvas.height = 0;
  }
}

/** False when nothing is to be seen: where memory is short, a canvas may stay empty without a word. */
function draw(canvas: OffscreenCanvas, bitmap: ImageBitmap): boolean {
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) return false;
  const { width, height } = canvas;
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, width, height);
  const spots = [0.1, 0.3, 0.5, 0.7, 0.9];
  const isSeen = spots.some((x) =>
    spots.some((y) => {
      const [, , , opacity] = context.getImageData(Math.floor(x * width), Math.floor(y * height), 1, 1).data;
      return opacity !== 0;
    }),
  );
  // What is transparent would come out black.
  context.globalCompositeOperation = 'destination-over';
  context.fillStyle = 'white';
  context.fillRect(0, 0, width, height);
  return isSeen;
}

async function sha256Of(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
