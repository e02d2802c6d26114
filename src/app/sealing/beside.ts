import type { RecordKey } from '../../core/keys.ts';
import { ok } from '../../core/result.ts';
import { gatherRecords } from '../../files/gather.ts';
import type { Beside } from '../../seal/check-seal.ts';
import type { Stored } from '../../storage/store.ts';
import { loadBuiltIn } from '../data/built-in.ts';
import { store } from '../data/phone.ts';

/** A picture's bytes as this phone has them. */
async function photoHere(sha256: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const found = await store.photos.get(sha256);
  return found.ok && found.value ? new Uint8Array(found.value.bytes) : undefined;
}

/** What this phone holds beside the seals of a walk. Pictures, which take their time, only where `photos` says so. */
export async function besideOnPhone(walk: RecordKey<'walk'>, photos: boolean): Promise<Stored<Beside>> {
  const gathered = await gatherRecords([walk], store, await loadBuiltIn());
  return gathered.ok ? ok({ records: gathered.value, ...(photos && { photo: photoHere }) }) : gathered;
}
