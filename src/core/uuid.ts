import type { Id } from './keys.ts';
import { assert } from './result.ts';

const hex = (bytes: Uint8Array): string =>
  Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');

/**
 * Makes a UUID version 7 (RFC 9562, section 5.7) of milliseconds since 1970 and 10 random bytes. Later
 * milliseconds sort later as text. The time in it only spreads ids; nothing is ordered by it.
 */
export function uuidV7(nowMs: number, random: Uint8Array): Id {
  assert(Number.isInteger(nowMs) && nowMs >= 0 && nowMs < 2 ** 48, 'time is whole milliseconds since 1970');
  assert(random.length === 10, 'a UUIDv7 takes 10 random bytes');
  const time = nowMs.toString(16).padStart(12, '0');
  const [version, variant] = [0x7000, 0x8000];
  const view = new DataView(random.buffer, random.byteOffset, random.byteLength);
  const a = (version | (view.getUint16(0) & 0x0fff)).toString(16);
  const b = (variant | (view.getUint16(2) & 0x3fff)).toString(16);
  return `${time.slice(0, 8)}-${time.slice(8)}-${a}-${b}-${hex(random.subarray(4))}` as Id;
}
