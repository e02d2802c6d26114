import { readFileSync } from 'node:fs';
import { assemble, type Shelf } from '../../src/core/assemble.ts';
import type { Id, RecordKey } from '../../src/core/keys.ts';
import { assert } from '../../src/core/result.ts';
import { deviceIdOf, makeStamp } from '../../src/core/stamp.ts';
import type { ScoreInput } from '../../src/core/states.ts';
import type { RecordValue, Version } from '../../src/core/versions.ts';
import { builtIn } from '../../src/reference/built-in.ts';

export interface FileRecord {
  readonly key: RecordKey;
  readonly value: RecordValue;
}

/** What one item of a check walk comes to; every figure has its source beside it. */
export interface ExpectedItem {
  readonly place: string;
  readonly item: string;
  readonly percent?: number;
  readonly call: string;
  readonly meanwhile: string;
  readonly open: readonly string[];
  readonly source?: string;
}

/** What a check walk comes to; `others` holds for every item that is not listed. */
export interface Expected {
  readonly walk: RecordKey;
  readonly items: readonly ExpectedItem[];
  readonly others: { readonly call: string; readonly meanwhile: string; readonly open: readonly string[] };
  readonly verdict: { readonly call: string; readonly meanwhile: string; readonly settled: boolean };
}

const here = new URL('./walks/', import.meta.url);
const readJson = (name: string): unknown => JSON.parse(readFileSync(new URL(`${name}.json`, here), 'utf8'));

export const expectations = readJson('expected') as Readonly<Record<string, Expected>>;

export const recordsOf = (name: string): readonly FileRecord[] =>
  (readJson(name) as { records: readonly FileRecord[] }).records;

const device = deviceIdOf(new Uint8Array(8));

/** The records of a file as a store would hold them. */
export function shelfOf(records: readonly FileRecord[]): Shelf {
  const held = new Map<string, readonly [RecordKey, readonly Version[]]>(
    records.map(({ key, value }, at) => {
      const version: Version = { key, value, stamp: makeStamp(at + 1, device), seen: {}, by: 'nobody' as Id };
      return [key, [key, [version]]];
    }),
  );
  return {
    get: (key) => held.get(key)?.[1] ?? [],
    under: (prefix) => [...held.values()].filter(([key]) => key.startsWith(prefix)),
  };
}

/** What scoring a check walk needs. */
export function inputOf(name: string): ScoreInput {
  const expected = expectations[name];
  assert(expected, `no such check walk: ${name}`);
  const gathered = assemble(shelfOf(recordsOf(name)), builtIn, expected.walk);
  assert(gathered.ok, `${name} cannot be assembled`);
  return gathered.value.input;
}
