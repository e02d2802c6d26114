import { err, ok, type Result } from '../../core/result.ts';
import type { PhotoFault } from '../../words/en/photos.ts';
import { trustedAddress } from '../trusted-address.ts';
import type { Made } from './make-photo.ts';
// eslint-disable-next-line import/default -- the bundler makes this address, the file itself exports nothing
import workerAddress from './shrink-worker.ts?worker&url';

/** A photo ready to be kept; its fields are those of the record. */
export interface Shrunk extends Made {
  readonly from: 'camera' | 'gallery';
}

/** Bytes of one file; the largest camera files have about half. */
const mostBytes = 80e6;
/** Bytes of originals that wait in memory at once. */
const roomForWaiting = 120e6;
/** A slow phone needs about 5 s for 50 megapixels, estimate; after this it is given up. */
const longestMs = 60_000;

let waiting = 0;
let queue: Promise<unknown> = Promise.resolve();

/**
 * Makes a photo out of a file that was just taken or picked: JPEG, upright, at most 2048 pixels on the longer side,
 * without metadata. To be called in the handler of the picker at once: the file may not be readable a moment later.
 * One photo is worked on after the other, each in a worker of its own, whose memory goes with it.
 */
export async function shrinkPhoto(
  file: Blob,
  from: Shrunk['from'],
  signal?: AbortSignal,
): Promise<Result<Shrunk, PhotoFault>> {
  const { size } = file;
  if (size > mostBytes)
    return err({ kind: 'file-too-large', megabytes: Math.ceil(size / 1e6), most: mostBytes / 1e6 });
  const early = waiting + size <= roomForWaiting ? read(file) : undefined;
  waiting += size;
  const turn = queue.then(async () => {
    const bytes = await (early ?? read(file));
    waiting -= size;
    if (signal?.aborted === true) return err({ kind: 'cancelled' } as const);
    return bytes.ok ? inWorker(bytes.value, signal) : bytes;
  });
  queue = turn.catch(() => undefined);
  const made = await turn;
  return made.ok ? ok({ ...made.value, from }) : made;
}

async function read(file: Blob): Promise<Result<ArrayBuffer, PhotoFault>> {
  try {
    return ok(await file.arrayBuffer());
  } catch {
    return err({ kind: 'unreadable' });
  }
}

let address: string | undefined;

function inWorker(bytes: ArrayBuffer, signal: AbortSignal | undefined): Promise<Result<Made, PhotoFault>> {
  address ??= trustedAddress('sagline-photo-worker', workerAddress);
  const worker = new Worker(address, { type: 'module' });
  return new Promise((resolve) => {
    const end = (made: Result<Made, PhotoFault>): void => {
      clearTimeout(timer);
      signal?.removeEventListener('abort', cancel);
      worker.terminate();
      resolve(made);
    };
    const fail = (): void => end(err({ kind: 'failed' }));
    const cancel = (): void => end(err({ kind: 'cancelled' }));
    const timer = setTimeout(fail, longestMs);
    signal?.addEventListener('abort', cancel);
    worker.addEventListener('message', ({ data }: MessageEvent<Result<Made, PhotoFault>>) => end(data));
    worker.addEventListener('messageerror', fail);
    worker.addEventListener('error', fail);
    worker.postMessage(bytes, [bytes]);
  });
}
