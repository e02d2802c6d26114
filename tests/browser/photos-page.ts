import { shrinkPhoto, type Shrunk } from '../../src/app/photos/shrink-photo.ts';
import { makeKey, type Id } from '../../src/core/keys.ts';
import { browserDeps } from '../../src/storage/browser.ts';
import { openStore } from '../../src/storage/open-store.ts';
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

export type Told = Omit<Shrunk, 'bytes' | 'thumbnail'> & {
  readonly bytes: readonly number[];
  readonly thumbnail: readonly number[];
};

interface Taken {
  /** Milliseconds of the longest task of the page's thread so far, 0 when none was over 50. */
  readonly longest: number;
  readonly ms: number;
}

const pause = (ms: number): Promise<void> => new Promise((go) => setTimeout(go, ms));

const store = openStore(browserDeps());
let file = new Blob();
let longest = 0;

async function takeOne(): Promise<void> {
  const made = await shrinkPhoto(file, 'camera');
  if (!made.ok) throw new Error(made.error.kind);
  const { bytes, thumbnail } = made.value;
  // A name of its own, as if each picture were another.
  const sha256 = [...crypto.getRandomValues(new Uint8Array(32))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');
  const key = makeKey({ kind: 'photo', walk: 'w1' as Id, hash: sha256 });
  const photo = { sha256, type: 'image/jpeg', bytes };
  const small = { sha256, bytes: thumbnail };
  const kept = await store.write([{ key, value: { v: 1 } }], { photos: [photo], thumbnails: [small] });
  if (!kept.ok) throw new Error(kept.error.kind);
}

/** What the browser tests do on this page; answers are plain, so that they cross over. */
const page = {
  /** A photo made of these bytes, or the sentence that says why there is none. */
  shrink: async (bytes: readonly number[], type = ''): Promise<Told | string> => {
    const made = await shrinkPhoto(new Blob([Uint8Array.from(bytes)], { type }), 'gallery');
    if (!made.ok) return photoFaultLine(made.error);
    return { ...made.value, bytes: [...made.value.bytes], thumbnail: [...made.value.thumbnail] };
  },
  /** Watches the page's thread, and makes the file that `take` takes: the size of a camera's, all noise. */
  prepare: async (width: number, height: number): Promise<number> => {
    file = await noisePhoto(width, height);
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) longest = Math.max(longest, duration);
    }).observe({ type: 'longtask' });
    await pause(500);
    longest = 0;
    return file.size;
  },
  /** Takes so many photos one after the other, each as a record with its bytes on disk. */
  take: async (count: number): Promise<Taken> => {
    const start = performance.now();
    for (let at = 0; at < count; at += 1) await takeOne();
    const ms = performance.now() - start;
    await pause(500);
    return { longest, ms };
  },
  heap: (): number =>
    (performance as unknown as { memory: { usedJSHeapSize: number } }).memory.usedJSHeapSize,
  /** Keeps the page's thread busy, to show that it would be seen; answers the longest task then. */
  keepBusy: async (ms: number): Promise<number> => {
    await pause(1);
    for (const end = performance.now() + ms; performance.now() < end;);
    await pause(500);
    return longest;
  },
  /** A picture of one grey in few bytes, as large as asked, is taken or refused; answers the sentence or the size. */
  shrinkFile: async (bytes: readonly number[]): Promise<string> => {
    const made = await shrinkPhoto(new Blob([Uint8Array.from(bytes)]), 'gallery');
    return made.ok ? `${made.value.width} × ${made.value.height}` : photoFaultLine(made.error);
  },
  /** The picked file: made into a photo while it is there, or a moment after it was picked. */
  shrinkPicked: async (): Promise<string> => {
    const picked = document.querySelector('input')?.files?.[0];
    if (picked === undefined) return 'nothing picked';
    const made = await shrinkPhoto(picked, 'gallery');
    return made.ok ? 'made' : photoFaultLine(made.error);
  },
  /** Three at once, the second of which is given up at once; what became of each. */
  cancelSecond: async (bytes: readonly number[]): Promise<readonly string[]> => {
    const stop = new AbortController();
    const files = [undefined, stop.signal, undefined].map((signal) =>
      shrinkPhoto(new Blob([Uint8Array.from(bytes)]), 'gallery', signal),
    );
    stop.abort();
    return (await Promise.all(files)).map((made) => (made.ok ? 'made' : made.error.kind));
  },
};

export type PhotosPage = typeof page;
Object.assign(globalThis, { photosPage: page });
