import { deviceIdOf, type DeviceId } from '../core/stamp.ts';
import type { ClockRow, MetaRow } from './schema.ts';

/** Fills bytes with randomness; as getRandomValues, at most 65,536 at once. */
export type Random = (bytes: Uint8Array<ArrayBuffer>) => void;

export function newDevice(random: Random): DeviceId {
  const bytes = new Uint8Array(8);
  random(bytes);
  return deviceIdOf(bytes);
}

/** Any transaction that includes the store `meta`. */
interface WithMeta {
  objectStore(name: 'meta'): { get(key: 'clock'): Promise<MetaRow | undefined> };
}

/** Who this device is and how far it has counted; a new device, not stored yet, the first time. */
export async function readClock(tx: WithMeta, random: Random): Promise<ClockRow> {
  const row = await tx.objectStore('meta').get('clock');
  return row?.name === 'clock' ? row : { name: 'clock', device: newDevice(random), counter: 0 };
}
