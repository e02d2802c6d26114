import { shrinkPhoto, type Shrunk } from '../../src/app/photos/shrink-photo.ts';
import { photoFaultLine } from '../../src/words/en/photos.ts';

/** A picture of noise and a sky, as large as asked, that no encoder makes small; drawn as a camera's JPEG. */
async function noisePhoto(width: number, height: number): Promise<Blob> {
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('no canvas');
  const tile = new ImageData(256, 256);
  for (let at = 0; at < tile.data.length; at += 65_536)
    crypto.getRandomValues(tile.data.subarray(at, at + 65_536));
  for (let at = 3; at < tile.data.length; at += 4) tile.data[at] = 255;
  const small = new OffscreenCanvas(256, 256);
  small.getContext('2d')?.putImageData(tile, 0, 0);
  for (let x = 0; x < width; x += 512)
    for (let y = 0; y < height; y += 512) context.drawImage(small, x, y, 512, 512);
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 });
  canvas.width = canvas.height = 0;
  return blob;
}

type Told = Omit<Shrunk, 'bytes' | 'thumbnail'> & {
  readonly bytes: readonly number[];
  readonly thumbnail: readonly number[];
};

let long = 0;
let observed = false;

/** What the browser tests do on this page; answers are plain, so that they cross over. */
const page = {
  /** A photo made of these bytes, or the sentence that says why there is none. */
  shrink: async (bytes: readonly number[], type = ''): Promise<Told | string> => {
    const made = await shrinkPhoto(new Blob([Uint8Array.from(bytes)], { type }), 'gallery');
    if (!made.ok) return photoFaultLine(made.error);
    return { ...made.value, bytes: [...made.value.bytes], thumbnail: [...made.value.thumbnail] };
  },
  /** Takes so many photos of noise in one go; the longest task and the bytes of the heap after each. */
  takeMany: async (count: number, width: number, height: number) => {
    if (!observed)
      new PerformanceObserver((list) => {
        for (const { duration } of list.getEntries()) long = Math.max(long, duration);
      }).observe({ type: 'longtask' });
    observed = true;
    const blob = await noisePhoto(width, height);
    await new Promise((resolve) => setTimeout(resolve, 500));
    long = 0;
    const start = performance.now();
    const heaps: number[] = [];
    let bytes = 0;
    for (let at = 0; at < count; at += 1) {
      const made = await shrinkPhoto(new Blob([blob], { type: 'image/jpeg' }), 'camera');
      if (!made.ok) throw new Error(made.error.kind);
      bytes += made.value.bytes.length;
      heaps.push((performance as unknown as { memory: { usedJSHeapSize: number } }).memory.usedJSHeapSize);
    }
    await new Promise((resolve) => setTimeout(resolve, 500));
    return { long, heaps, ms: performance.now() - start, bytes, original: blob.size };
  },
};

export type PhotosPage = typeof page;
Object.assign(globalThis, { photosPage: page });
