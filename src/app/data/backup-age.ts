import { valueIn } from '../../core/assemble.ts';
import { ok } from '../../core/result.ts';
import { counterOf } from '../../core/stamp.ts';
import type { Walk } from '../../core/walk.ts';
import type { Stored } from '../../storage/store.ts';
import { utcMinutes } from '../../words/calendar.ts';
import type { ObservedAt } from '../../words/dates.ts';
import { useLive, valueOf } from './live.ts';
import { observedNow } from './moment.ts';
import { store } from './phone.ts';

export const backupPreference = 'backup';

export interface BackupAge {
  readonly last: ObservedAt | undefined;
  /** Hours since the oldest work that is on this phone only; 0 when there is none. */
  readonly aloneHours: number;
}

/** From here on a person is asked to back up, and from there on urged to. */
export const askAfterHours = 24;
export const urgeAfterHours = 72;

const recent = 200;

interface Kept {
  readonly at: ObservedAt;
  readonly counter: number;
}

const isKept = (value: unknown): value is Kept =>
  typeof value === 'object' && value !== null && 'at' in value && 'counter' in value;

/** Minutes since 1970 of when the oldest walk was begun, or changed again, that no backup holds. */
function aloneSince(
  walks: readonly { readonly walk: Walk; readonly counter: number }[],
  kept: Kept | undefined,
) {
  const times = walks.flatMap(({ walk, counter }) => {
    if (kept && counter <= kept.counter) return [];
    const begun = walk.startedAt && utcMinutes(walk.startedAt.utc);
    const backedUp = kept && utcMinutes(kept.at.utc);
    return begun === undefined ? [] : [Math.max(begun, backedUp ?? begun)];
  });
  return times.length === 0 ? undefined : Math.min(...times);
}

/** How old the last backup is, and how old the oldest work that it does not hold. */
export async function backupAge(): Promise<Stored<BackupAge>> {
  const stored = await store.preferences.get(backupPreference);
  if (!stored.ok) return stored;
  const kept = isKept(stored.value) ? stored.value : undefined;
  const rows = await store.list({ prefix: 'walk/', reverse: true, limit: recent });
  if (!rows.ok) return rows;
  const walks = rows.value.flatMap(({ versions }) => {
    const walk = valueIn<Walk>(versions);
    const counter = Math.max(...versions.map(({ stamp }) => counterOf(stamp)));
    return walk ? [{ walk, counter }] : [];
  });
  const since = aloneSince(walks, kept);
  const now = utcMinutes(observedNow().utc) ?? 0;
  return ok({ last: kept?.at, aloneHours: since === undefined ? 0 : Math.max(0, now - since) / 60 });
}

/** The same, asked again as walks change; `turn` asks again after a backup. */
export const useBackupAge = (turn = 0): BackupAge | undefined =>
  valueOf(useLive(`backup ${turn}`, ['walk/'], backupAge));
