import { canonicalJson } from '../core/canonical-json.ts';
import type { RecordKey } from '../core/keys.ts';
import type { SignerRole } from '../core/person.ts';
import type { Result } from '../core/result.ts';
import { changesSince, sealedPhotos, type ClearRecord, type SealChange } from '../core/seal-payload.ts';
import { sha256Hex } from './hash.ts';
import { readSeal, type ReadSeal, type SealFault } from './seals.ts';

/** What is beside a seal to check it by. */
export interface Beside {
  /** Every version of every record. */
  readonly records: readonly ClearRecord[];
  /** The bytes of a picture; undefined where they are not there. */
  readonly photo?: (sha256: string) => Promise<Uint8Array<ArrayBuffer> | undefined>;
}

/** Somebody whom a seal names; `not-here`: without their record, as after it was erased. */
export interface CheckedPerson {
  readonly key: RecordKey;
  readonly role: SignerRole;
  readonly state: 'as-sealed' | 'not-here' | 'other';
  /** Their record where it is the one that was sealed; another may lie beside it under the same key. */
  readonly value?: unknown;
}

/** What came of checking one seal whose signature holds. */
export interface CheckedSeal extends ReadSeal {
  readonly changes: readonly SealChange[];
  readonly photos: readonly { readonly sha256: string; readonly state: 'missing' | 'altered' }[];
  readonly people: readonly CheckedPerson[];
}

async function checkedPhotos(
  seal: ReadSeal,
  { photo }: Beside,
): Promise<readonly CheckedSeal['photos'][number][]> {
  const faults: CheckedSeal['photos'][number][] = [];
  if (!photo) return faults;
  for (const sha256 of sealedPhotos(seal.payload)) {
    const bytes = await photo(sha256);
    if (!bytes) faults.push({ sha256, state: 'missing' });
    else if ((await sha256Hex(bytes)) !== sha256) faults.push({ sha256, state: 'altered' });
  }
  return faults;
}

async function checkedPeople({ payload }: ReadSeal, { records }: Beside): Promise<readonly CheckedPerson[]> {
  return Promise.all(
    payload.people.map(async ({ key, role, hash }): Promise<CheckedPerson> => {
      const values = records.flatMap((each) => (each.key === key && each.value ? [each.value] : []));
      if (values.length === 0) return { key, role, state: 'not-here' };
      const hashes = await Promise.all(values.map((value) => sha256Hex(canonicalJson(value))));
      const at = hashes.indexOf(hash);
      return at < 0 ? { key, role, state: 'other' } : { key, role, state: 'as-sealed', value: values[at] };
    }),
  );
}

/** Checks a seal against the records and pictures beside it: the signature, each field, each picture, each person. */
export async function checkSeal(jws: string, beside: Beside): Promise<Result<CheckedSeal, SealFault>> {
  const seal = await readSeal(jws);
  if (!seal.ok) return seal;
  const [photos, people] = [await checkedPhotos(seal.value, beside), await checkedPeople(seal.value, beside)];
  const changes = changesSince(seal.value.payload, beside.records);
  return { ok: true, value: { ...seal.value, changes, photos, people } };
}

/** Seals that name the same seal as the one before them: somebody sealed beside somebody else. */
export function forksOf(seals: readonly ReadSeal[]): readonly (readonly ReadSeal[])[] {
  const after = new Map<string, ReadSeal[]>();
  // A seal that is there twice is one seal.
  for (const seal of new Map(seals.map((each) => [each.hash, each])).values()) {
    const { machine, previous = '' } = seal.payload;
    const at = `${machine} ${previous}`;
    after.set(at, [...(after.get(at) ?? []), seal]);
  }
  return [...after.values()].filter((each) => each.length > 1);
}
