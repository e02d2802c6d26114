import type { Page } from './store.ts';

/** Above every key of ours, which are ASCII. */
const beyond = '\uffff';

/** All keys that begin with a prefix, or those that follow a page's last one. */
export function rangeOf({ prefix, after, reverse }: Page): IDBKeyRange {
  if (after === undefined) return IDBKeyRange.bound(prefix, prefix + beyond);
  if (reverse === true) return IDBKeyRange.bound(prefix, after, false, true);
  return IDBKeyRange.bound(after, prefix + beyond, true);
}
