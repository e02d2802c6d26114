import { valueIn } from '../../core/assemble.ts';
import { prefixOf, type RecordKey } from '../../core/keys.ts';
import type { Machine } from '../../core/machine.ts';
import { ok } from '../../core/result.ts';
import type { Walk } from '../../core/walk.ts';
import type { Stored } from '../../storage/store.ts';
import { store } from './phone.ts';

export interface Listed<K extends 'machine' | 'walk', T> {
  readonly key: RecordKey<K>;
  readonly value: T;
}

/** How far back the first screen looks for walks to go on with. */
const recent = 200;

async function listed<K extends 'machine' | 'walk', T>(
  kind: K,
  limit: number,
  demo: boolean,
): Promise<Stored<readonly Listed<K, T>[]>> {
  const rows = await store.list({ prefix: prefixOf(kind, { demo }), reverse: true, limit });
  if (!rows.ok) return rows;
  return ok(
    rows.value.flatMap(({ key, versions }) => {
      const value = valueIn<T>(versions);
      return value === undefined ? [] : [{ key: key as RecordKey<K>, value }];
    }),
  );
}

export interface HomeLists {
  readonly machines: readonly Listed<'machine', Machine>[];
  readonly walks: readonly Listed<'walk', Walk>[];
  readonly hasDemo: boolean;
}

/** What the first screen shows, the newest first. */
export async function homeLists(): Promise<Stored<HomeLists>> {
  const [machines, demoMachines, walks, demoWalks] = await Promise.all([
    listed<'machine', Machine>('machine', recent, false),
    listed<'machine', Machine>('machine', recent, true),
    listed<'walk', Walk>('walk', recent, false),
    listed<'walk', Walk>('walk', recent, true),
  ]);
  if (!machines.ok) return machines;
  if (!demoMachines.ok) return demoMachines;
  if (!walks.ok) return walks;
  if (!demoWalks.ok) return demoWalks;
  return ok({
    machines: [...machines.value, ...demoMachines.value],
    walks: [...walks.value, ...demoWalks.value].filter(({ value }) => value.finishedAt === undefined),
    hasDemo: demoMachines.value.length > 0,
  });
}
