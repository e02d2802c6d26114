import { err, ok, type Result } from '../../core/result.ts';
import type { PhotoFault } from '../../words/en/photos.ts';
import { heifType, readHeif } from './heif.ts';
import { isJpeg, readJpeg, type Picture } from '../../files/jpeg.ts';
import { isPng, readPng } from './png.ts';
import { isWebp, readWebp } from './webp.ts';

export interface Original extends Picture {
  readonly type: 'image/jpeg' | 'image/png' | 'image/webp' | 'image/avif' | 'image/heic';
}

/**
 * Decoded, a pixel takes four bytes: 240 MB here, which phones with 3 GB can give a page for a moment; the full size
 * of a 50-megapixel camera fits, estimate.
 */
export const mostMegapixels = 60;

/** A side longer than this is no camera's; panoramas have up to 16,383 pixels. */
const longestSide = 30_000;

function headOf(bytes: Uint8Array): Original | undefined {
  if (isJpeg(bytes)) return { type: 'image/jpeg', ...readJpeg(bytes) };
  if (isPng(bytes)) return { type: 'image/png', ...readPng(bytes) };
  if (isWebp(bytes)) return { type: 'image/webp', ...readWebp(bytes) };
  const type = heifType(bytes);
  return type && { type, ...readHeif(bytes) };
}

/** Tells by content what may be decoded; nothing else is, whatever its name or type says. */
export function readOriginal(bytes: Uint8Array): Result<Original, PhotoFault> {
  const head = headOf(bytes);
  if (head === undefined) return err({ kind: 'not-an-image' });
  const { type, width, height, complete } = head;
  const megapixels = (width * height) / 1e6;
  if (megapixels > mostMegapixels || Math.max(width, height) > longestSide)
    return err({ kind: 'too-many-pixels', megapixels: Math.ceil(megapixels), most: mostMegapixels });
  if (!complete) return err({ kind: 'truncated' });
  if (width === 0 || height === 0) return err({ kind: type === 'image/heic' ? 'heic' : 'undecodable' });
  return ok(head);
}
