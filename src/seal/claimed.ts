import { canonicalJson } from '../core/canonical-json.ts';
import { sealPayloadSchema, type SealPayload } from '../core/seal-payload.ts';
import { fromBase64url } from './base64url.ts';

/** A payload's text as the payload, if it is one and its one canonical text. */
export function payloadOf(text: string): SealPayload | undefined {
  try {
    const parsed = sealPayloadSchema.safeParse(JSON.parse(text));
    return parsed.success && canonicalJson(parsed.data) === text ? parsed.data : undefined;
  } catch {
    return undefined;
  }
}

const textOf = (jws: string): string | undefined => {
  const bytes = fromBase64url(jws.split('.')[1] ?? '');
  return bytes && new TextDecoder().decode(bytes);
};

/** Which walk a seal says that it is of, one of a later version too; its signature unchecked. */
export function claimedWalk(jws: string): unknown {
  try {
    const said: unknown = JSON.parse(textOf(jws) ?? 'null');
    return typeof said === 'object' && said !== null && 'walk' in said ? said.walk : undefined;
  } catch {
    return undefined;
  }
}

/**
 * What a seal says of itself, its signature unchecked: good for finding what belongs to it, and for nothing that
 * anybody is to believe.
 */
export function claimedPayload(jws: string): SealPayload | undefined {
  const text = textOf(jws);
  return text === undefined ? undefined : payloadOf(text);
}
