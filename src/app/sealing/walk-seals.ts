import { valueIn } from '../../core/assemble.ts';
import { isDemo, parseKey, partsOf, prefixOf, type RecordKey } from '../../core/keys.ts';
import { ok } from '../../core/result.ts';
import type { SealRecord } from '../../core/seal.ts';
import type { Walk } from '../../core/walk.ts';
import { readSeal, type ReadSeal } from '../../seal/seals.ts';
import type { Stored } from '../../storage/store.ts';
import { store } from '../data/phone.ts';

/** A seal as it lies on this phone. */
interface KeptSeal {
  readonly key: RecordKey;
  readonly jws: string;
}

/** The seals of a walk, unchecked. */
export async function keptSealsOf(walk: RecordKey<'walk'>): Promise<Stored<readonly KeptSeal[]>> {
  const rows = await store.list({
    prefix: prefixOf('seal', { owner: partsOf(walk).id, demo: isDemo(walk) }),
  });
  if (!rows.ok) return rows;
  return ok(
    rows.value.flatMap(({ key, versions }): readonly KeptSeal[] => {
      const seal = valueIn<SealRecord>(versions);
      return seal ? [{ key, jws: seal.jws }] : [];
    }),
  );
}

const pageSize = 200;

/** The finished walks of a machine; looks through the walks of all machines page by page. */
async function finishedWalks(machine: string): Promise<Stored<readonly RecordKey<'walk'>[]>> {
  const found: RecordKey<'walk'>[] = [];
  let after: string | undefined;
  do {
    const rows = await store.list({
      prefix: 'walk/',
      limit: pageSize,
      ...(after !== undefined && { after }),
    });
    if (!rows.ok) return rows;
    for (const { key, versions } of rows.value) {
      const walk = valueIn<Walk>(versions);
      if (walk?.machine === machine && walk.finishedAt && parseKey(key)?.kind === 'walk')
        found.push(key as RecordKey<'walk'>);
    }
    after = rows.value.length < pageSize ? undefined : rows.value.at(-1)?.key;
  } while (after !== undefined);
  return ok(found);
}

/** Every seal of a machine on this phone that holds. */
export async function sealsOfMachine(machine: string): Promise<Stored<readonly ReadSeal[]>> {
  const walks = await finishedWalks(machine);
  if (!walks.ok) return walks;
  const seals: ReadSeal[] = [];
  for (const walk of walks.value) {
    const kept = await keptSealsOf(walk);
    if (!kept.ok) return kept;
    for (const { jws } of kept.value) {
      const read = await readSeal(jws);
      // One of another machine, put under this one's walk, is no part of its chain.
      if (read.ok && read.value.payload.machine === machine) seals.push(read.value);
    }
  }
  return ok(seals);
}
