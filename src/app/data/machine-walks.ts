import { assemble, valueIn } from '../../core/assemble.ts';
import type { Call } from '../../core/calls.ts';
import { isDemo, parseKey, prefixOf, type RecordKey } from '../../core/keys.ts';
import type { Machine } from '../../core/machine.ts';
import { ok } from '../../core/result.ts';
import { score } from '../../core/score.ts';
import { compareBytewise } from '../../core/stamp.ts';
import { shownCall } from '../../core/verdict.ts';
import type { Walk } from '../../core/walk.ts';
import type { Stored } from '../../storage/store.ts';
import { loadBuiltIn } from './built-in.ts';
import { store } from './phone.ts';
import { shelfFor } from './walk-model.ts';

export interface MachineWalk {
  readonly key: RecordKey<'walk'>;
  readonly walk: Walk;
  /** Of a finished walk, where it can be worked out. */
  readonly call: Call | 'open' | undefined;
}

const pageSize = 200;
const shownWalks = 20;

const newestFirst = (a: MachineWalk, b: MachineWalk): number =>
  compareBytewise(b.walk.startedAt?.utc ?? '', a.walk.startedAt?.utc ?? '');

/** The newest walks of a machine; looks through the walks of all machines page by page. */
export async function walksOf(machine: RecordKey<'machine'>): Promise<Stored<readonly MachineWalk[]>> {
  const prefix = prefixOf('walk', { demo: isDemo(machine) });
  const found: MachineWalk[] = [];
  let after: string | undefined;
  do {
    const page = { prefix, limit: pageSize, reverse: true, ...(after !== undefined && { after }) };
    const rows = await store.list(page);
    if (!rows.ok) return rows;
    for (const { key, versions } of rows.value) {
      const walk = valueIn<Walk>(versions);
      if (walk?.machine === machine) found.push({ key: key as RecordKey<'walk'>, walk, call: undefined });
    }
    after = rows.value.length < pageSize ? undefined : rows.value.at(-1)?.key;
  } while (after !== undefined && found.length < shownWalks);
  return withCalls(machine, found.sort(newestFirst).slice(0, shownWalks));
}

/** Keys of every sheet and rule set on this phone: a call may lean on any of them. */
async function bookKeys(): Promise<Stored<readonly RecordKey[]>> {
  const keys: RecordKey[] = [];
  for (const prefix of ['limits/', 'rules/']) {
    const rows = await store.list({ prefix });
    if (!rows.ok) return rows;
    keys.push(...rows.value.map(({ key }) => key));
  }
  return ok(keys);
}

async function withCalls(
  machineKey: RecordKey<'machine'>,
  walks: readonly MachineWalk[],
): Promise<Stored<readonly MachineWalk[]>> {
  const machine = await store.read(machineKey);
  const books = await bookKeys();
  if (!machine.ok || !books.ok) return ok(walks);
  const named = namedBooks(valueIn<Machine>(machine.value));
  const from = [machineKey, ...books.value, ...named];
  return ok(await Promise.all(walks.map((each) => withCall(each, from))));
}

/** Books named by a machine, also those that come with the app and could be replaced by one of the phone's own. */
const namedBooks = (machine: Machine | undefined): readonly RecordKey[] =>
  [machine?.sheet, machine?.rules, machine?.left?.sheet, machine?.right?.sheet].flatMap((key) =>
    key !== undefined && parseKey(key) ? [key as RecordKey] : [],
  );

async function withCall(each: MachineWalk, from: readonly RecordKey[]): Promise<MachineWalk> {
  if (each.walk.finishedAt === undefined) return each;
  const call = await store.derive({
    name: `call/${each.key}`,
    core: __BUILD_ID__,
    from: [each.key, ...from],
    compute: () => callOf(each.key),
  });
  return call.ok ? { ...each, call: call.value ?? undefined } : each;
}

/** The machine's call by a walk; null where it cannot be worked out, since only that can be kept. */
async function callOf(key: RecordKey<'walk'>): Promise<Stored<Call | 'open' | null>> {
  const shelf = await shelfFor(key);
  if (!shelf.ok) return shelf;
  const assembled = assemble(shelf.value, await loadBuiltIn(), key);
  return ok(assembled.ok ? shownCall(score(assembled.value.input).verdict) : null);
}
