import { isFromNewer, valueIn } from '../../core/assemble.ts';
import type { RecordKey } from '../../core/keys.ts';
import type { FittedFact, Machine, Ordered, Side } from '../../core/machine.ts';
import { placeOfFact, type PartAt } from '../../core/part-facts.ts';
import type { FactName } from '../../core/part-kinds.ts';
import { err, ok, type Result } from '../../core/result.ts';
import { put, save } from '../actions/saved.ts';
import { store } from '../data/phone.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable } from '../../storage/store.ts';

type MachineKey = RecordKey<'machine'>;

/** The machine as it is now kept, or why it could not be. */
type Kept = Result<Machine, StorageError | NotEditable>;

let last: Promise<unknown> = Promise.resolve();

/** One change after the other, each on what the one before has left: two quick taps lose nothing. */
function change(
  key: MachineKey,
  drafts: readonly string[],
  make: (machine: Machine) => Machine,
): Promise<Kept> {
  const mine = last.then(async (): Promise<Kept> => {
    const found = await store.read(key);
    if (!found.ok) return found;
    const machine = valueIn<Machine>(found.value);
    if (machine) {
      const changed = make(machine);
      const saved = await save([put(key, changed)], drafts);
      return saved.ok ? ok(changed) : saved;
    }
    return err(isFromNewer(found.value) ? { kind: 'made-by-newer', key } : { kind: 'unknown', detail: key });
  });
  last = mine.catch(() => undefined);
  return mine;
}

type Entry = NonNullable<Machine['fitted']>[number];

function withFact(
  machine: Machine,
  name: FactName,
  at: PartAt,
  fact: FittedFact | undefined,
): readonly Entry[] {
  const place = placeOfFact(name, at, machine);
  const isIt = ({ side, component, number }: Entry): boolean =>
    side === place.side && component === place.component && number === place.number;
  const all = machine.fitted ?? [];
  const entry: Entry = all.find(isIt) ?? { ...place, facts: {} };
  const { [name]: _before, ...others } = entry.facts;
  const facts = fact ? { ...others, [name]: fact } : others;
  const rest = all.filter((each) => !isIt(each));
  return Object.keys(facts).length === 0 ? rest : [...rest, { ...entry, facts }];
}

/** Keeps a fact of a part on the machine's record, or with none takes it off. */
export const saveFact = (
  key: MachineKey,
  name: FactName,
  at: PartAt,
  fact: FittedFact | undefined,
  drafts: readonly string[],
): Promise<Kept> =>
  change(key, drafts, (machine) => ({ ...machine, fitted: [...withFact(machine, name, at, fact)] }));

/** The moulded size stands where the form of the machine has it. */
export const saveMoulding = (
  key: MachineKey,
  side: Side,
  size: string | undefined,
  drafts: readonly string[],
): Promise<Kept> =>
  change(key, drafts, (machine) => {
    const { size: _before, ...others } = machine[side] ?? {};
    return { ...machine, [side]: size === undefined ? others : { ...others, size } };
  });

export const savePin = (key: MachineKey, pin: string, drafts: readonly string[]): Promise<Kept> =>
  change(key, drafts, (machine) => ({ ...machine, pin }));

/** Changes what is chosen for a line; a field that is `undefined` is taken away. */
export const saveChoice = (key: MachineKey, choice: Ordered, drafts: readonly string[] = []): Promise<Kept> =>
  change(key, drafts, (machine) => {
    const all = machine.ordered ?? [];
    const before = all.find(({ line }) => line === choice.line);
    // Counts and what is left out were those of the walk before.
    const { count: _count, out: _out, ...lasting } = before ?? {};
    const kept = before?.walk === choice.walk ? before : lasting;
    const merged = Object.entries({ ...kept, ...choice }).filter(([, value]) => value !== undefined);
    const rest = all.filter(({ line }) => line !== choice.line);
    return { ...machine, ordered: [...rest, Object.fromEntries(merged) as Ordered] };
  });
