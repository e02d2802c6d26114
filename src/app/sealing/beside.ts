import type { RecordKey } from '../../core/keys.ts';
import { ok } from '../../core/result.ts';
import type { ClearRecord } from '../../core/seal-payload.ts';
import { gatherRecords } from '../../files/gather.ts';
import type { Beside } from '../../seal/check-seal.ts';
import { readSeal } from '../../seal/seals.ts';
import type { Stored } from '../../storage/store.ts';
import { loadBuiltIn } from '../data/built-in.ts';
import { store } from '../data/phone.ts';

/** A picture's bytes as this phone has them. */
export async function photoHere(sha256: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const found = await store.photos.get(sha256);
  return found.ok && found.value ? new Uint8Array(found.value.bytes) : undefined;
}

/** The records of the people whom these seals name; a removal is one of them. */
async function peopleOf(texts: readonly string[]): Promise<Stored<readonly ClearRecord[]>> {
  const records: ClearRecord[] = [];
  for (const text of texts) {
    const read = await readSeal(text);
    for (const { key } of read.ok ? read.value.payload.people : []) {
      const found = await store.read(key);
      if (!found.ok) return found;
      records.push(...found.value);
    }
  }
  return ok(records);
}

/** What this phone holds beside the seals of a walk. Pictures, which take their time, only where `photos` says so. */
export async function besideOnPhone(
  walk: RecordKey<'walk'>,
  texts: readonly string[],
  photos: boolean,
): Promise<Stored<Beside>> {
  const gathered = await gatherRecords([walk], store, await loadBuiltIn());
  if (!gathered.ok) return gathered;
  const people = await peopleOf(texts);
  if (!people.ok) return people;
  const known = new Set(gathered.value.map(({ key }) => key));
  const records = [...gathered.value, ...people.value.filter(({ key }) => !known.has(key))];
  return ok({ records, ...(photos && { photo: photoHere }) });
}
