import { describe, expect, test } from 'vitest';
import { keySchema, kindOf } from '../../src/core/keys.ts';
import { limitSheetSchema } from '../../src/core/limits.ts';
import { machineSchema } from '../../src/core/machine.ts';
import { readingSchema } from '../../src/core/readings.ts';
import { ruleSetSchema } from '../../src/core/rules.ts';
import { score, type ItemOutcome } from '../../src/core/score.ts';
import type { ScoreInput } from '../../src/core/states.ts';
import { shownCall } from '../../src/core/verdict.ts';
import { walkSchema } from '../../src/core/walk.ts';
import { expectations, inputOf, recordsOf, type ExpectedItem } from './walk-file.ts';

const schemas = {
  limits: limitSheetSchema,
  machine: machineSchema,
  reading: readingSchema,
  rules: ruleSetSchema,
  walk: walkSchema,
};

const openOf = (outcome: ItemOutcome): readonly string[] => outcome.open.map(({ kind }) => kind);
const nameOf = ({ place, item }: { place: string; item: string }): string => `${place} ${item}`;
const outcomesOf = (input: ScoreInput): ReadonlyMap<string, ItemOutcome> =>
  new Map(score(input).outcomes.map((each) => [`${each.state.place} ${each.state.item.id}`, each]));

function compare(outcome: ItemOutcome | undefined, expected: Omit<ExpectedItem, 'place' | 'item'>): void {
  expect(outcome?.atLeast).toBe(expected.call);
  expect(outcome?.meanwhile).toBe(expected.meanwhile);
  expect(outcome && openOf(outcome)).toEqual(expected.open);
  if (expected.percent === undefined) expect(outcome?.state.wear).toBeUndefined();
  else expect(outcome?.state.wear?.percent).toBeCloseTo(expected.percent, 2);
}

describe.each(Object.entries(expectations))('[N4] the whole walk %s', (name, expected) => {
  const input = inputOf(name);
  const outcomes = outcomesOf(input);

  test('is made of records of ours', () => {
    for (const { key, value } of recordsOf(name)) {
      expect(keySchema.safeParse(key).success).toBe(true);
      expect(schemas[kindOf(key) as keyof typeof schemas].safeParse(value).error).toBeUndefined();
    }
  });

  test.each(expected.items.map((each) => [nameOf(each), each.source ?? 'passed', each] as const))(
    '%s: %s',
    (each, _, item) => compare(outcomes.get(each), item),
  );

  test('every other item was looked at and comes to what the set says of it', () => {
    const listed = new Set(expected.items.map(nameOf));
    const others = [...outcomes].filter(([each]) => !listed.has(each));
    expect(others.length).toBeGreaterThan(40);
    for (const [, outcome] of others) compare(outcome, expected.others);
  });

  test('the machine', () => {
    const { verdict } = score(input);
    expect(shownCall(verdict)).toBe(expected.verdict.call);
    expect(verdict.meanwhile).toBe(expected.verdict.meanwhile);
    expect(verdict.settled).toBe(expected.verdict.settled);
  });
});

test('[N4] the rubber walks differ in rules and sheet, not in what was read', () => {
  const read = (name: string) =>
    recordsOf(name)
      .filter(({ key }) => kindOf(key) === 'reading')
      .map(({ key, value }) => [key.split('/').slice(2).join('/'), value]);
  expect(read('rubber-second-maker')).toEqual(read('rubber-first-maker'));
  expect(read('rubber-third-maker')).toEqual(read('rubber-first-maker'));
});

const underLoad = (load: 'light' | 'heavy' | undefined): ItemOutcome | undefined => {
  const input = inputOf('steel');
  const { load: _, ...walk } = input.walk;
  return outcomesOf({ ...input, walk: load ? { ...walk, load } : walk }).get('left.track bushing-od');
};

describe('[N2] the bushing of the steel walk by load (service page 56320)', () => {
  test('[CV-09] light shock: 57.4 on 60.70 → 51.6 mm is 36.26 %', () => {
    expect(underLoad('light')?.state.wear?.percent).toBeCloseTo(36.26, 2);
  });

  test('[CV-09] heavy shock: 57.4 on 60.70 → 54.1 mm is 50 %', () => {
    expect(underLoad('heavy')?.state.wear?.percent).toBeCloseTo(50, 2);
  });

  test('[CV-09] shock not known: the stricter limit, and says so', () => {
    expect(underLoad(undefined)?.state.wear?.percent).toBeCloseTo(50, 2);
    expect(underLoad(undefined)?.notes.map(({ kind }) => kind)).toContain('load-assumed');
  });
});
