import { fingerprintOf } from '../../seal/fingerprint.ts';
import { makeDeviceKey, type DeviceKey } from '../../seal/device-key.ts';
import { publicKeyOf } from '../../seal/jws.ts';
import { store } from '../data/phone.ts';

const preference = 'device-key';

const isKey = (value: unknown): value is DeviceKey =>
  typeof value === 'object' && value !== null && 'privateKey' in value && 'publicKey' in value;

/** This phone's key, if it has one. */
async function keptKey(): Promise<DeviceKey | undefined> {
  const stored = await store.preferences.get(preference);
  return stored.ok && isKey(stored.value) ? stored.value : undefined;
}

async function keptOrMade(): Promise<DeviceKey | undefined> {
  const kept = await keptKey();
  if (kept) return kept;
  const made = await makeDeviceKey();
  const put = await store.preferences.put(preference, made);
  return put.ok ? made : undefined;
}

/** This phone's key, made with its first seal, by one tab at a time; undefined where the browser can keep none. */
export async function ownKey(): Promise<DeviceKey | undefined> {
  try {
    return await navigator.locks.request(preference, keptOrMade);
  } catch {
    return undefined;
  }
}

/** Whose seals are this phone's own; undefined while it has sealed nothing. */
export async function ownFingerprint(): Promise<string | undefined> {
  const key = await keptKey();
  return key && fingerprintOf(await publicKeyOf(key));
}
