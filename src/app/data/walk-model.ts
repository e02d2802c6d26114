import { assemble, valueIn, type Assembled, type AssembleError, type Shelf } from '../../core/assemble.ts';
import { isDemo, parseKey, prefixOf, type KeyParts, type RecordKey } from '../../core/keys.ts';
import type { Posture } from '../../core/limits.ts';
import type { Machine } from '../../core/machine.ts';
import { byState, progressOf, type OutcomeMap, type Progress } from '../../core/progress.ts';
import { ok, type Result } from '../../core/result.ts';
import { score, type Scored } from '../../core/score.ts';
import type { PlacedReading } from '../../core/states.ts';
import { stepsOf, type Step } from '../../core/steps.ts';
import { isRental, type Walk } from '../../core/walk.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { Rental } from '../rental/rental-model.ts';
import { loadBuiltIn } from './built-in.ts';
import { loadRental } from './load-rental.ts';
import { store } from './phone.ts';
import { gather, shelfOf, take, type Rows } from './shelf-rows.ts';

/** A walk as its screens show it, all worked out from records. */
export interface WalkModel {
  readonly key: RecordKey<'walk'>;
  readonly walk: Walk;
  readonly machine: Machine;
  readonly assembled: Assembled;
  readonly scored: Scored;
  readonly outcomes: OutcomeMap;
  readonly steps: readonly Step[];
  readonly progress: ReadonlyMap<string, Progress>;
  /** Readings of the last finished walk of the machine; none when there is none on this phone. */
  readonly last: readonly PlacedReading[];
  /** Of a hand-out or a return. */
  readonly rental?: Rental;
}

export type WalkError = StorageError | AssembleError;

const sheetKeysOf = (
  walk: Walk | undefined,
  machine: Machine | undefined,
): readonly (string | undefined)[] => [
  walk?.sheet?.key,
  machine?.sheet,
  machine?.left?.sheet,
  machine?.right?.sheet,
];

/** Reads a walk with all that scoring it needs. */
export async function shelfFor(key: RecordKey<'walk'>): Promise<Result<Shelf, StorageError>> {
  const rows: Rows = new Map();
  const { id } = parseKey(key) as KeyParts<'walk'>;
  const demo = isDemo(key);
  let error = await take(rows, [key]);
  const walk = valueIn<Walk>(rows.get(key) ?? []);
  error ??= await take(rows, [walk?.machine]);
  const machine = valueIn<Machine>(rows.get(walk?.machine ?? '') ?? []);
  const sheetKeys = sheetKeysOf(walk, machine);
  error ??= await take(rows, sheetKeys);
  const sheets = sheetKeys.map((each) => valueIn<{ rules?: string }>(rows.get(each ?? '') ?? []));
  error ??= await take(rows, [walk?.rules?.key, machine?.rules, ...sheets.map((sheet) => sheet?.rules)]);
  error ??= await gather(rows, store.list({ prefix: prefixOf('reading', { owner: id, demo }) }));
  const machineParts = parseKey(walk?.machine ?? '');
  if (machineParts?.kind === 'machine') {
    error ??= await gather(rows, store.list({ prefix: prefixOf('work', { owner: machineParts.id, demo }) }));
  }
  return error === undefined ? ok(shelfOf(rows)) : { ok: false, error };
}

/** How many walks back the last one of a machine is looked for. */
const lookBack = 500;

const lastOf = new Map<string, readonly PlacedReading[]>();

/** The readings of the machine's finished walk before this one; looked up once for each walk. */
async function lastReadings(key: RecordKey<'walk'>, machine: string): Promise<readonly PlacedReading[]> {
  const known = lastOf.get(key);
  if (known) return known;
  const answer = await store.list({
    prefix: prefixOf('walk', { demo: isDemo(key) }),
    reverse: true,
    limit: lookBack,
  });
  const rows = answer.ok ? answer.value : [];
  // Ids written by hand do not sort by time, so the newest is found by what the walks say themselves.
  const [last] = rows
    .flatMap((row) => {
      const walk = valueIn<Walk>(row.versions);
      const counts = walk?.machine === machine && walk.finishedAt !== undefined && row.key !== key;
      return counts ? [{ key: row.key, on: walk.finishedAt?.utc ?? '' }] : [];
    })
    .sort((a, b) => (a.on < b.on ? 1 : -1));
  const shelf = last && (await shelfFor(last.key as RecordKey<'walk'>));
  const builtIn = await loadBuiltIn();
  const before = shelf?.ok ? assemble(shelf.value, builtIn, last?.key ?? '') : undefined;
  const readings = before?.ok ? before.value.input.readings : [];
  lastOf.set(key, readings);
  return readings;
}

/** A sheet that reads sag on the ground keeps a short walk on the ground. */
function postureOf(assembled: Assembled): Posture {
  const { walk, sheets } = assembled.input;
  if (walk.depth === 'short') return 'ground';
  return sheets.left?.sag[0]?.posture ?? sheets.right?.sag[0]?.posture ?? 'ground';
}

/** Loads and scores a walk. */
export async function loadWalk(key: RecordKey<'walk'>): Promise<Result<WalkModel, WalkError>> {
  const shelf = await shelfFor(key);
  if (!shelf.ok) return shelf;
  const assembled = assemble(shelf.value, await loadBuiltIn(), key);
  if (!assembled.ok) return assembled;
  const { input, machineKey } = assembled.value;
  const scored = score(input);
  const outcomes = byState(scored.outcomes);
  const steps = stepsOf(input.machine, input.walk, postureOf(assembled.value));
  const model = {
    key,
    walk: input.walk,
    machine: input.machine,
    assembled: assembled.value,
    scored,
    outcomes,
    steps,
    progress: new Map(steps.map((step) => [step.id, progressOf(step, outcomes, input.readings)])),
    last: await lastReadings(key, machineKey),
  };
  // Without its file a rental walk is a walk like others, and loses nothing.
  const rental = isRental(input.walk.purpose) ? await loadRental().catch(() => undefined) : undefined;
  return ok(rental ? await rental.modelOf(model) : model);
}
