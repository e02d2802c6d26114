import { canonicalJson } from '../core/canonical-json.ts';
import { assert } from '../core/result.ts';
import { sha256Hex } from './hash.ts';

/** The members of a public key that make its fingerprint (RFC 7638, section 3.2). */
const members: Readonly<Record<string, readonly string[]>> = {
  EC: ['crv', 'kty', 'x', 'y'],
  RSA: ['e', 'kty', 'n'],
};

/** The thumbprint of a public key (RFC 7638) as 64 hexadecimal digits; a kind of key without one is a bug. */
export async function fingerprintOf(jwk: Readonly<Record<string, unknown>>): Promise<string> {
  const names = members[String(jwk['kty'])];
  assert(names !== undefined, 'a key with a thumbprint');
  return sha256Hex(canonicalJson(Object.fromEntries(names.map((name) => [name, jwk[name]]))));
}

const shownDigits = 32;

/**
 * A fingerprint as people compare it: its first 128 bits, which nobody can meet by trying, in eight groups of four.
 */
export const fingerprintText = (hex: string): string =>
  (hex.slice(0, shownDigits).match(/.{1,4}/g) ?? []).join(' ');
