import { beforeAll, describe, expect, test } from 'vitest';
import { canonicalJson } from '../../src/core/canonical-json.ts';
import type { RecordKey } from '../../src/core/keys.ts';
import { assert } from '../../src/core/result.ts';
import type { ClearRecord, SealChange, SealPayload } from '../../src/core/seal-payload.ts';
import { lateIn, viewSeal, type Later, type SealView } from '../../src/files/seal-view.ts';
import { makeDeviceKey } from '../../src/seal/device-key.ts';
import { sha256Hex } from '../../src/seal/hash.ts';
import { makeSeal } from '../../src/seal/seals.ts';

const key = (text: string): RecordKey => text as RecordKey;
const stamp = (at: number): string => `${at.toString(16).padStart(12, '0')}-00000000000000aa`;
const version = (name: string, at: number, value?: object): ClearRecord => ({
  key: key(name),
  stamp: stamp(at),
  seen: {},
  by: 'ines',
  ...(value && { value }),
});

const lug = 'reading/w/left.track/lug-depth/1';
const sheet = 'limits/starting-mini';
const machine = { v: 1, name: 'yard 7' };
const person = { v: 1, role: 'inspector', name: 'Ines Vale', salt: 'a'.repeat(64) };
const picture = new Uint8Array([1, 2, 3]);
let [photo, jws] = ['', ''];

const clear = (): ClearRecord[] => [
  version('walk/w', 1, { v: 1, machine: 'machine/m' }),
  version('machine/m', 2, machine),
  version(lug, 3, { v: 1, what: { kind: 'length', mm: 21.5 } }),
  version(photo, 4, { v: 1 }),
  { key: key(sheet), value: { v: 1, name: 'Sheet' } },
];

async function seal(records: readonly ClearRecord[]): Promise<string> {
  const payload = {
    format: 'sagline-seal',
    version: 1,
    walk: 'walk/w',
    machine: 'machine/m',
    sealedAt: { utc: '2026-03-01T09:00:00.000Z', offsetMinutes: 60 },
    core: 'test',
    records,
    people: [{ key: 'person/ines', role: 'inspector', hash: await sha256Hex(canonicalJson(person)) }],
    verdict: { call: 'repair' },
    open: [{}, {}],
  } as unknown as SealPayload;
  const made = await makeSeal(payload, await makeDeviceKey());
  assert(made.ok, 'a seal');
  return made.value;
}

beforeAll(async () => {
  photo = `photo/w/${await sha256Hex(picture)}`;
  jws = await seal(clear());
});

const here = async (): Promise<Uint8Array<ArrayBuffer>> => picture;
const all = (): ClearRecord[] => [...clear(), version('person/ines', 5, person)];
/** All records, one of them otherwise. */
const but = (name: string, ...other: readonly ClearRecord[]): ClearRecord[] => [
  ...all().filter((each) => each.key !== name),
  ...other,
];

/** What came later, whatever its fields are. */
const later = (name: string, kind: Later['kind']): readonly Later[] => [
  { key: name, kind, changes: expect.any(Array) as SealChange[] },
];

const states: readonly (readonly [string, () => ClearRecord[], Partial<SealView>])[] = [
  ['nothing', all, { state: 'intact', changes: [], later: [] }],
  [
    'one field of a reading',
    () => but(lug, version(lug, 3, { v: 1, what: { kind: 'length', mm: 25 } })),
    {
      state: 'changed',
      changes: [{ kind: 'changed', key: key(lug), path: ['value', 'what', 'mm'], from: 21.5, to: 25 }],
    },
  ],
  [
    'a reading left out',
    () => but(lug),
    { state: 'changed', changes: [{ kind: 'missing', key: key(lug), path: [] }] },
  ],
  [
    'the value of a reading taken out, its stamp left',
    () => but(lug, version(lug, 3)),
    { state: 'changed', changes: [{ kind: 'missing', key: key(lug), path: [] }], later: [] },
  ],
  [
    'a reading read again',
    () => but(lug, version(lug, 9, { v: 1, what: { kind: 'length', mm: 20 } })),
    { state: 'later', changes: [], later: later(lug, 'changed') },
  ],
  [
    'a reading taken back',
    () => but(lug, version(lug, 9)),
    { state: 'later', changes: [], later: later(lug, 'gone') },
  ],
  [
    'another spot',
    () => [...all(), version(lug.replace(/1$/, '2'), 9, { v: 1 })],
    { state: 'later', later: later(lug.replace(/1$/, '2'), 'added') },
  ],
  [
    'the machine, on a later walk',
    () => but('machine/m', version('machine/m', 9, { ...machine, meterHours: 5 })),
    { state: 'later', later: later('machine/m', 'changed') },
  ],
  [
    'a sheet that comes with the app, by a later build',
    () => but(sheet, { key: key(sheet), value: { v: 1, name: 'Sheet, second print' } }),
    { state: 'later', later: later(sheet, 'changed') },
  ],
  ['everything left out', () => [], { state: 'alone', changes: [] }],
];

describe('a seal beside its records', () => {
  test.each(states)('[SG10] shows what is not as it was sealed: %s', async (_name, records, view) => {
    expect(await viewSeal(jws, { records: records() })).toMatchObject(view);
  });

  test('[SG11] names a missing and an altered picture', async () => {
    const other = async () => new Uint8Array([4]);
    const views = await Promise.all(
      [here, other, async () => undefined].map((bytes) => viewSeal(jws, { records: all(), photo: bytes })),
    );
    expect(views.map(({ state, photos }) => [state, photos.map((each) => each.state)])).toEqual([
      ['intact', []],
      ['changed', ['altered']],
      ['changed', ['missing']],
    ]);
  });

  test('[SG12] tells an erased person from one who was left out and from another one', async () => {
    const cases = [
      all(),
      but('person/ines', version('person/ines', 9)),
      but('person/ines'),
      but('person/ines', version('person/ines', 5, { ...person, name: 'Ines Vahle' })),
    ];
    const views = await Promise.all(cases.map((records) => viewSeal(jws, { records })));
    expect(views.map(({ state, people }) => [state, people[0]?.state, people[0]?.person?.name])).toEqual([
      ['intact', 'as-sealed', 'Ines Vale'],
      ['intact', 'erased', undefined],
      ['intact', 'not-here', undefined],
      ['changed', 'other', undefined],
    ]);
  });

  test('[SG26] says which field came later, and what stands there now', async () => {
    const again = but(lug, version(lug, 9, { v: 1, what: { kind: 'length', mm: 20 } }));
    const [late] = (await viewSeal(jws, { records: again })).later;
    expect(late?.changes.map(({ path, from, to }) => [path.join('/'), from, to])).toEqual([
      ['stamp', stamp(3), stamp(9)],
      ['value/what/mm', 21.5, 20],
    ]);
  });

  test('[SG27] under the name of another seal or of another walk it is in another place', async () => {
    const hash = await sha256Hex(jws);
    const states = await Promise.all(
      [`seal/w/${hash}`, `seal/w/${'0'.repeat(64)}`, `seal/else/${hash}`].map(
        async (name) => (await viewSeal(jws, { records: all() }, key(name))).state,
      ),
    );
    expect(states).toEqual(['intact', 'misplaced', 'misplaced']);
  });

  test('[SG13] a seal that was altered says nothing', async () => {
    const [head = '', payload = '', signature = ''] = jws.split('.');
    const said = Buffer.from(payload, 'base64url').toString().replace('repair', 'run');
    const altered = [head, Buffer.from(said).toString('base64url'), signature].join('.');
    const view = await viewSeal(altered, { records: all() });
    expect(view).toMatchObject({ state: 'altered', says: undefined, fingerprint: undefined, people: [] });
  });

  test('[SG14] what a second seal holds is late no more', async () => {
    const again = but(lug, version(lug, 9, { v: 1, what: { kind: 'length', mm: 20 } }));
    const second = await seal(again.filter((each) => !each.key.startsWith('person/')));
    const view = (text: string) => viewSeal(text, { records: again });
    const [one, two] = [await view(jws), await view(second)];
    expect(lateIn([one])).toEqual(later(lug, 'changed'));
    expect(lateIn([one, two])).toEqual([]);
    expect(lateIn([])).toEqual([]);
  });
});
