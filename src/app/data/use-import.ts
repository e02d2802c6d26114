import { useRef, useState } from 'preact/hooks';
import { importFile, type Imported } from '../actions/import.ts';

interface Import {
  /** How much of the file is through, from 0 to 1; undefined while nothing is taken in. */
  readonly share?: number;
  readonly result?: Imported;
  readonly take: (file: File) => Promise<Imported>;
  readonly cancel: () => void;
}

/** Takes in one file after the other, with its progress and what came of the last one. */
export function useImport(): Import {
  const [share, setShare] = useState<number>();
  const [result, setResult] = useState<Imported>();
  const stop = useRef<AbortController | undefined>(undefined);
  const take = async (file: File): Promise<Imported> => {
    stop.current = new AbortController();
    setResult(undefined);
    setShare(0);
    const done = await taken(file, stop.current.signal, setShare);
    setShare(undefined);
    setResult(done);
    return done;
  };
  return {
    ...(share !== undefined && { share }),
    ...(result !== undefined && { result }),
    take,
    cancel: () => stop.current?.abort(),
  };
}

/** So much is copied at once, since later the browser may no longer give it; more would fill the memory. */
const copiedBytes = 32_000_000;

async function taken(file: File, stop: AbortSignal, told: (share: number) => void): Promise<Imported> {
  const onProgress = (done: number, of: number): void => told(of > 0 ? done / of : 0);
  try {
    const copy = file.size > copiedBytes ? file : new Blob([await file.arrayBuffer()]);
    return await importFile(copy, { stop, onProgress });
  } catch {
    return { kind: 'refused', error: { kind: 'unreadable' } };
  }
}
