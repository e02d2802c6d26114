import type { BuiltIn } from '../core/assemble.ts';
import { isDemo, kindOf, partsOf, parseKey, prefixOf, type Kind, type RecordKey } from '../core/keys.ts';
import { ok, type Result } from '../core/result.ts';
import type { RecordValue } from '../core/versions.ts';
import { claimedPayload } from '../seal/claimed.ts';
import type { FileRecord } from './envelope.ts';

/** Where the records to be exported are; the phone's store is one. */
export interface Source<E> {
  readonly read: (key: RecordKey) => Promise<Result<readonly FileRecord[], E>>;
  readonly list: (page: {
    readonly prefix: string;
  }) => Promise<Result<readonly { readonly versions: readonly FileRecord[] }[], E>>;
}

type Books = Pick<BuiltIn, 'limits' | 'rules' | 'prices' | 'rates'>;

/** The records found so far, by key. */
type Found = Map<RecordKey, readonly FileRecord[]>;

/** The fields that name another record, in machines, walks, work and sheets. */
function namedIn(value: RecordValue): readonly unknown[] {
  const fields = (inner: unknown, ...names: readonly string[]): readonly unknown[] =>
    typeof inner === 'object' && inner !== null
      ? names.map((name) => (inner as Readonly<Record<string, unknown>>)[name])
      : [];
  return [
    ...fields(value, 'machine', 'sheet', 'rules', 'prices', 'rates'),
    ...['left', 'right'].flatMap((side) => fields(value[side], 'sheet')),
    ...['sheet', 'rules'].flatMap((pin) => fields(value[pin], 'key')),
  ];
}

const leanedOn: ReadonlySet<Kind> = new Set(['machine', 'limits', 'rules', 'price', 'rate', 'person']);

/** The hand-out that a return or a contract is held against, and the contract that a walk belongs to. */
const rentalNames = ({ handOut, contract }: RecordValue): readonly RecordKey[] => [
  ...(isNameOf('walk', handOut) ? [handOut] : []),
  ...(isNameOf('contract', contract) ? [contract] : []),
];

const isNameOf = (kind: Kind, name: unknown): name is RecordKey =>
  typeof name === 'string' && parseKey(name)?.kind === kind;

/** The people whom a seal names; whether it holds is for whoever checks it. */
const signersOf = ({ key, value }: FileRecord): readonly string[] =>
  kindOf(key) === 'seal' && typeof value?.['jws'] === 'string'
    ? (claimedPayload(value['jws'])?.people.map((person) => person.key) ?? [])
    : [];

/** The records that these lean on: machine, sheets, sets, prices and rates, hand-out and contract, and who signed. */
function refersTo(records: readonly FileRecord[]): readonly RecordKey[] {
  const names = records.flatMap((record) => [
    ...(record.value ? namedIn(record.value) : []),
    ...signersOf(record),
  ]);
  const known = names.filter((name): name is RecordKey => {
    const parts = typeof name === 'string' ? parseKey(name) : undefined;
    return parts !== undefined && leanedOn.has(parts.kind);
  });
  return [...known, ...records.flatMap(({ value }) => (value ? rentalNames(value) : []))];
}

function builtInRecord(key: RecordKey, { limits, rules, prices, rates }: Books): readonly FileRecord[] {
  const all: Readonly<Record<string, object>>[] = [limits, rules, prices, rates];
  const list = all.find((each) => Object.hasOwn(each, key));
  const value = list?.[key];
  return value ? [{ key, value: value as RecordValue }] : [];
}

/** One run of gathering. */
interface Gathering<E> {
  readonly source: Source<E>;
  readonly builtIn: Books;
  readonly found: Found;
}

/** Takes records and, from there on, all that they lean on; what is nowhere is left out. */
async function take<E>(
  records: readonly FileRecord[],
  gathering: Gathering<E>,
): Promise<Result<undefined, E>> {
  const [first] = records;
  if (!first) return ok();
  gathering.found.set(first.key, records);
  for (const other of refersTo(records)) {
    const added = await add(other, gathering);
    if (!added.ok) return added;
  }
  return ok();
}

async function add<E>(key: RecordKey, gathering: Gathering<E>): Promise<Result<undefined, E>> {
  if (gathering.found.has(key) || isDemo(key)) return ok();
  const read = await gathering.source.read(key);
  if (!read.ok) return read;
  return take(read.value.length > 0 ? read.value : builtInRecord(key, gathering.builtIn), gathering);
}

/** Adds what stands under a walk or machine: its readings, pictures and seals, or its work and holds. */
async function addUnder<E>(prefix: string, gathering: Gathering<E>): Promise<Result<undefined, E>> {
  const rows = await gathering.source.list({ prefix });
  if (!rows.ok) return rows;
  for (const { versions } of rows.value) {
    const added = await take(versions, gathering);
    if (!added.ok) return added;
  }
  return ok();
}

/** Adds the tracks that are meant for machines which are asked for themselves: a walk goes without them. */
async function addOptions<E>(
  keys: readonly RecordKey[],
  gathering: Gathering<E>,
): Promise<Result<undefined, E>> {
  const machines = new Set<unknown>(keys.filter((key) => kindOf(key) === 'machine' && !isDemo(key)));
  if (machines.size === 0) return ok();
  const rows = await gathering.source.list({ prefix: prefixOf('option') });
  if (!rows.ok) return rows;
  for (const { versions } of rows.value) {
    const isMeant = versions.some(({ value }) => machines.has(value?.['machine']));
    const added = isMeant ? await take(versions, gathering) : ok();
    if (!added.ok) return added;
  }
  return ok();
}

/**
 * All records that some walks, machines, limit sheets or rule sets need to be read elsewhere: readings, work, holds,
 * the sheets, sets, prices and rates they name, those that come with the app too; with a return its hand-out walk and
 * contract, and all that these need; with a machine the options meant for it. Demo records are left out.
 */
export async function gatherRecords<E>(
  keys: readonly RecordKey[],
  source: Source<E>,
  builtIn: Books,
): Promise<Result<readonly FileRecord[], E>> {
  const gathering: Gathering<E> = { source, builtIn, found: new Map() };
  for (const key of keys) {
    const added = await add(key, gathering);
    if (!added.ok) return added;
  }
  for (const key of [...gathering.found.keys()]) {
    for (const prefix of belongingTo(key)) {
      const added = await addUnder(prefix, gathering);
      if (!added.ok) return added;
    }
  }
  const added = await addOptions(keys, gathering);
  return added.ok ? ok([...gathering.found.values()].flat()) : added;
}

/** How the keys of what belongs to a record begin. */
function belongingTo(key: RecordKey): readonly string[] {
  const parts = partsOf(key);
  const kinds =
    parts.kind === 'walk'
      ? (['reading', 'photo', 'seal'] as const)
      : parts.kind === 'machine'
        ? (['work', 'hold'] as const)
        : [];
  return 'id' in parts ? kinds.map((kind) => prefixOf(kind, { owner: parts.id })) : [];
}
