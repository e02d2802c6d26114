import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { RecordKey } from '../../src/core/keys.ts';
import type { Machine } from '../../src/core/machine.ts';
import { displayed } from '../../src/core/versions.ts';
import { writeBackup } from '../../src/files/write-backup.ts';
import { writeWalkFile } from '../../src/files/write-walk-file.ts';
import { importFile } from '../../src/app/actions/import.ts';
import { machineDraftKey, removeMachine, saveMachine } from '../../src/app/actions/machine.ts';
import { put, save } from '../../src/app/actions/saved.ts';
import { bookDraftKey, copyBook, saveBook } from '../../src/app/actions/books.ts';
import { saveWork } from '../../src/app/actions/work.ts';
import { backupAge, backupPreference } from '../../src/app/data/backup-age.ts';
import { newId } from '../../src/app/data/moment.ts';
import { store } from '../../src/app/data/phone.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { usualShape } from '../../src/app/data/usual-shape.ts';

const machine: Machine = {
  v: 1,
  name: 'Yard 7',
  kind: 'excavator',
  shape: usualShape('excavator', 'steel'),
};
const keyOf = (text: string): RecordKey<'machine'> => text as RecordKey<'machine'>;

async function valueAt(key: RecordKey): Promise<unknown> {
  const found = await store.read(key);
  return found.ok ? displayed(found.value)?.value : found.error;
}

const working = () => ({ stop: new AbortController().signal, onProgress: () => undefined });
const bytesOf = (text: string): Blob => new Blob([text]);
const fromStore = async (): Promise<string> => {
  let text = '';
  await writeBackup(store.exportAll(), (part) => void (text += part));
  return text;
};

beforeEach(async () => {
  const rows = await store.list({ prefix: '' });
  if (rows.ok) await save(rows.value.map(({ key }) => ({ key, removed: true })));
});

describe('saving a form', () => {
  it('[A13] makes the record and drops the draft in one', async () => {
    const key = keyOf(`machine/${newId()}`);
    await store.drafts.put(machineDraftKey(undefined), { name: 'Yard' });
    expect(await saveMachine(key, machine, machineDraftKey(undefined))).toEqual({
      ok: true,
      value: undefined,
    });
    expect(await valueAt(key)).toEqual(machine);
    expect(await store.drafts.get(machineDraftKey(undefined))).toEqual({ ok: true, value: undefined });
  });

  it('[A13] work on both sides is two records, and saving twice makes no third', async () => {
    const key = keyOf('machine/both');
    const work = (['left', 'right'] as const).map((side) => ({
      id: newId(),
      value: { v: 1 as const, kind: 'fitted' as const, component: 'track', side },
    }));
    await saveWork(key, work);
    await saveWork(key, work);
    const rows = await store.list({ prefix: 'work/both/' });
    expect(rows.ok && rows.value.map(({ versions }) => versions.length)).toEqual([1, 1]);
  });
});

describe('removing', () => {
  it('[A14] a machine goes with its work, and comes back with it by undo', async () => {
    const key = keyOf('machine/gone');
    const work = 'work/gone/w1' as RecordKey;
    await save([put(key, machine), put(work, { v: 1, kind: 'turned' })]);
    const removed = await removeMachine(key);
    expect([await valueAt(key), await valueAt(work)]).toEqual([undefined, undefined]);
    if (removed.ok) await removed.value();
    expect([await valueAt(key), await valueAt(work)]).toEqual([machine, { v: 1, kind: 'turned' }]);
  });
});

describe('copying', () => {
  const sheet = { v: 1 as const, name: 'Maker', items: [], sag: [], version: '2026-1' };

  it('[A15] a copy remembers which version of which sheet it came from', async () => {
    const copied = await copyBook('limits', 'limits/starting-x' as RecordKey<'limits'>, sheet, undefined);
    expect(copied.ok && (await valueAt(copied.value))).toEqual({
      v: 1,
      name: 'copy of Maker',
      items: [],
      sag: [],
      origin: { key: 'limits/starting-x', version: '2026-1' },
    });
  });

  it('[A15] and of an own one its stamp', async () => {
    const key = 'limits/own' as RecordKey<'limits'>;
    const { version: _version, ...own } = sheet;
    await saveBook(key, own, bookDraftKey(key));
    const found = await store.read(key);
    const stamp = found.ok ? displayed(found.value)?.stamp : undefined;
    const copied = await copyBook('limits', key, own, stamp);
    expect(copied.ok && (await valueAt(copied.value))).toMatchObject({ origin: { key, version: stamp } });
  });
});

describe('files in', () => {
  const walkFile = () => writeWalkFile([{ key: keyOf('machine/hand'), value: { ...machine } }]);

  it('[A16] a file written by hand is taken once, however often it is chosen', async () => {
    const first = await importFile(bytesOf(walkFile()), working());
    const second = await importFile(bytesOf(walkFile()), working());
    expect([first, second]).toMatchObject([
      { kind: 'done', added: 1, known: 0 },
      { kind: 'done', added: 0, known: 1 },
    ]);
  });

  it('[A16] a backup brings everything back but what is here already', async () => {
    await save([put(keyOf('machine/a'), machine), put(keyOf('demo/machine/x'), machine)]);
    const text = await fromStore();
    expect(text).not.toContain('demo/');
    expect(await importFile(bytesOf(text), working())).toMatchObject({ kind: 'done', added: 0, refused: [] });
  });

  it.each([
    ['an empty file', '', 'empty'],
    ['half a file', () => walkFile().slice(0, 90), 'truncated'],
    ['another format', '{"format":"x"}', 'wrong-format'],
    ['a newer version', '{"format":"sagline-walk","version":99,"records":[]}', 'newer-version'],
  ])('[A17] %s is refused and nothing changes', async (_what, content, kind) => {
    const before = await store.list({ prefix: '' });
    const text = typeof content === 'string' ? content : content();
    expect(await importFile(bytesOf(text), working())).toMatchObject({ kind: 'refused', error: { kind } });
    expect(await store.list({ prefix: '' })).toEqual(before);
  });

  it('[A16] what comes with the app is never changed by a file, and that is said', async () => {
    const key = 'limits/starting-rubber-mini' as RecordKey;
    const value = { v: 1, name: 'Other', items: [], sag: [] };
    expect(await importFile(bytesOf(writeWalkFile([{ key, value }])), working())).toMatchObject({
      kind: 'done',
      added: 0,
      leftOut: 1,
    });
    const same = { ...builtIn.limits[key] };
    expect(await importFile(bytesOf(writeWalkFile([{ key, value: same }])), working())).toMatchObject({
      kind: 'done',
      leftOut: 0,
    });
    expect(await valueAt(key)).toBeUndefined();
  });

  it('[A17] an import that is stopped says so', async () => {
    const controller = new AbortController();
    controller.abort();
    const work = { stop: controller.signal, onProgress: () => undefined };
    expect(await importFile(bytesOf(walkFile()), work)).toEqual({ kind: 'cancelled', added: 0 });
  });

  it('[A17] a record written by hand over a clash is refused before anything is taken', async () => {
    const key = keyOf('machine/clash');
    const by = 'x' as never;
    const version = (device: string, name: string) => ({
      key,
      value: { ...machine, name },
      stamp: `000000000001-${device.repeat(16)}` as never,
      seen: {},
      by,
    });
    await store.merge([version('a', 'one'), version('b', 'two')]);
    const text = writeWalkFile([
      { key, value: { ...machine, name: 'three' } },
      { ...version('c', 'four'), key: keyOf('machine/other') },
    ]);
    expect(await importFile(bytesOf(text), working())).toEqual({
      kind: 'not-saved',
      error: { kind: 'clash', key },
      partly: false,
    });
    expect(await valueAt(keyOf('machine/other'))).toBeUndefined();
  });
});

describe('work that is on this phone only', () => {
  const hoursLater = async (hours: number): Promise<number | undefined> => {
    vi.useFakeTimers({ toFake: ['Date'], now: Date.UTC(2026, 4, 1, 8) + hours * 3_600_000 });
    const age = await backupAge();
    vi.useRealTimers();
    return age.ok ? age.value.aloneHours : undefined;
  };
  const walk = {
    v: 1,
    machine: 'machine/a',
    startedAt: { utc: '2026-05-01T08:00:00.000Z', offsetMinutes: 0 },
  };

  it('[A18] its age counts from the first walk that no backup holds', async () => {
    await store.preferences.put(backupPreference, undefined);
    await save([put('walk/one' as RecordKey, walk)]);
    expect([await hoursLater(25), await hoursLater(73)]).toEqual([25, 73]);
  });

  it('[A18] a backup ends it, and a change after the backup begins it anew', async () => {
    const found = await store.list({ prefix: 'walk/' });
    const stamp = found.ok ? (found.value.at(-1)?.versions.at(-1)?.stamp ?? '') : '';
    const counter = Number.parseInt(stamp.slice(0, 12), 16) + 100;
    await save([put('walk/two' as RecordKey, walk)]);
    const at = { utc: '2026-05-02T08:00:00.000Z', offsetMinutes: 0 };
    await store.preferences.put(backupPreference, { at, counter });
    expect(await hoursLater(40)).toBe(0);
    await store.preferences.put(backupPreference, { at, counter: 0 });
    expect(await hoursLater(40)).toBe(16);
  });
});
