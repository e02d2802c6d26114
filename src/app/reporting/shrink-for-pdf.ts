import { drawPicture } from '../data/draw-picture.ts';

/** A JPEG, and its size in pixels. */
interface Picture {
  readonly bytes: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** In bytes; one picture of a report takes no more. */
const most = 80_000;

/** From the best that is worth printing at half a page's width down to what still shows a part; pixels, quality. */
const tries = [
  [1280, 0.8],
  [1280, 0.65],
  [1024, 0.65],
  [800, 0.6],
  [640, 0.55],
  [480, 0.5],
  [320, 0.4],
  [160, 0.4],
] as const;

/** The picture as a JPEG of at most 80 kB for a PDF; undefined where this phone cannot decode it. */
export async function shrinkForPdf(bytes: Uint8Array): Promise<Picture | undefined> {
  const picture = await decode(bytes);
  if (picture === undefined) return undefined;
  try {
    for (const [longest, quality] of tries) {
      const made = await drawPicture(picture, longest, quality);
      if (made.ok && made.value.bytes.length <= most) return made.value;
    }
    return undefined;
  } finally {
    picture.close();
  }
}

async function decode(bytes: Uint8Array): Promise<ImageBitmap | undefined> {
  try {
    return await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' }));
  } catch {
    return undefined;
  }
}
