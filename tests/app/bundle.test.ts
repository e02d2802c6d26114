import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { backUp } from '../../src/app/actions/backup.ts';
import { fileOf } from '../../src/app/actions/files.ts';
import { importFile } from '../../src/app/actions/import.ts';
import { save } from '../../src/app/actions/saved.ts';
import { store } from '../../src/app/data/phone.ts';
import { canonicalJson } from '../../src/core/canonical-json.ts';
import { kindOf, partsOf, type RecordKey } from '../../src/core/keys.ts';
import { displayed } from '../../src/core/versions.ts';
import { usualShape } from '../../src/app/data/usual-shape.ts';
import { makeDeviceKey, type DeviceKey } from '../../src/seal/device-key.ts';
import { sha256Hex } from '../../src/seal/hash.ts';
import { signJws } from '../../src/seal/jws.ts';
import { makeSeal } from '../../src/seal/seals.ts';
import { unstampedRecord } from '../files/samples.ts';

const walkKey = 'walk/w' as RecordKey<'walk'>;
const machineKey = 'machine/m' as RecordKey<'machine'>;
const work = { stop: new AbortController().signal, onProgress: () => undefined };
const machine = { v: 1, name: 'Yard 7', kind: 'excavator', shape: usualShape('excavator', 'steel') };
const walk = {
  v: 1,
  machine: machineKey,
  purpose: 'jobsite',
  depth: 'full',
  start: 'walk',
  corner: 'front-left',
};

/** Readings as they come, under the one walk. */
const readings = fc.array(
  unstampedRecord
    .filter(({ key }) => kindOf(key) === 'reading')
    .map(({ key, value }) => {
      const parts = partsOf(key as RecordKey<'reading'>);
      return {
        key: `reading/w/${parts.place}/${parts.item}/${parts.n}` as RecordKey,
        value: { ...value, note: 'typed' },
      };
    }),
  { maxLength: 6 },
);
/** Bytes that begin as a JPEG and then hold anything. */
const pictures = fc.array(
  fc
    .uint8Array({ maxLength: 300 })
    .map((rest) => new Uint8Array([0xff, 0xd8, 0xff, ...rest]) as Uint8Array<ArrayBuffer>),
  { maxLength: 4 },
);

async function photoRecord(bytes: Uint8Array<ArrayBuffer>) {
  const sha256 = await sha256Hex(bytes);
  const original = { sha256: '0'.repeat(64), bytes: 9 };
  const value = { v: 1, type: 'image/jpeg', bytes: bytes.length, width: 4, height: 3, original };
  return {
    row: { sha256, type: 'image/jpeg', bytes },
    write: { key: `photo/w/${sha256}` as RecordKey, value: { ...value, shows: [], from: 'camera' } },
  };
}

let key: DeviceKey;
beforeAll(async () => void (key = await makeDeviceKey()));

/** Everything on the phone, as text: records with their stamps, and the bytes of each picture. */
async function everything(): Promise<readonly string[]> {
  const rows = await store.list({ prefix: '' });
  if (!rows.ok) throw new Error(rows.error.kind);
  const lines = rows.value.map(({ versions }) =>
    // A seal is named by its text; who took it in, and when, is no part of it.
    canonicalJson(versions.map((each) => (kindOf(each.key) === 'seal' ? [each.key, each.value] : each))),
  );
  for (const { key: each } of rows.value) {
    const parts = partsOf(each);
    if (parts.kind !== 'photo') continue;
    const found = await store.photos.get(parts.hash);
    lines.push(`${parts.hash} ${found.ok ? String(found.value?.bytes) : ''}`);
  }
  return lines;
}

/** What taking a new phone comes to: nothing of the old one is there. */
async function wipe(): Promise<void> {
  const database = await new Promise<IDBDatabase>((resolve) => {
    const opening = indexedDB.open('sagline');
    opening.addEventListener('success', () => resolve(opening.result));
  });
  const names = [...database.objectStoreNames].filter((name) => !['meta', 'reserve'].includes(name));
  const clearing = database.transaction(names, 'readwrite');
  for (const name of names) clearing.objectStore(name).clear();
  await new Promise((resolve) => clearing.addEventListener('complete', resolve));
  database.close();
}

async function fill(
  list: readonly { key: RecordKey; value: object }[],
  photos: readonly Uint8Array<ArrayBuffer>[],
): Promise<void> {
  const taken = await Promise.all(
    [...new Map(photos.map((each) => [String(each), each])).values()].map(photoRecord),
  );
  const records = [
    { key: machineKey, value: machine },
    { key: walkKey, value: walk },
    ...new Map(list.map((each) => [each.key, each])).values(),
    ...taken.map(({ write }) => write),
  ];
  for (const { row } of taken) await store.photos.put(row);
  const jws = await makeSeal(
    {
      format: 'sagline-seal',
      version: 1,
      walk: walkKey,
      machine: machineKey,
      sealedAt: { utc: '2026-03-01T09:00:00Z', offsetMinutes: 0 },
      core: 'test',
      records: records as never,
      people: [],
      verdict: {},
      open: [],
    },
    key,
  );
  if (!jws.ok) throw new Error(jws.error.kind);
  const seal = `seal/w/${await sha256Hex(jws.value)}` as RecordKey;
  const saved = await save([...records, { key: seal, value: { v: 1, jws: jws.value } }] as never);
  if (!saved.ok) throw new Error(saved.error.kind);
}

async function exported(): Promise<Blob> {
  const file = await fileOf([walkKey], 'walk');
  if (!file.ok) throw new Error(file.error.kind);
  return new Blob([...file.value.parts]);
}

beforeEach(wipe);

describe('a walk that goes to another phone', () => {
  it('[HO1] a thousand walks come back with equal records and pictures, and twice is once', async () => {
    await fc.assert(
      fc.asyncProperty(readings, pictures, async (list, photos) => {
        await wipe();
        await fill(list, photos);
        const before = await everything();
        const file = await exported();
        await wipe();
        expect(await everything()).toEqual([]);
        const first = await importFile(file, work);
        expect(first).toMatchObject({ kind: 'done', refused: [], picturesMissing: 0, sealsAltered: 0 });
        expect(await everything()).toEqual(before);
        expect(await importFile(file, work)).toMatchObject({ kind: 'done', added: 0 });
        expect(await everything()).toEqual(before);
      }),
      { numRuns: 1000 },
    );
  }, 240_000);

  it('[HO2] pictures that are not in the file are counted', async () => {
    await fill([], [new Uint8Array([0xff, 0xd8, 0xff, 1])]);
    const rows = await store.list({ prefix: '' });
    const versions = rows.ok ? rows.value.flatMap((row) => row.versions) : [];
    const text = JSON.stringify({ format: 'sagline-walk', version: 1, records: versions, seals: ['a.b.c'] });
    await wipe();
    const came = await importFile(new Blob([text]), work);
    expect(came).toMatchObject({ kind: 'done', picturesMissing: 1, sealsAltered: 1 });
    const machineNow = await store.read(machineKey);
    expect(machineNow.ok && displayed(machineNow.value)?.value).toEqual(machine);
  });

  it('[HO21] a seal of a later version is kept as it is, an altered one is not', async () => {
    const later = await signJws(canonicalJson({ format: 'sagline-seal', version: 2, walk: walkKey }), key);
    const records = [{ key: machineKey, value: machine }];
    const bad = `${later.slice(0, -4)}AAAA`;
    const text = JSON.stringify({ format: 'sagline-walk', version: 1, records, seals: [later, bad] });
    expect(await importFile(new Blob([text]), work)).toMatchObject({ kind: 'done', sealsAltered: 1 });
    const kept = await store.list({ prefix: 'seal/' });
    expect(kept.ok && kept.value.map(({ versions }) => displayed(versions)?.value)).toEqual([
      { v: 1, jws: later },
    ]);
  });

  it('[HO8] a backup holds the pictures, and brings everything back', async () => {
    await fill([], [new Uint8Array([0xff, 0xd8, 0xff, 1]), new Uint8Array([0xff, 0xd8, 0xff, 2])]);
    const before = await everything();
    const given: Blob[] = [];
    vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(() => undefined);
    vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
      given.push(blob as Blob);
      return 'blob:x';
    });
    await backUp({ stop: new AbortController().signal, onCount: () => undefined });
    vi.restoreAllMocks();
    await wipe();
    const came = await importFile(given[0] ?? new Blob(), work);
    expect(came).toMatchObject({ kind: 'done', added: 5, refused: [] });
    expect(await everything()).toEqual(before);
  });
});
