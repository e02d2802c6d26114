import { valueIn } from '../../core/assemble.ts';
import { isDemo, partsOf, prefixOf, type RecordKey } from '../../core/keys.ts';
import type { Machine } from '../../core/machine.ts';
import { ok } from '../../core/result.ts';
import type { Walk } from '../../core/walk.ts';
import { writeWalkFile } from '../../files/write-walk-file.ts';
import { localDate } from '../../words/calendar.ts';
import { files as words } from '../../words/en/files.ts';
import { loadBuiltIn } from '../data/built-in.ts';
import { askToTap, tell } from '../data/notice.ts';
import { store } from '../data/phone.ts';
import { notSavedLine } from '../data/saving.ts';
import type { Stored } from '../../storage/store.ts';
import { fileNameOf, saveFile, shareFile, type ReadyFile } from '../data/save-file.ts';

const json = 'application/json';
const zip = 'application/zip';

/** By the share sheet, or as a file that is kept. */
export type Way = 'share' | 'save';

/** Hands a file over, and once more where the phone wants another tap for it; `then` follows once it is out. */
export async function hand(
  file: ReadyFile,
  said: string,
  then?: () => unknown,
  way: Way = 'save',
): Promise<void> {
  const saved = await (way === 'share' ? shareFile : saveFile)(file);
  if (saved === 'tap-again') askToTap(words.tapAgain, words.share, () => hand(file, said, then, way));
  if (saved !== 'saved') return;
  tell(said);
  then?.();
}

/** Records, and all that they lean on, as a walk file, or with the pictures that they name as a bundle. */
export async function fileOf(keys: readonly RecordKey[], name: string): Promise<Stored<ReadyFile>> {
  // What seals name is found with their own file; nothing else that a phone shows needs it.
  const { gatherRecords } = await import('../../files/gather.ts');
  const gathered = await gatherRecords(keys, store, await loadBuiltIn());
  if (!gathered.ok) return gathered;
  const document = writeWalkFile(gathered.value);
  const photos = gathered.value.flatMap(({ key, value }) => {
    const parts = partsOf(key);
    return parts.kind === 'photo' && value ? [parts.hash] : [];
  });
  if (photos.length === 0) return ok({ name: `${fileNameOf(name)}.json`, type: json, parts: [document] });
  const { bundleOf } = await import('../handover/bundle.ts');
  return ok({ name: `${fileNameOf(name)}.zip`, type: zip, parts: await bundleOf('walk', document, photos) });
}

/** Writes records, and all that they lean on, as one file. */
export async function exportRecords(
  keys: readonly RecordKey[],
  name: string,
  way: Way = 'save',
): Promise<void> {
  if (keys.every(isDemo)) return tell(words.demoLeftOut);
  const file = await fileOf(keys, name);
  if (!file.ok) return tell(notSavedLine(file.error));
  await hand(file.value, words.written(file.value.name), undefined, way);
}

/** What a walk's files are called: machine and day. */
export async function walkFileName(key: RecordKey<'walk'>): Promise<string> {
  const found = await store.read(key);
  const walk = found.ok ? valueIn<Walk>(found.value) : undefined;
  const machine = walk && (await store.read(walk.machine as RecordKey));
  const name = machine?.ok ? valueIn<Machine>(machine.value)?.name : undefined;
  const at = walk?.startedAt;
  const day = at && localDate(at.utc, at.offsetMinutes);
  return [words.walkName, name, day].filter(Boolean).join(' ');
}

/** Writes one walk with its machine, sheets, rules, pictures and seals. */
export const exportWalk = async (key: RecordKey<'walk'>, way: Way = 'save'): Promise<void> =>
  exportRecords([key], await walkFileName(key), way);

const pageSize = 200;

/** The keys of all walks of a machine; looks through the walks of all machines page by page. */
async function walkKeysOf(machine: RecordKey<'machine'>): Promise<readonly RecordKey[]> {
  const prefix = prefixOf('walk', { demo: isDemo(machine) });
  const keys: RecordKey[] = [];
  let after: string | undefined;
  do {
    const rows = await store.list({ prefix, limit: pageSize, ...(after !== undefined && { after }) });
    if (!rows.ok) return keys;
    for (const row of rows.value) if (valueIn<Walk>(row.versions)?.machine === machine) keys.push(row.key);
    after = rows.value.length < pageSize ? undefined : rows.value.at(-1)?.key;
  } while (after !== undefined);
  return keys;
}

/** Writes a machine with all its walks and the work done to it. */
export const exportMachine = async (key: RecordKey<'machine'>, name: string): Promise<void> =>
  exportRecords([key, ...(await walkKeysOf(key))], name);
