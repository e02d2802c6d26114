import { uuidV7 } from '../../core/uuid.ts';
import type { Id } from '../../core/keys.ts';

/** Now as data: the instant, the offset and the zone of this phone, right or wrong. */
export function observedNow(): { utc: string; offsetMinutes: number; zone: string } {
  const now = new Date();
  return {
    utc: now.toISOString(),
    offsetMinutes: -now.getTimezoneOffset(),
    zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  };
}

/** A new id; works without a secure context, unlike `crypto.randomUUID`. */
export function newId(): Id {
  return uuidV7(Date.now(), crypto.getRandomValues(new Uint8Array(10)));
}
