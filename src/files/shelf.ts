import type { Shelf } from '../core/assemble.ts';
import type { Id, RecordKey } from '../core/keys.ts';
import { compareBytewise, type DeviceId } from '../core/stamp.ts';
import { displayed, mergeVersions, nextVersion, sameValue, type Version } from '../core/versions.ts';
import type { Unstamped } from './envelope.ts';

/** Stands for whoever wrote a record by hand; its stamps never leave the shelf. */
const hand = { device: '0'.repeat(16) as DeviceId, counter: 0, by: 'hand' as Id };

function group(versions: readonly Version[]): Map<RecordKey, readonly Version[]> {
  const groups = new Map<RecordKey, Version[]>();
  for (const version of versions) {
    const group = groups.get(version.key);
    if (group) group.push(version);
    else groups.set(version.key, [version]);
  }
  return new Map([...groups].map(([key, all]) => [key, mergeVersions(all)]));
}

/** What is written by hand becomes the value, unless it says what is there already. */
function withHand(set: readonly Version[], { key, value }: Unstamped): readonly Version[] {
  const made = nextVersion(set, { key, value }, hand);
  const shown = displayed(set);
  return shown && sameValue(shown, made) ? set : mergeVersions(set, [made]);
}

/** The first place in a sorted list whose key is not below. */
function lowest(keys: readonly string[], key: string): number {
  let [from, to] = [0, keys.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (compareBytewise(keys[middle] ?? '', key) < 0) from = middle + 1;
    else to = middle;
  }
  return from;
}

/** The records of a file, merged, to be scored where they are. */
export function shelfOf(content: {
  readonly versions: readonly Version[];
  readonly unstamped: readonly Unstamped[];
}): Shelf & { readonly keys: readonly RecordKey[] } {
  const sets = group(content.versions);
  for (const record of content.unstamped) sets.set(record.key, withHand(sets.get(record.key) ?? [], record));
  const keys = [...sets.keys()].sort(compareBytewise);
  return {
    keys,
    get: (key) => sets.get(key as RecordKey) ?? [],
    under: (prefix) => {
      const found: (readonly [RecordKey, readonly Version[]])[] = [];
      for (let i = lowest(keys, prefix); keys[i]?.startsWith(prefix); i += 1) {
        const key = keys[i];
        if (key !== undefined) found.push([key, sets.get(key) ?? []]);
      }
      return found;
    },
  };
}
