import { err, ok, type Result } from '../../core/result.ts';
import { bareJpeg, readJpeg } from '../../files/jpeg.ts';
import type { PhotoFault } from '../../words/en/photos.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** The size of a picture whose longer side is to have so many pixels at most. */
export function within({ width, height }: Size, most: number): Size {
  const share = Math.min(1, most / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * share)), height: Math.max(1, Math.round(height * share)) };
}

interface Drawn extends Size {
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** A picture drawn anew as a JPEG without metadata: at most so many pixels on the longer side, at this quality. */
export async function drawPicture(
  bitmap: ImageBitmap,
  most: number,
  encoded: number,
): Promise<Result<Drawn, PhotoFault>> {
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
