import { canonicalJson, jsonFault } from '../core/canonical-json.ts';
import { mostSealBytes } from '../core/seal.ts';
import type { SealPayload } from '../core/seal-payload.ts';
import { err, ok, type Result } from '../core/result.ts';
import { payloadOf } from './claimed.ts';
import type { DeviceKey } from './device-key.ts';
import { fingerprintOf } from './fingerprint.ts';
import { sha256Hex } from './hash.ts';
import { readJws, signJws, type PublicKey } from './jws.ts';

/** A seal whose signature holds. */
export interface ReadSeal {
  /** SHA-256 of the seal's text. */
  readonly hash: string;
  readonly payload: SealPayload;
  readonly jwk: PublicKey;
  /** RFC 7638 thumbprint of the key that signed. */
  readonly fingerprint: string;
}

/** `altered`: the text does not bear its own key's signature; `unreadable`: it does, and is no seal that we know. */
export type SealFault = { readonly kind: 'altered' | 'unreadable' | 'too-large' };

/** Signs a walk; the text is the seal. */
export async function makeSeal(payload: SealPayload, key: DeviceKey): Promise<Result<string, SealFault>> {
  if (jsonFault(payload) !== undefined) return err({ kind: 'unreadable' });
  const text = canonicalJson(payload);
  // What cannot be read back is not signed.
  if (payloadOf(text) === undefined) return err({ kind: 'unreadable' });
  const jws = await signJws(text, key);
  return jws.length > mostSealBytes ? err({ kind: 'too-large' }) : ok(jws);
}

/** Reads a seal and checks its signature. Never throws, whatever the text is. */
export async function readSeal(jws: string): Promise<Result<ReadSeal, SealFault>> {
  if (jws.length > mostSealBytes) return err({ kind: 'too-large' });
  const signed = await readJws(jws);
  if (!signed.ok) return err({ kind: 'altered' });
  const payload = payloadOf(signed.value.payload);
  if (payload === undefined) return err({ kind: 'unreadable' });
  const { jwk } = signed.value;
  return ok({ hash: await sha256Hex(jws), payload, jwk, fingerprint: await fingerprintOf(jwk) });
}
