import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { err, ok, type Result } from '../../src/core/result.ts';
import type { Version } from '../../src/core/versions.ts';
import { crc32, crcText } from '../../src/files/crc32.ts';
import { linesOf } from '../../src/files/lines.ts';
import { openFile, type FileSource, type OpenedFile } from '../../src/files/open-file.ts';
import { readWalkFile } from '../../src/files/walk-file.ts';
import { writeBackup } from '../../src/files/write-backup.ts';
import { writeWalkFile } from '../../src/files/write-walk-file.ts';
import { lug, lugKey, machine, machineKey, plain, version, versionList } from './samples.ts';

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A file that gives its bytes in chunks of this size. */
function sourceOf(bytes: Uint8Array, chunk = 7): FileSource {
  return {
    size: bytes.length,
    open: async function* () {
      for (let at = 0; at < bytes.length; at += chunk) yield bytes.subarray(at, at + chunk);
    },
  };
}

async function* exported(
  batches: readonly (readonly Version[])[],
): AsyncGenerator<Result<readonly Version[], string>> {
  for (const batch of batches) yield ok(batch);
}

async function backupOf(...batches: readonly (readonly Version[])[]): Promise<string> {
  let text = '';
  await writeBackup(exported(batches), (part) => void (text += part));
  return text;
}

async function opened(bytes: Uint8Array | string, chunk?: number): Promise<OpenedFile> {
  const file = await openFile(sourceOf(typeof bytes === 'string' ? encode(bytes) : bytes, chunk));
  if (!file.ok) throw new Error(JSON.stringify(file.error));
  return file.value;
}

async function backup(bytes: Uint8Array | string, chunk?: number) {
  const file = await opened(bytes, chunk);
  if (file.kind !== 'backup') throw new Error(file.kind);
  const batches: (readonly Version[])[] = [];
  for await (const batch of file.batches()) batches.push(batch);
  return { ...file, batches, versions: batches.flat() };
}

async function errorOf(bytes: Uint8Array | string) {
  const file = await openFile(sourceOf(typeof bytes === 'string' ? encode(bytes) : bytes, 100));
  return file.ok ? undefined : file.error;
}

const many = (count: number): readonly Version[] =>
  Array.from({ length: count }, (_, i) => version(machineKey, { ...machine, note: `no. ${i}` }, i + 1));

describe('the whole phone as one file', () => {
  test(
    '[F11] what is restored is what was backed up, whatever the batches and the chunks',
    { timeout: 60_000 },
    async () => {
      await fc.assert(
        fc.asyncProperty(
          fc.array(versionList, { maxLength: 3 }),
          fc.integer({ min: 1, max: 3000 }),
          async (lists, chunk) => {
            fc.pre(lists.length > 0);
            const { versions, count, refused } = await backup(await backupOf(...lists), chunk);
            expect(versions).toEqual(plain(lists.flat()));
            expect(count).toBe(lists.flat().length);
            expect(refused).toEqual([]);
          },
        ),
        { numRuns: 20 },
      );
    },
  );

  test('[F11] it is one JSON document, and the reader of walk files reads it too', async () => {
    const text = await backupOf(many(2), [], [version(lugKey, lug)]);
    const document = JSON.parse(text) as Record<string, unknown>;
    expect(document).toMatchObject({ format: 'sagline-backup', version: 1, seals: [], count: 3 });
    const read = readWalkFile(text);
    expect(read.ok && read.value.versions).toEqual(plain([...many(2), version(lugKey, lug)]));
  });

  test('[F11] laid out anew it is still the same backup', async () => {
    const text = await backupOf(many(450));
    const anew = JSON.stringify(JSON.parse(text), null, 2);
    expect((await backup(anew)).versions).toEqual((await backup(text)).versions);
    expect(await backup(text.replaceAll('\n', '\r\n'))).toMatchObject({ count: 450 });
  });

  test('[F11] it is handed on in batches of at most 200', async () => {
    const sizes = (text: string) =>
      backup(text, 5000).then(({ batches }) => batches.map(({ length }) => length));
    expect(await sizes(await backupOf(many(450)))).toEqual([200, 200, 50]);
    expect(await sizes(await backupOf(many(400)))).toEqual([200, 200]);
    expect(await sizes(JSON.stringify(JSON.parse(await backupOf(many(450)))))).toEqual([200, 200, 50]);
  });

  test('[F2] the demo is left out, and a batch of nothing else leaves no trace', async () => {
    const demo = version(`demo/${machineKey}` as typeof machineKey, machine);
    expect(await backupOf([demo], [version(lugKey, lug), demo], [demo])).toBe(
      await backupOf([version(lugKey, lug)]),
    );
  });

  test('[F11] a phone that cannot be read gives no backup', async () => {
    const broken = async function* () {
      yield ok(many(1));
      yield err('lost');
    };
    expect(await writeBackup(broken(), () => undefined)).toEqual(err('lost'));
    expect(await writeBackup(exported([many(3)]), () => undefined)).toEqual(ok({ count: 3 }));
  });

  test('[F11] each piece waits until the one before is written', async () => {
    const log: string[] = [];
    await writeBackup(exported([many(1), many(1)]), async (part) => {
      log.push('begins');
      await Promise.resolve();
      log.push(part.startsWith('{"format"') ? 'head' : part.startsWith('\n]') ? 'tail' : 'records');
    });
    expect(log.filter((_, i) => i % 2 === 1)).toEqual(['head', 'records', 'records', 'tail']);
    expect(log.filter((_, i) => i % 2 === 0)).toEqual(Array(4).fill('begins'));
  });
});

describe('damage', () => {
  test('[F9] cut off at any byte, it is truncated; nothing of it is taken', { timeout: 60_000 }, async () => {
    const bytes = encode(await backupOf(many(2), [version(lugKey, { ...lug, note: 'Grüße 😀' })]));
    for (let end = 1; end < bytes.length - 1; end += 1) {
      expect(await errorOf(bytes.subarray(0, end)), `at ${end}`).toEqual({ kind: 'truncated' });
    }
    expect(await errorOf(bytes.subarray(0, bytes.length - 1))).toBeUndefined();
    expect(await errorOf(bytes.subarray(0, 0))).toEqual({ kind: 'empty' });
  });

  test('[F12] a changed digit is damage, in a record or in the sum', async () => {
    const text = await backupOf(many(20));
    expect(await errorOf(text.replace('no. 7', 'no. 8'))).toEqual({ kind: 'damaged' });
    expect(await errorOf(text.replace(/"crc32":"./, '"crc32":"x'))).toEqual({ kind: 'damaged' });
    expect(await errorOf(text.replace('"count":20', '"count":21'))).toEqual({ kind: 'damaged' });
    expect(await errorOf(text.replace('"seals":[]', '"seals":[1]'))).toEqual({ kind: 'damaged' });
    expect(await errorOf(text.replace('"seals":[]', '"seals":[],"more":1'))).toEqual({ kind: 'damaged' });
  });

  test('[F12] the same holds for a backup that was laid out anew', async () => {
    const anew = (text: string) => JSON.stringify(JSON.parse(text), null, 1);
    const text = await backupOf(many(20));
    expect(await errorOf(anew(text))).toBeUndefined();
    expect(await errorOf(anew(text.replace('no. 7', 'no. 8')))).toEqual({ kind: 'damaged' });
    expect(await errorOf(anew(text.replace('"count":20', '"count":19')))).toEqual({ kind: 'damaged' });
    expect(await errorOf(anew(text.replace('"count":20,', '')))).toMatchObject({
      kind: 'bad-header',
      path: ['count'],
    });
  });

  test('[F12] a lost line, two lines swapped, a broken line, lines after the end: damage', async () => {
    const lines = (await backupOf(many(20))).split('\n');
    const without = lines.filter((_, i) => i !== 5);
    const swapped = [...lines];
    [swapped[5], swapped[6]] = [lines[6] ?? '', lines[5] ?? ''];
    const broken = lines.map((line, i) => (i === 5 ? line.slice(0, 30) : line));
    const twice = [...lines, ...lines];
    for (const each of [without, swapped, broken, twice]) {
      expect(await errorOf(each.join('\n'))).toEqual({ kind: 'damaged' });
    }
  });

  test('[F12] bytes that are no text and a line without end are damage', async () => {
    const bytes = encode(await backupOf(many(3)));
    const noText = bytes.slice();
    noText[120] = 0xff;
    expect(await errorOf(noText)).toEqual({ kind: 'damaged' });
    const endless = `${(await backupOf(many(1))).split('\n')[0]}\n${'x'.repeat(1_100_000)}`;
    expect(await errorOf(endless)).toEqual({ kind: 'damaged' });
  });

  test('[F13] a record that cannot be taken is named, the others are taken', async () => {
    const odd = version(machineKey, { v: 1, name: 3 }, 9);
    const text = await backupOf([version(lugKey, lug), odd, version(lugKey, lug, 2)]);
    for (const each of [text, JSON.stringify(JSON.parse(text))]) {
      const { versions, refused, count } = await backup(each);
      expect(versions.map(({ key }) => key)).toEqual([lugKey, lugKey]);
      expect(refused).toMatchObject([
        { kind: 'bad-record', key: machineKey, index: 1, path: ['value', 'name'] },
      ]);
      expect(count).toBe(3);
    }
  });

  test('[F13] a backup takes no record by hand, since a phone stamps what it makes', async () => {
    const byHand = { key: machineKey, value: machine } as unknown as Version;
    const text = await backupOf([byHand, version(lugKey, lug)]);
    for (const each of [text, JSON.stringify(JSON.parse(text))]) {
      const { versions, refused, count } = await backup(each);
      expect([versions.length, count]).toEqual([1, 2]);
      expect(refused).toEqual([{ kind: 'bad-stamp', key: machineKey, index: 0 }]);
    }
  });

  test('[F13] what is on a phone comes back, even if it is too large to be sent', async () => {
    const large = version(machineKey, { v: 2, blob: 'x'.repeat(1_000_000) });
    const text = await backupOf([large]);
    for (const each of [text, JSON.stringify(JSON.parse(text))]) {
      expect(await backup(each, 65_536)).toMatchObject({ versions: [large], refused: [] });
    }
  });

  test('[F13] at most a hundred refused records are listed', async () => {
    const odd = Array.from({ length: 120 }, (_, i) => version(machineKey, { v: 1 }, i + 1));
    const text = await backupOf(odd);
    for (const each of [text, JSON.stringify(JSON.parse(text))])
      expect((await backup(each)).refused).toHaveLength(100);
  });

  test('[F12] a backup of nothing holds nothing', async () => {
    const empty = await backupOf();
    expect(JSON.parse(empty)).toMatchObject({ records: [], count: 0, crc32: '00000000' });
    expect(await errorOf(empty)).toEqual({ kind: 'no-records' });
  });
});

describe('opening a file', () => {
  test('[F14] a walk file is opened as one', async () => {
    const file = await opened(writeWalkFile([{ key: machineKey, value: machine }]));
    expect(file).toMatchObject({
      kind: 'walk-file',
      format: 'sagline-walk',
      unstamped: [{ key: machineKey }],
    });
  });

  test('[F14] while a long file is read, the screen can answer', async () => {
    let answered = 0;
    const answering = setInterval(() => (answered += 1));
    const records = Array.from({ length: 2000 }, (_, n) => ({
      key: `same/${n}` as typeof machineKey,
      value: { n },
    }));
    const file = await opened(writeWalkFile(records), 1_000_000);
    clearInterval(answering);
    expect(file).toMatchObject({ kind: 'walk-file', count: 2000 });
    expect(answered).toBeGreaterThan(3);
    expect(answered).toBeLessThan(1000);
  });

  test('[F14] a large file that is no backup is not read', async () => {
    let read = 0;
    const source: FileSource = {
      size: 25_000_001,
      open: async function* () {
        for (;;) {
          read += 1;
          yield encode(' '.repeat(1000));
        }
      },
    };
    expect(await openFile(source)).toEqual(err({ kind: 'too-large', mostBytes: 25_000_000 }));
    expect(read).toBe(1);
  });

  test('[F14] a file that says less than it holds is not read to its end', async () => {
    let read = 0;
    const source: FileSource = {
      size: 10,
      open: async function* () {
        for (;;) {
          read += 1;
          yield new Uint8Array(1_000_000).fill(0x20);
        }
      },
    };
    expect(await openFile(source)).toEqual(err({ kind: 'too-large', mostBytes: 25_000_000 }));
    expect(read).toBeLessThan(30);
  });

  test('[F14] a file that fails while it is read is unreadable', async () => {
    const failing = (bytes: string, after: number): FileSource => ({
      size: 100,
      open: async function* () {
        yield encode(bytes).subarray(0, after);
        throw new Error('the card was taken out');
      },
    });
    const text = await backupOf(many(1));
    for (const after of [0, 10, 60, 200]) {
      expect(await openFile(failing(text, after))).toEqual(err({ kind: 'unreadable' }));
    }
  });

  test('[F14] a backup that changes between checking and taking throws instead of taking half', async () => {
    const [whole, cut] = [
      encode(await backupOf(many(300))),
      encode(await backupOf(many(300))).subarray(0, 40_000),
    ];
    let now = whole;
    const source = { size: whole.length, open: () => sourceOf(now, 1000).open() };
    const file = await openFile(source);
    now = cut;
    if (!file.ok || file.value.kind !== 'backup') throw new Error('not opened');
    const taking = async (): Promise<void> => {
      for await (const _batch of file.value.kind === 'backup' ? file.value.batches() : []) continue;
    };
    await expect(taking()).rejects.toThrow('truncated');
  });
});

describe('the pieces', () => {
  test('[F12] CRC-32 of the digits 1 to 9 is cbf43926 (the check value of its catalogue)', () => {
    expect(crcText(crc32(encode('123456789')))).toBe('cbf43926');
    expect(crc32(encode('6789'), crc32(encode('12345')))).toBe(0xcbf43926);
    expect(crcText(crc32(encode('')))).toBe('00000000');
    expect(crcText(10)).toBe('0000000a');
  });

  test('[F11] lines are the same however the bytes come', async () => {
    const read = async (text: string, chunk: number, most = 100) => {
      const lines: string[] = [];
      for await (const line of linesOf(sourceOf(encode(text), chunk).open(), most))
        lines.push(line === 'too-long' ? line : new TextDecoder().decode(line));
      return lines;
    };
    for (const chunk of [1, 2, 3, 5, 100]) {
      expect(await read('one\n\nthree\nfour', chunk)).toEqual(['one', '', 'three', 'four']);
      expect(await read('one\n', chunk)).toEqual(['one']);
      expect(await read('', chunk)).toEqual([]);
      expect(await read('12345\n123456\n1', chunk, 5)).toEqual(['12345', 'too-long']);
    }
  });
});
