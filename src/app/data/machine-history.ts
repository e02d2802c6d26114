import type { Outlook } from '../../core/outlook.ts';
import { isDemo, type RecordKey } from '../../core/keys.ts';
import { ok } from '../../core/result.ts';
import type { Stored } from '../../storage/store.ts';
import { valueIn } from '../../core/assemble.ts';
import type { Walk } from '../../core/walk.ts';
import { loadOutlook } from './outlook.ts';
import { store } from './phone.ts';
import { loadWalk, type WalkModel } from './walk-model.ts';

/** A machine at its last finished walk, with what lies ahead of it. */
export interface MachineHistory {
  readonly model: WalkModel;
  readonly outlook: Outlook;
}

/** Null for a machine without a finished walk that can be read. */
export async function machineHistory(machine: RecordKey<'machine'>): Promise<Stored<MachineHistory | null>> {
  const rows = await store.list({ prefix: isDemo(machine) ? 'demo/walk/' : 'walk/' });
  if (!rows.ok) return rows;
  const walks = rows.value.flatMap(({ key, versions }) => {
    const walk = valueIn<Walk>(versions);
    const isOne = walk?.machine === machine && walk.finishedAt !== undefined;
    return isOne ? [{ key: key as RecordKey<'walk'>, at: walk.startedAt?.utc ?? '' }] : [];
  });
  const last = walks.reduce<(typeof walks)[number] | undefined>(
    (latest, each) => (latest && latest.at > each.at ? latest : each),
    undefined,
  );
  const model = last && (await loadWalk(last.key));
  if (!model?.ok) return ok(null);
  const outlook = await loadOutlook(model.value);
  return outlook.ok ? ok({ model: model.value, outlook: outlook.value }) : outlook;
}
