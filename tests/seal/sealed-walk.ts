import { canonicalJson } from '../../src/core/canonical-json.ts';
import type { RecordKey } from '../../src/core/keys.ts';
import type { SealedRecord, SealPayload } from '../../src/core/seal-payload.ts';
import { sha256Hex } from '../../src/seal/hash.ts';

export const photo = new Uint8Array([255, 216, 255, 1, 2, 3]);
export const person = { v: 1, role: 'inspector', name: 'Ines Vale', salt: 'a'.repeat(64) };
export const personKey = 'person/ines' as RecordKey;

export const good = <T>(result: { ok: true; value: T } | { ok: false; error: unknown }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
};

export const record = (key: string, value: object, at = 1): SealedRecord =>
  ({
    key,
    value,
    stamp: `${at.toString(16).padStart(12, '0')}-00000000000000aa`,
    seen: { '00000000000000bb': 0 },
    by: 'ines',
  }) as unknown as SealedRecord;

/** A walk with a reading, a picture and an inspector. */
export const walkPayload = async (): Promise<SealPayload> => ({
  format: 'sagline-seal',
  version: 1,
  walk: 'walk/w' as RecordKey,
  machine: 'machine/m' as RecordKey,
  sealedAt: { utc: '2026-03-01T09:00:00.000Z', offsetMinutes: 60 },
  core: 'test',
  records: [
    record('walk/w', { v: 1, machine: 'machine/m', note: 'nach dem Regen' }),
    record('reading/w/left.track/lug-depth/1', {
      v: 1,
      what: { kind: 'length', mm: 21.5 },
      tags: [1, [2]],
    }),
    record(`photo/w/${await sha256Hex(photo)}`, { v: 1, shows: [] }),
  ],
  people: [{ key: personKey, role: 'inspector', hash: await sha256Hex(canonicalJson(person)) }],
  verdict: { call: 'repair' },
  open: [],
});
