import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { canonicalJson } from '../../src/core/canonical-json.ts';
import type { RecordKey } from '../../src/core/keys.ts';
import type { ClearRecord, SealedRecord, SealPayload } from '../../src/core/seal-payload.ts';
import { checkSeal, forksOf } from '../../src/seal/check-seal.ts';
import { makeDeviceKey, type DeviceKey } from '../../src/seal/device-key.ts';
import { sha256Hex } from '../../src/seal/hash.ts';
import { signJws } from '../../src/seal/jws.ts';
import { makeSeal, readSeal } from '../../src/seal/seals.ts';
import { unstampedRecord } from '../files/samples.ts';

const photo = new Uint8Array([255, 216, 255, 1, 2, 3]);
const person = { v: 1, role: 'inspector', name: 'Ines Vale', salt: 'a'.repeat(64) };
const personKey = 'person/ines' as RecordKey;

let [own, other] = [{} as DeviceKey, {} as DeviceKey];
let payload: SealPayload;
let jws: string;

const good = <T>(result: { ok: true; value: T } | { ok: false; error: unknown }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
};

const record = (key: string, value: object, at = 1): SealedRecord =>
  ({
    key,
    value,
    stamp: `${at.toString(16).padStart(12, '0')}-00000000000000aa`,
    seen: { '00000000000000bb': 0 },
    by: 'ines',
  }) as unknown as SealedRecord;

beforeAll(async () => {
  [own, other] = [await makeDeviceKey(), await makeDeviceKey()];
  payload = {
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
  };
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
      fc.asyncProperty(fc.array(unstampedRecord, { minLength: 1, maxLength: 8 }), async (records) => {
        const sealed = { ...payload, records: records as SealedRecord[] };
        const made = good(await makeSeal(sealed, own));
        expect(good(await readSeal(made)).payload).toEqual(sealed);
        const unique = [...new Map(records.map((each) => [each.key, each])).values()];
        if (unique.length < records.length) return;
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
    expect(good(await checkSeal(jws, { records: forged })).people[0]?.state).toBe('other');
  });
});

describe('a change inside the seal', () => {
  test('[SE12] of any single character is refused: the seal itself was altered', async () => {
    const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
    for (let place = 0; place < jws.length; place += 1) {
      const next = alphabet[(alphabet.indexOf(jws[place] ?? '') + 1) % 64] ?? 'A';
      const changed = jws.slice(0, place) + next + jws.slice(place + 1);
      expect(await readSeal(changed), `character ${place}`).toEqual({
        ok: false,
        error: { kind: 'altered' },
      });
    }
  });

  test('[SE12] cut or lengthened anywhere it is refused', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(jws.length - 1), fc.stringMatching(/^[\w.=-]{0,3}$/), async (place, text) => {
        if (text === jws[place]) return;
        expect((await readSeal(jws.slice(0, place) + text + jws.slice(place + 1))).ok).toBe(false);
      }),
    );
  });

  test('[SE12] no text makes it throw', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary' }), async (text) => {
        expect((await readSeal(text)).ok).toBe(false);
      }),
    );
  });

  const forged = async (header: object): Promise<string> => {
    const [, body] = jws.split('.');
    const input = `${Buffer.from(canonicalJson(header)).toString('base64url')}.${body}`;
    const made = await crypto.subtle.sign(
      { name: 'ECDSA', hash: 'SHA-256' },
      own.privateKey,
      new TextEncoder().encode(input),
    );
    return `${input}.${Buffer.from(made).toString('base64url')}`;
  };
  const headerNow = (): Record<string, unknown> =>
    JSON.parse(Buffer.from(jws.split('.')[0] ?? '', 'base64url').toString()) as Record<string, unknown>;

  test.each([
    ['no algorithm', { alg: 'none' }],
    ['a shared secret', { alg: 'HS256' }],
    ['an extension', { crit: ['exp'], exp: 1 }],
    ['a key to be fetched', { jku: 'https://keys.example' }],
    ['another type', { typ: 'JWT' }],
  ])('[SE13] a header with %s is refused, well signed though it is', async (_, more) => {
    expect(await readSeal(await forged({ ...headerNow() }))).toMatchObject({ ok: true });
    expect((await readSeal(await forged({ ...headerNow(), ...more }))).ok).toBe(false);
  });

  test('[SE13] a private key in the header is refused', async () => {
    const header = headerNow();
    const withPrivate = { ...header, jwk: { ...(header['jwk'] as object), d: 'A'.repeat(43) } };
    expect((await readSeal(await forged(withPrivate))).ok).toBe(false);
  });

  test('[SE14] the same payload under another key is an other signer', async () => {
    const [mine, theirs] = [
      good(await readSeal(jws)),
      good(await readSeal(good(await makeSeal(payload, other)))),
    ];
    expect(theirs.payload).toEqual(mine.payload);
    expect(theirs.fingerprint).not.toBe(mine.fingerprint);
    expect(theirs.hash).not.toBe(mine.hash);
  });

  test('[SE15] what is signed but no seal is unreadable, not altered', async () => {
    const texts = ['{}', 'nothing', `${canonicalJson(payload)} `, canonicalJson({ ...payload, version: 2 })];
    for (const text of texts)
      expect(await readSeal(await signJws(text, own))).toEqual({ ok: false, error: { kind: 'unreadable' } });
  });
});

describe('what cannot be sealed', () => {
  test('[SE16] half a character and a number without end are refused at the border', async () => {
    for (const bad of [{ note: '\ud800' }, { note: Number.NaN }, { note: Number.POSITIVE_INFINITY }])
      expect((await makeSeal({ ...payload, verdict: bad }, own)).ok).toBe(false);
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
  const beside = await after('c', first.hash);
  expect(forksOf([first, second, beside])).toEqual([[second, beside]]);
});
