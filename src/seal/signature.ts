import { hexOf } from './hash.ts';

/** The order of the curve P-256 (FIPS 186-4, appendix D.1.2.3). */
const order = 0xffffffff00000000ffffffffffffffffbce6faada7179e84f3b9cac2fc632551n;

/** `r` and `s`, 32 bytes each (RFC 7518, section 3.4). */
export const signatureBytes = 64;
const half = signatureBytes / 2;

const sOf = (signature: Uint8Array): bigint => BigInt(`0x${hexOf(signature.subarray(half))}`);

/**
 * Whether this is the one way to write a signature that counts. With `s` its negative is valid as well, and anybody can
 * reckon it: a seal could get a second text, and with it a second hash, that nobody signed. Only the smaller one counts.
 */
export const isSmaller = (signature: Uint8Array): boolean => sOf(signature) <= order / 2n;

/** The signature with the smaller `s`, whichever of the two it came with. */
export function smaller(signature: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
  if (isSmaller(signature)) return signature;
  const digits = (order - sOf(signature)).toString(16).padStart(signatureBytes, '0');
  const s = (digits.match(/../g) ?? []).map((pair) => Number.parseInt(pair, 16));
  return Uint8Array.of(...signature.subarray(0, half), ...s);
}
