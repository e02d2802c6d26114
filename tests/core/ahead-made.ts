import type { BuiltIn, Shelf } from '../../src/core/assemble.ts';
import { assemble } from '../../src/core/assemble.ts';
import type { Id, RecordKey } from '../../src/core/keys.ts';
import type { Machine } from '../../src/core/machine.ts';
import { isPlanned, outlookOf, type Outlook, type OutlookOptions } from '../../src/core/outlook.ts';
import type { JobPlan } from '../../src/core/job-plan.ts';
import { assert } from '../../src/core/result.ts';
import { score } from '../../src/core/score.ts';
import { deviceIdOf, makeStamp } from '../../src/core/stamp.ts';
import type { RecordValue, Version } from '../../src/core/versions.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { startingCostsFor } from '../../src/reference/cost-classes.ts';
import { demoRecords } from '../../src/reference/demo.ts';

/** The demo machines as records by key, to be changed by a test. */
export type Records = Map<string, object>;

export const demoMap = (): Records =>
  new Map(demoRecords().map(({ key, value }) => [key as string, structuredClone(value)]));

export const mini = 'demo/walk/mini-last' as RecordKey;
export const steel = 'demo/walk/steel-last' as RecordKey;

const device = deviceIdOf(new Uint8Array(8));

/** A shelf of records, in the order given. */
export function shelfWith(records: Records): Shelf {
  const versions = new Map<string, readonly Version[]>(
    [...records].map(([key, value], at) => [
      key,
      [
        {
          key: key as RecordKey,
          value: value as RecordValue,
          stamp: makeStamp(at + 1, device),
          seen: {},
          by: 'nobody' as Id,
        },
      ],
    ]),
  );
  return {
    get: (key) => versions.get(key) ?? [],
    under: (prefix) =>
      [...versions].flatMap(([key, set]) =>
        key.startsWith(prefix) ? [[key as RecordKey, set] as const] : [],
      ),
  };
}

/** Changes fields of one record. */
export function change(records: Records, key: string, fields: object): Records {
  const value = records.get(key);
  assert(value, `no record ${key}`);
  return records.set(key, { ...value, ...fields });
}

export function outlookAt(
  records: Records,
  walk: RecordKey,
  options: Partial<OutlookOptions> = {},
  comes: BuiltIn = builtIn,
): Outlook {
  const shelf = shelfWith(records);
  const made = assemble(shelf, comes, walk);
  assert(made.ok, 'a walk');
  const { input } = made.value;
  const starting = startingCostsFor(input.machine as Machine);
  return outlookOf(shelf, comes, walk, made.value, score(input), { starting, ...options });
}

export function plannedOf({ plan }: Outlook): JobPlan {
  assert(isPlanned(plan), 'a plan');
  return plan;
}
