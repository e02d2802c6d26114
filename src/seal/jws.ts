import * as z from 'zod/mini';
import { canonicalJson } from '../core/canonical-json.ts';
import { err, ok, type Result } from '../core/result.ts';
import { fromBase64url, toBase64url } from './base64url.ts';
import { keyAlgorithm, signAlgorithm, type DeviceKey } from './device-key.ts';
import { isSmaller, signatureBytes, smaller } from './signature.ts';

/** 32 bytes in the one text that they have, so that a key has one fingerprint. */
const coordinate = z.string().check(
  z.regex(/^[\w-]{43}$/),
  z.refine((text) => fromBase64url(text) !== undefined),
);

/** A public key on P-256 (RFC 7518, section 6.2), with nothing private and nothing besides. */
export const publicKeySchema = z.strictObject({
  kty: z.literal('EC'),
  crv: z.literal('P-256'),
  x: coordinate,
  y: coordinate,
});
export type PublicKey = z.infer<typeof publicKeySchema>;

export const sealType = 'sagline-seal+jws';

/** What stands before the payload: one way to sign and the key itself. Anything else, `crit` too, is refused. */
const headerSchema = z.strictObject({
  alg: z.literal('ES256'),
  jwk: publicKeySchema,
  typ: z.literal(sealType),
});

/** Why a text is no signed text: `malformed` before the signature was tried, `bad-signature` after. */
export type JwsFault = { readonly kind: 'malformed' | 'bad-signature' };

/** A text whose signature holds, and the key that made it. */
export interface Signed {
  readonly payload: string;
  readonly jwk: PublicKey;
}

const utf8 = new TextEncoder();

/** The public half as it stands in a header. */
export async function publicKeyOf({ publicKey }: DeviceKey): Promise<PublicKey> {
  const { kty, crv, x, y } = await crypto.subtle.exportKey('jwk', publicKey);
  return publicKeySchema.parse({ kty, crv, x, y });
}

/** Signs a text as a compact JWS with attached payload (RFC 7515); `r` and `s` stand side by side, 32 bytes each. */
export async function signJws(payload: string, key: DeviceKey): Promise<string> {
  const header = canonicalJson({ alg: 'ES256', jwk: await publicKeyOf(key), typ: sealType });
  const input = `${toBase64url(utf8.encode(header))}.${toBase64url(utf8.encode(payload))}`;
  const signature = await crypto.subtle.sign(signAlgorithm, key.privateKey, utf8.encode(input));
  return `${input}.${toBase64url(smaller(new Uint8Array(signature)))}`;
}

/** Whether a compact JWS bears the ES256 signature of this key, whatever its header says. */
export async function isSignedBy(jws: string, jwk: PublicKey): Promise<boolean> {
  const at = jws.lastIndexOf('.');
  const signature = fromBase64url(jws.slice(at + 1));
  if (signature?.length !== signatureBytes) return false;
  try {
    const key = await crypto.subtle.importKey('jwk', { ...jwk }, keyAlgorithm, false, ['verify']);
    return await crypto.subtle.verify(signAlgorithm, key, signature, utf8.encode(jws.slice(0, at)));
  } catch {
    // Coordinates that are no point of the curve.
    return false;
  }
}

const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

function textOf(part: string | undefined): string | undefined {
  const bytes = part === undefined ? undefined : fromBase64url(part);
  try {
    return bytes && decoder.decode(bytes);
  } catch {
    return undefined;
  }
}

function parsed(text: string | undefined): unknown {
  try {
    return text === undefined ? undefined : (JSON.parse(text) as unknown);
  } catch {
    return undefined;
  }
}

/** Reads a compact JWS of ours and checks its signature by the key in its header. Never throws. */
export async function readJws(jws: string): Promise<Result<Signed, JwsFault>> {
  const parts = jws.split('.');
  const headerText = textOf(parts[0]);
  const header = headerSchema.safeParse(parsed(headerText));
  const payload = textOf(parts[1]);
  const isOurs = header.success && headerText === canonicalJson(header.data);
  if (parts.length !== 3 || !isOurs || payload === undefined) return err({ kind: 'malformed' });
  const { jwk } = header.data;
  const signature = fromBase64url(parts[2] ?? '');
  const isOne = signature?.length === signatureBytes && isSmaller(signature);
  return isOne && (await isSignedBy(jws, jwk)) ? ok({ payload, jwk }) : err({ kind: 'bad-signature' });
}
