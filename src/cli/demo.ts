import { makeKey, parseKey, partsOf, type KeyParts, type RecordKey } from '../core/keys.ts';
import { assert, ok } from '../core/result.ts';
import type { RecordValue } from '../core/versions.ts';
import type { Unstamped } from '../files/envelope.ts';
import { gatherRecords, type Source } from '../files/gather.ts';
import { writeWalkFile } from '../files/write-walk-file.ts';
import { builtIn } from '../reference/built-in.ts';
import { demoRecords } from '../reference/demo.ts';

const idFields = new Set(['id', 'walk', 'machine']);

/** The same key outside of `demo/`, under ids that say what they are. */
function plainKey(key: RecordKey): RecordKey {
  const fields = Object.entries(partsOf(key)).filter(([name]) => name !== 'demo');
  const plain = fields.map(([name, part]) => [name, idFields.has(name) ? `demo-${part}` : part] as const);
  return makeKey(Object.fromEntries(plain) as KeyParts);
}

function plainValue(value: object): RecordValue {
  const fields: RecordValue = { ...value };
  const { machine } = fields;
  const isKey = typeof machine === 'string' && parseKey(machine) !== undefined;
  return isKey ? { ...fields, machine: plainKey(machine as RecordKey) } : fields;
}

function sourceOf(records: readonly Unstamped[]): Source<never> {
  const under = (prefix: string) => records.filter(({ key }) => key.startsWith(prefix));
  return {
    read: async (key) => ok(records.filter((record) => record.key === key)),
    list: async ({ prefix }) => ok(under(prefix).map((record) => ({ versions: [record] }))),
  };
}

/** The demo as a walk file that somebody could have written by hand, with the sheets and rules it leans on. */
export async function demoFile(): Promise<string> {
  const records = demoRecords().map(({ key, value }) => ({ key: plainKey(key), value: plainValue(value) }));
  const walks = records.map(({ key }) => key).filter((key) => parseKey(key)?.kind === 'walk');
  const gathered = await gatherRecords(walks, sourceOf(records), builtIn);
  assert(gathered.ok, 'the demo is in memory');
  return writeWalkFile(gathered.value);
}
