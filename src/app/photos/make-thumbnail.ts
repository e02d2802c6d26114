import { drawPicture } from '../data/draw-picture.ts';
import { thumbnailQuality, thumbnailSide } from './thumbnail-size.ts';

/** A small JPEG of a picture that came from another phone; undefined where it cannot be opened. */
export async function makeThumbnail(bytes: Uint8Array): Promise<Uint8Array<ArrayBuffer> | undefined> {
  try {
    const whole = await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' }));
    const small = await drawPicture(whole, thumbnailSide, thumbnailQuality);
    whole.close();
    return small.ok ? small.value.bytes : undefined;
  } catch {
    return undefined;
  }
}
