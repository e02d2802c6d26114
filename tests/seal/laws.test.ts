import fc from 'fast-check';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { canonicalJson } from '../../src/core/canonical-json.ts';
import {
  changesSince,
  type ClearRecord,
  type SealChange,
  type SealedRecord,
  type SealPayload,
} from '../../src/core/seal-payload.ts';
import { viewSeal } from '../../src/files/seal-view.ts';
import { makeDeviceKey, type DeviceKey } from '../../src/seal/device-key.ts';
import { makeSeal, readSeal } from '../../src/seal/seals.ts';
import { randomWalks, type RandomWalk } from '../core/random-walks.ts';
import { good, record, walkPayload } from './sealed-walk.ts';

// A walk has some thousand places, each of which is changed.
vi.setConfig({ testTimeout: 60_000 });

let [own, other] = [{} as DeviceKey, {} as DeviceKey];
let base: SealPayload;

beforeAll(async () => {
  [own, other] = [await makeDeviceKey(), await makeDeviceKey()];
  base = await walkPayload();
});

/** A random walk as it is sealed: the records that it leans on, and its pictures. */
function payloadOf({ sheet, input: { walk, machine, rules, readings } }: RandomWalk): SealPayload {
  const times = new Map<string, number>();
  const read = readings.map(({ place, item, reading }) => {
    const n = (times.get(`${place}/${item}`) ?? 0) + 1;
    times.set(`${place}/${item}`, n);
    return record(`reading/w/${place}/${item}/${n}`, reading);
  });
  // A few rules show as much as all of them.
  const few = { ...rules, rules: rules?.rules.slice(-4) };
  const photos = base.records.filter(({ key }) => key.startsWith('photo/'));
  const books = [record('limits/l', sheet), record('rules/r', few)];
  const records = [record('walk/w', walk), record('machine/m', machine), ...books, ...read, ...photos];
  return JSON.parse(canonicalJson({ ...base, records })) as SealPayload;
}

type Path = readonly (string | number)[];
type Parts = Record<string | number, unknown>;
const isInner = (value: unknown): value is Parts => typeof value === 'object' && value !== null;

/** Every way to something inside a value, objects and lists too. */
const pathsOf = (value: unknown, path: Path = []): readonly Path[] =>
  isInner(value)
    ? Object.keys(value).flatMap((name) => {
        const next = [...path, Array.isArray(value) ? Number(name) : name];
        return [next, ...pathsOf(value[name], next)];
      })
    : [];

const partAt = (value: unknown, path: Path): unknown =>
  path.reduce<unknown>((part, name) => (isInner(part) ? part[name] : undefined), value);

/** Another value of the same kind, as near to it as can be. */
function nearTo(value: unknown): unknown {
  if (typeof value === 'number') return value === 0 ? 5e-324 : value * (1 + 2 ** -52);
  if (typeof value === 'string') return `${value} `;
  if (typeof value === 'boolean') return !value;
  return value === null ? 0 : null;
}

const namesOf = (payload: SealPayload, records: readonly ClearRecord[]): readonly string[] =>
  changesSince(payload, records).map(({ kind, key, path }) => [kind, key, ...path].join(' '));

/** Goes through every place in every record, each record as sealed by itself. */
function eachPlace(
  payload: SealPayload,
  visit: (
    sealed: SealedRecord,
    path: Path,
    changesAfter: (change: (it: Parts) => void) => readonly SealChange[],
  ) => void,
): void {
  for (const sealed of payload.records) {
    const alone = { ...payload, records: [sealed] };
    for (const path of [[], ...pathsOf(sealed.value)]) {
      visit(sealed, path, (change) => {
        const copy = structuredClone(sealed);
        change(copy.value);
        return changesSince(alone, [copy]);
      });
    }
  }
}

describe('of any walk', () => {
  const sealedWalks = randomWalks.map((walk) => () => payloadOf(walk));

  test('[SE20] each field that is changed is named by its path, and no other', () => {
    fc.assert(
      fc.property(sealedWalks, (made) => {
        eachPlace(made(), ({ key, value }, path, changesAfter) => {
          if (path.length === 0) return;
          const [from, to] = [partAt(value, path), nearTo(partAt(value, path))];
          const changes = changesAfter((it) => {
            (partAt(it, path.slice(0, -1)) as Parts)[path.at(-1) ?? ''] = to;
          });
          expect(changes).toEqual([{ kind: 'changed', key, path: ['value', ...path], from, to }]);
        });
      }),
      { numRuns: 5 },
    );
  });

  test('[SE20] each field that is taken out is named by its path', () => {
    fc.assert(
      fc.property(sealedWalks, (made) => {
        eachPlace(made(), ({ key, value }, path, changesAfter) => {
          const [way, name] = [path.slice(0, -1), path.at(-1)];
          if (name === undefined) return;
          const changes = changesAfter((it) => {
            const inner = partAt(it, way) as Parts;
            if (Array.isArray(inner)) inner.splice(Number(name), 1);
            else delete inner[name];
          });
          // What is behind it in a list moves up, so that the end is what is missing.
          const list = partAt(value, way);
          const where = Array.isArray(list) ? [...way, list.length - 1] : path;
          const from = partAt(value, where);
          expect(changes).toContainEqual({ kind: 'changed', key, path: ['value', ...where], from });
        });
      }),
      { numRuns: 5 },
    );
  });

  test('[SE20] each field that is put in is named by its path, and no other', () => {
    fc.assert(
      fc.property(sealedWalks, (made) => {
        eachPlace(made(), ({ key, value }, path, changesAfter) => {
          const inner = partAt(value, path);
          if (!isInner(inner)) return;
          const name = Array.isArray(inner) ? inner.length : 'put-in';
          const changes = changesAfter((it) => {
            (partAt(it, path) as Parts)[name] = 0;
          });
          expect(changes).toEqual([{ kind: 'changed', key, path: ['value', ...path, name], to: 0 }]);
        });
      }),
      { numRuns: 5 },
    );
  });

  test('[SE20] each field of a version, beside its value, is named by its path', () => {
    fc.assert(
      fc.property(sealedWalks, (made) => {
        const payload = made();
        for (const [at, sealed] of payload.records.entries()) {
          const { value: _, key: __, ...version } = sealed;
          for (const path of pathsOf(version)) {
            const copy = structuredClone(sealed) as unknown as Parts;
            (partAt(copy, path.slice(0, -1)) as Parts)[path.at(-1) ?? ''] = nearTo(partAt(version, path));
            const records = payload.records.with(at, copy as unknown as SealedRecord);
            expect(namesOf(payload, records)).toEqual([['changed', sealed.key, ...path].join(' ')]);
          }
        }
      }),
      { numRuns: 3 },
    );
  });

  test('[SE21] each record that is taken out, and each reading that is put in, is named', () => {
    fc.assert(
      fc.property(sealedWalks, (made) => {
        const payload = made();
        for (const [at, { key }] of payload.records.entries())
          expect(namesOf(payload, payload.records.toSpliced(at, 1))).toEqual([`missing ${key}`]);
        const late = record('reading/w/left.track/lug-depth/77', { v: 1 });
        expect(namesOf(payload, [...payload.records, late])).toEqual([`added ${late.key}`]);
      }),
      { numRuns: 20 },
    );
  });
});

describe('of any walk, the whole way', () => {
  test('[SE22] it is intact as it is, whatever the order of its records', async () => {
    await fc.assert(
      fc.asyncProperty(randomWalks, fc.nat(), async (walk, turn) => {
        const payload = payloadOf(walk);
        const jws = good(await makeSeal(payload, own));
        const from = turn % payload.records.length;
        const records = [...payload.records.slice(from), ...payload.records.slice(0, from)];
        expect((await viewSeal(jws, { records })).state).toBe('intact');
      }),
      { numRuns: 40 },
    );
  });

  test('[SE22] signed again with any change it is of another, unknown signer', async () => {
    await fc.assert(
      fc.asyncProperty(randomWalks, async (walk) => {
        const payload = payloadOf(walk);
        const first = good(await readSeal(good(await makeSeal(payload, own))));
        const forged = { ...payload, verdict: { call: 'none' } };
        const second = good(await readSeal(good(await makeSeal(forged, other))));
        expect(second.fingerprint).not.toBe(first.fingerprint);
        expect(second.hash).not.toBe(first.hash);
      }),
      { numRuns: 20 },
    );
  });

  test('[SE22] each character of a seal counts', async () => {
    await fc.assert(
      fc.asyncProperty(randomWalks, fc.nat(), fc.integer({ min: 1, max: 63 }), async (walk, place, by) => {
        const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
        const jws = good(await makeSeal(payloadOf(walk), own));
        const at = place % jws.length;
        const now = alphabet.indexOf(jws[at] ?? '');
        const next = alphabet[(now + by) % 64] ?? '';
        const text = jws.slice(0, at) + next + jws.slice(at + 1);
        if (text === jws) return;
        expect((await viewSeal(text, { records: [] })).state).toBe('altered');
        // A bit of any byte, as a fault of a disk would turn it.
        const flipped =
          jws.slice(0, at) + String.fromCharCode(jws.charCodeAt(at) ^ (1 << (by % 8))) + jws.slice(at + 1);
        expect((await viewSeal(flipped, { records: [] })).state).toBe('altered');
      }),
      { numRuns: 100 },
    );
  });
});
