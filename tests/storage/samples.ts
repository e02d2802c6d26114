import { idSchema, keySchema, type RecordKey } from '../../src/core/keys.ts';
import { deviceIdOf, makeStamp, type DeviceId } from '../../src/core/stamp.ts';
import type { RecordValue, Seen, Version } from '../../src/core/versions.ts';
import type { Write } from '../../src/storage/store.ts';

export const keyOf = (text: string): RecordKey => keySchema.parse(text);

export const machine = keyOf('machine/digger');
export const walk = keyOf('walk/w1');
export const lug = keyOf('reading/w1/left.track/lug-depth/1');
export const roller = keyOf('reading/w1/left.bottom-roller.3/roller-turn/1');
export const verdict = keyOf('verdict/w1');
export const demoWalk = keyOf('demo/walk/w1');
export const demoLug = keyOf('demo/reading/w1/left.track/lug-depth/1');

export const value = (note: string): RecordValue => ({ v: 1, note });
export const write = (key: RecordKey, note: string): Write => ({ key, value: value(note) });

export const deviceAt = (at: number): DeviceId => deviceIdOf(new Uint8Array(8).fill(at));
export const office = deviceAt(0x0f);

/** A version that another device made. */
export function foreign(
  key: RecordKey,
  counter: number,
  note: string | undefined,
  seen: Seen = {},
  device = office,
): Version {
  const stamp = makeStamp(counter, device);
  return {
    key,
    ...(note !== undefined && { value: value(note) }),
    stamp,
    seen,
    by: idSchema.parse('office'),
  };
}
