import { store } from '../data/phone.ts';

/** Somebody whose key a person of this phone has marked as known. */
export interface KnownSigner {
  readonly fingerprint: string;
  readonly name: string;
}

const preference = 'known-signers';
/** More than any yard knows; the list is one row of the database. */
const mostKnown = 500;

const isSigner = (each: unknown): each is KnownSigner =>
  typeof each === 'object' &&
  each !== null &&
  'fingerprint' in each &&
  'name' in each &&
  typeof each.fingerprint === 'string' &&
  typeof each.name === 'string';

/** The signers known on this phone, by the time at which they were marked. */
export async function knownSigners(): Promise<readonly KnownSigner[]> {
  const stored = await store.preferences.get(preference);
  return stored.ok && Array.isArray(stored.value) ? stored.value.filter(isSigner) : [];
}

/** Marks a signer as known, under one name only. */
export async function rememberSigner(signer: KnownSigner): Promise<void> {
  const others = (await knownSigners()).filter(({ fingerprint }) => fingerprint !== signer.fingerprint);
  await store.preferences.put(preference, [...others, signer].slice(-mostKnown));
}

/** From now on the signer is unknown again. */
export async function forgetSigner(fingerprint: string): Promise<void> {
  const others = (await knownSigners()).filter((each) => each.fingerprint !== fingerprint);
  await store.preferences.put(preference, others);
}
