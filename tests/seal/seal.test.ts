import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { RecordKey } from '../../src/core/keys.ts';
import type { ClearRecord, SealedRecord, SealPayload } from '../../src/core/seal-payload.ts';
import { checkSeal, forksOf } from '../../src/seal/check-seal.ts';
import { makeDeviceKey, type DeviceKey } from '../../src/seal/device-key.ts';
import { sha256Hex } from '../../src/seal/hash.ts';
import { makeSeal, readSeal } from '../../src/seal/seals.ts';
import { lugKey, unstampedList } from '../files/samples.ts';
import { good, person, personKey, photo, record, walkPayload } from './sealed-walk.ts';

let own = {} as DeviceKey;
let payload: SealPayload;
let jws: string;

beforeAll(async () => {
  own = await makeDeviceKey();
  payload = await walkPayload();
  jws = good(await makeSeal(payload, own));
});

const clear = (): ClearRecord[] => [
  ...(structuredClone(payload.records) as ClearRecord[]),
  { key: personKey, value: person },
];

/** Every way to a field, a list or an object inside a value. */
const pathsOf = (value: unknown, path: readonly (string | number)[] = []): (string | number)[][] =>
  typeof value === 'object' && value !== null
    ? [
        ...(path.length > 0 ? [[...path]] : []),
        ...Object.entries(value).flatMap(([name, part]) =>
          pathsOf(part, [...path, Array.isArray(value) ? Number(name) : name]),
        ),
      ]
    : [[...path]];

const at = (value: unknown, path: readonly (string | number)[]): Record<string | number, unknown> =>
  path
    .slice(0, -1)
    .reduce<unknown>((part, name) => (part as Record<string | number, unknown>)[name], value) as Record<
    string | number,
    unknown
  >;

describe('an untouched seal', () => {
  test('[SE6] holds, with every picture and person', async () => {
    const checked = good(await checkSeal(jws, { records: clear(), photo: async () => photo }));
    expect(checked).toMatchObject({ changes: [], photos: [], people: [{ state: 'as-sealed' }] });
    expect(checked.payload).toEqual(payload);
  });

  test('[SE6] the private key cannot be read', async () => {
    await expect(crypto.subtle.exportKey('jwk', own.privateKey)).rejects.toThrow();
  });

  test('[SE7] whatever was recorded can be sealed, and comes back the same', async () => {
    await fc.assert(
      fc.asyncProperty(unstampedList, async (records) => {
        const sealed = { ...payload, records: records as SealedRecord[] };
        const made = good(await makeSeal(sealed, own));
        expect(good(await readSeal(made)).payload).toEqual(sealed);
        const changes = good(await checkSeal(made, { records })).changes;
        expect(changes).toEqual([]);
      }),
      { numRuns: 50 },
    );
  });
});

describe('a change in the clear', () => {
  test('[SE8] of any single field is named, by the field', async () => {
    for (const [index, sealed] of payload.records.entries()) {
      for (const path of pathsOf(sealed)) {
        const name = path.at(-1) ?? '';
        for (const change of ['set', 'drop'] as const) {
          if (path.join() === 'key' || (change === 'drop' && path.join() === 'value')) continue;
          const records = clear();
          const inner = at(records[index], path);
          if (change === 'set') inner[name] = path.join() === 'value' ? { v: 1 } : 'changed';
          else if (Array.isArray(inner)) inner.splice(Number(name), 1);
          else delete inner[name];
          const { changes } = good(await checkSeal(jws, { records }));
          const named = changes.map((each) => [each.key, ...each.path].join('/'));
          const where = [sealed.key, ...path].join('/');
          expect(
            named.some((each) => each.startsWith(where)),
            `${change} ${where}: ${named.join()}`,
          ).toBe(true);
        }
      }
    }
  });

  test('[SE8] a field more is named', async () => {
    const records = clear();
    at(records[1], ['value', 'what', 'x'])['more'] = 1;
    const { changes } = good(await checkSeal(jws, { records }));
    expect(changes).toEqual([
      { kind: 'changed', key: records[1]?.key, path: ['value', 'what', 'more'], to: 1 },
    ]);
  });

  test('[SE9] another version is told apart from one that was tampered with', async () => {
    const records = clear();
    const [, reading] = records;
    if (reading) records[1] = { ...reading, value: { v: 1 }, stamp: '000000000009-00000000000000aa' };
    const { changes } = good(await checkSeal(jws, { records }));
    expect(changes.length).toBeGreaterThan(0);
    expect(changes.every(({ otherVersion }) => otherVersion === true)).toBe(true);
  });

  test.each([
    ['another device beside it', { stamp: '000000000001-00000000000000bb' }, true],
    ['the same device after it', { stamp: '000000000009-00000000000000aa' }, true],
    ['a version that its author had', { stamp: '000000000001-00000000000000aa' }, false],
    ['nobody: it has no stamp', { stamp: undefined }, false],
  ])('[SE9] in place of the sealed version, one of %s', async (_, of, isOther) => {
    const sealed = { ...record(lugKey, { v: 1 }, 2), seen: { '00000000000000aa': 1 } } as SealedRecord;
    const made = good(await makeSeal({ ...payload, records: [sealed] }, own));
    const one = { ...sealed, value: { v: 1, more: 0 }, ...of };
    const changesWith = async (...records: ClearRecord[]) => good(await checkSeal(made, { records })).changes;
    const changes = await changesWith(one);
    expect(changes).toContainEqual(
      expect.objectContaining({ kind: 'changed', path: ['value', 'more'], to: 0 }),
    );
    expect(changes.map(({ otherVersion = false }) => otherVersion)).toEqual(changes.map(() => isOther));
    const removal = { key: sealed.key, stamp: of.stamp ?? sealed.stamp };
    expect(await changesWith(removal)).toEqual([
      { kind: 'missing', key: sealed.key, path: [], ...(isOther && { otherVersion: true }) },
    ]);
  });

  test('[SE9] beside the sealed version an older one says nothing', async () => {
    const sealed = { ...record(lugKey, { v: 1 }, 2), seen: { '00000000000000aa': 1 } } as SealedRecord;
    const made = good(await makeSeal({ ...payload, records: [sealed] }, own));
    const older = record(lugKey, { v: 1, more: 0 });
    expect(good(await checkSeal(made, { records: [older, sealed] })).changes).toEqual([]);
    const boastful = { ...sealed, seen: { '00000000000000aa': 9 } } as SealedRecord;
    const again = good(await makeSeal({ ...payload, records: [boastful] }, own));
    const changed = { ...boastful, value: { v: 1, more: 0 } };
    expect(good(await checkSeal(again, { records: [changed] })).changes).toHaveLength(1);
  });

  test('[SE9] a record that is gone, one that was removed and one that came are named', async () => {
    const [walk, reading] = clear();
    const records = [
      walk as ClearRecord,
      { key: reading?.key as RecordKey, stamp: '000000000009-00000000000000aa' },
      { key: 'reading/w/right.track/lug-depth/1' as RecordKey, value: { v: 1 } },
      { key: 'reading/else/right.track/lug-depth/1' as RecordKey, value: { v: 1 } },
    ];
    const { changes } = good(await checkSeal(jws, { records }));
    expect(changes.map(({ kind, key }) => [kind, key.split('/')[0]])).toEqual([
      ['missing', 'reading'],
      ['missing', 'photo'],
      ['added', 'reading'],
    ]);
  });

  test('[SE10] a picture that is gone and one with other bytes are named', async () => {
    const sha256 = await sha256Hex(photo);
    const gone = good(await checkSeal(jws, { records: clear(), photo: async () => undefined }));
    expect(gone.photos).toEqual([{ sha256, state: 'missing' }]);
    const changed = good(await checkSeal(jws, { records: clear(), photo: async () => new Uint8Array(3) }));
    expect(changed.photos).toEqual([{ sha256, state: 'altered' }]);
  });

  test('[SE11] an erased person is no tampering, another one is', async () => {
    const without = clear().filter(({ key }) => key !== personKey);
    expect(good(await checkSeal(jws, { records: without })).people[0]?.state).toBe('not-here');
    const forged = [...without, { key: personKey, value: { ...person, name: 'Someone Else' } }];
    const [other] = good(await checkSeal(jws, { records: forged })).people;
    expect(other).toEqual({ key: personKey, role: 'inspector', state: 'other' });
  });

  test('[SE11] of two records of a person only the one that was sealed speaks', async () => {
    const beside = [{ key: personKey, value: { ...person, name: 'Someone Else' } }, ...clear()];
    expect(good(await checkSeal(jws, { records: beside })).people).toEqual([
      { key: personKey, role: 'inspector', state: 'as-sealed', value: person },
    ]);
  });
});

describe('what cannot be sealed', () => {
  test('[SE16] half a character and a number without end are refused at the border', async () => {
    for (const bad of [{ note: '\ud800' }, { note: Number.NaN }, { note: Number.POSITIVE_INFINITY }])
      expect((await makeSeal({ ...payload, verdict: bad }, own)).ok).toBe(false);
  });

  test('[SE16] what could not be read back is not signed', async () => {
    const named = JSON.parse('{"v":1,"__proto__":{"v":2}}') as Record<string, unknown>;
    const [walk] = payload.records;
    for (const records of [[{ ...record('walk/w', {}), value: named }], [walk, walk]] as SealedRecord[][])
      expect(await makeSeal({ ...payload, records }, own)).toEqual({
        ok: false,
        error: { kind: 'unreadable' },
      });
  });

  test('[SE16] a walk that is too large says so', async () => {
    const large = { ...payload, verdict: { text: 'x'.repeat(500_000) } };
    expect(await makeSeal(large, own)).toEqual({ ok: false, error: { kind: 'too-large' } });
  });
});

test('[SE17] two seals after the same one are a fork, a chain is none', async () => {
  const first = good(await readSeal(jws));
  const after = async (note: string, previous: string) =>
    good(await readSeal(good(await makeSeal({ ...payload, verdict: { note }, previous }, own))));
  const second = await after('a', first.hash);
  expect(forksOf([first, second, await after('b', second.hash)])).toEqual([]);
  expect(forksOf([first, first, second, second])).toEqual([]);
  const beside = await after('c', first.hash);
  expect(forksOf([first, second, beside])).toEqual([[second, beside]]);
});
