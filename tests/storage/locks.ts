import type { Locks } from '../../src/storage/presence.ts';

/** Web Locks as one origin has them, for Node: shared ones only, granted at once. */
export function locksOf(): Locks {
  const held: LockInfo[] = [];
  const request = async (
    name: string,
    options: LockOptions,
    work: () => Promise<unknown>,
  ): Promise<unknown> => {
    if (options.mode !== 'shared') throw new Error('only shared locks here');
    const lock: LockInfo = { name, mode: 'shared' };
    held.push(lock);
    const value = await work();
    held.splice(held.indexOf(lock), 1);
    return value;
  };
  return { request, query: () => Promise.resolve({ held: [...held], pending: [] }) } as unknown as Locks;
}
