import { describe, expect, test } from 'vitest';
import { assemble, type Shelf } from '../../src/core/assemble.ts';
import { isDemo, kindOf, type Id, type RecordKey } from '../../src/core/keys.ts';
import { machineSchema } from '../../src/core/machine.ts';
import { readingSchema } from '../../src/core/readings.ts';
import { score } from '../../src/core/score.ts';
import { deviceIdOf, makeStamp } from '../../src/core/stamp.ts';
import { shownCall } from '../../src/core/verdict.ts';
import type { RecordValue, Version } from '../../src/core/versions.ts';
import { walkSchema, workSchema } from '../../src/core/walk.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { demoRecords } from '../../src/reference/demo.ts';

const schemas = { machine: machineSchema, reading: readingSchema, walk: walkSchema, work: workSchema };
const records = demoRecords();
const device = deviceIdOf(new Uint8Array(8));
const nobody = 'nobody' as Id;

const versions = new Map<RecordKey, readonly Version[]>(
  records.map(({ key, value }, at) => [
    key,
    [{ key, value: value as unknown as RecordValue, stamp: makeStamp(at + 1, device), seen: {}, by: nobody }],
  ]),
);
const shelf: Shelf = {
  get: (key) => versions.get(key as RecordKey) ?? [],
  under: (prefix) => [...versions].filter(([key]) => key.startsWith(prefix)),
};
const walks = records.filter(({ key }) => kindOf(key) === 'walk').map(({ key }) => key);

describe('the demo', () => {
  test('[D1] stands under demo/ and is well formed', () => {
    for (const { key, value } of records) {
      expect(isDemo(key)).toBe(true);
      const kind = kindOf(key) as keyof typeof schemas;
      expect(schemas[kind].safeParse(value).error).toBeUndefined();
    }
    expect(new Set(records.map(({ key }) => key)).size).toBe(records.length);
  });

  test('[D2] says that its machines and people are invented', () => {
    for (const { key, value } of records) {
      if (kindOf(key) !== 'reading') expect(JSON.stringify(value)).toMatch(/[Ii]nvented for the demo/);
    }
  });

  test('[D3] is the same each time', () => {
    expect(demoRecords()).toEqual(records);
  });

  test.each(walks)('[D4] %s is a whole walk with nothing open', (walk) => {
    const gathered = assemble(shelf, builtIn, walk);
    expect(gathered.ok).toBe(true);
    if (!gathered.ok) return;
    const { verdict, outcomes } = score(gathered.value.input);
    expect(
      outcomes
        .filter(({ open }) => open.length > 0)
        .map(({ state, open }) => [state.place, state.item.id, open]),
    ).toEqual([]);
    expect(shownCall(verdict)).not.toBe('open');
    expect(verdict.meanwhile === 'work' || verdict.meanwhile === 'light-work').toBe(true);
  });
});
