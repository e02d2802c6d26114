import { inboxCache, inboxNameHeader } from '../../protocol/inbox.ts';

/** A file that waits to be taken in. */
export interface Waiting {
  readonly id: string;
  readonly name: string;
  readonly open: () => Promise<File>;
  /** Once it was taken in or left out. */
  readonly drop: () => Promise<unknown>;
}

function decoded(name: string): string {
  try {
    return decodeURI(name);
  } catch {
    return name;
  }
}

async function waiting(cache: Cache, request: Request): Promise<Waiting[]> {
  const answer = await cache.match(request);
  if (!answer) return [];
  const name = decoded(answer.headers.get(inboxNameHeader) ?? '');
  const open = async (): Promise<File> => {
    const again = await cache.match(request);
    return new File(again ? [await again.blob()] : [], name);
  };
  return [{ id: request.url, name, open, drop: () => cache.delete(request) }];
}

/** The files that were shared with the app, oldest first. */
export async function sharedFiles(): Promise<readonly Waiting[]> {
  const cache = await caches.open(inboxCache);
  const all = await Promise.all((await cache.keys()).map((request) => waiting(cache, request)));
  return all.flat();
}

interface Launch {
  readonly files: readonly FileSystemFileHandle[];
}

/** Where an installed app can open files, the ones it was opened with (File Handling API). */
export function onOpenedWith(told: (files: readonly Waiting[]) => void): void {
  if (!('launchQueue' in window)) return;
  const queue = window.launchQueue as { setConsumer(consumer: (launch: Launch) => void): void };
  queue.setConsumer(({ files }) =>
    told(
      files.map((handle, at) => ({
        id: `${at} ${handle.name}`,
        name: handle.name,
        open: () => handle.getFile(),
        drop: async () => undefined,
      })),
    ),
  );
}
