import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { strFromU8, strToU8, unzipSync, zipSync, type Zippable } from 'fflate';
import { greyJpeg } from '../photo-files.ts';
import { describe, expect, test } from 'vitest';
import { openFile, type FileSource } from '../../src/files/open-file.ts';
import { mostBundleEntries } from '../../src/files/file-limits.ts';
import { writeBundle } from '../../src/files/write-bundle.ts';
import { onePiece, zipWriter } from '../../src/files/zip-write.ts';
import { fileErrorLine } from '../../src/words/en/file-errors.ts';
import { sha256Hex } from '../../src/seal/hash.ts';

type Bytes = Uint8Array<ArrayBuffer>;

const walkText = JSON.stringify({
  format: 'sagline-walk',
  version: 1,
  records: [{ key: 'same/a', value: { any: 'thing' } }],
});
const jpeg = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3]);

function sourceOf(bytes: Uint8Array): FileSource {
  return {
    size: bytes.length,
    slice: async (from, to) => new Uint8Array(bytes.subarray(from, to)),
    open: async function* () {
      yield bytes;
    },
  };
}

const joined = (pieces: readonly Uint8Array[]): Bytes => new Uint8Array(Buffer.concat(pieces));

async function bundle(photos: readonly Bytes[]): Promise<Bytes> {
  const pieces: Bytes[] = [];
  const named = async function* () {
    for (const bytes of photos) yield { sha256: await sha256Hex(bytes), bytes };
  };
  const document = onePiece(strToU8(walkText) as Bytes);
  await writeBundle(
    { kind: 'walk', document, photos: named(), readMe: 'Read me' },
    (piece) => void pieces.push(piece),
  );
  return joined(pieces);
}

/** Why it is refused, in one sentence. */
async function refusal(bytes: Uint8Array): Promise<string> {
  const opened = await openFile(sourceOf(bytes));
  if (opened.ok) throw new Error('was taken');
  const line = fileErrorLine(opened.error);
  expect(line).toMatch(/^[A-Z][^\n]*\.$/);
  return opened.error.kind;
}

const photoName = async (bytes: Bytes): Promise<string> => `photos/${await sha256Hex(bytes)}.jpg`;
const withWalk = (more: Zippable): Uint8Array => zipSync({ 'walk.json': strToU8(walkText), ...more });

describe('a bundle', () => {
  test('[HO3] a general zip program reads what we write', async () => {
    const entries = unzipSync(await bundle([jpeg]));
    expect(Object.keys(entries)).toEqual(['read-me.txt', 'walk.json', await photoName(jpeg)]);
    expect(strFromU8(entries['walk.json'] ?? new Uint8Array())).toBe(walkText);
    expect(entries[await photoName(jpeg)]).toEqual(jpeg);
  });

  test('[HO3] we read what a general zip program packs, deflated or stored', async () => {
    for (const level of [0, 9] as const) {
      const packed = zipSync({
        'photos/': new Uint8Array(),
        'walk.json': [strToU8(walkText), { level }],
        [await photoName(jpeg)]: [jpeg, { level }],
      });
      const opened = await openFile(sourceOf(packed));
      if (!opened.ok) throw new Error(opened.error.kind);
      expect(opened.value).toMatchObject({ kind: 'walk-file', count: 1 });
      expect(await opened.value.pictures?.read(await sha256Hex(jpeg))).toEqual(jpeg);
    }
  });

  test('[HO4] any bytes come back, in whatever pieces they were written', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.uint8Array({ maxLength: 50 }), { maxLength: 5 }), async (parts) => {
        const pieces: Bytes[] = [];
        const zip = zipWriter((piece) => void pieces.push(piece));
        await zip.add('a', async function* () {
          for (const part of parts) yield new Uint8Array(part);
        });
        await zip.end();
        expect(unzipSync(joined(pieces))['a']).toEqual(joined(parts));
        // The reader above does not look at the checksum; gzip ends with the same one (RFC 1952, section 2.3.1).
        const packed = gzipSync(joined(parts));
        const crc = packed.readUInt32LE(packed.length - 8);
        expect(Buffer.from(joined(pieces)).readUInt32LE(14)).toBe(crc);
      }),
    );
  });
});

describe('a hostile bundle', () => {
  test.each([
    ['goes up', '../walk.json'],
    ['is a path of a machine', '/etc/passwd'],
    ['has another slash', 'photos\\a.jpg'],
    ['steers a prototype', '__proto__'],
    ['holds a bundle in a bundle', 'more.zip'],
    ['holds a page', 'photos/a.html'],
    ['has a name of a picture with more behind it', `photos/${'a'.repeat(64)}.jpg/../x`],
  ])('[HO5] one whose entry %s is refused', async (_, name) => {
    const pieces: Bytes[] = [];
    const zip = zipWriter((piece) => void pieces.push(piece));
    await zip.add('walk.json', onePiece(strToU8(walkText) as Bytes));
    await zip.add(name, onePiece(new Uint8Array([1])));
    await zip.end();
    expect(await refusal(joined(pieces))).toBe('bad-entry');
  });

  test('[HO5] one with 10,000 entries is refused before any is looked at', async () => {
    const many = Object.fromEntries(
      Array.from({ length: 10_000 }, (_, at) => [
        `photos/${at.toString(16).padStart(64, '0')}.jpg`,
        new Uint8Array(),
      ]),
    );
    expect(mostBundleEntries).toBeLessThan(10_000);
    expect(await refusal(withWalk(many))).toBe('too-many');
  });

  test('[HO5] one that swells is refused, by what it says and by what it does', async () => {
    const zeros = new Uint8Array(30_000_000);
    const bomb = withWalk({ [await photoName(jpeg)]: [zeros, { level: 9 }] });
    expect(await refusal(bomb)).toBe('bad-entry');
    // The same, forged to say that it is small, in the directory and before the entry.
    const forged = Buffer.from(bomb);
    const size = Buffer.alloc(4);
    size.writeUInt32LE(zeros.length);
    const small = Buffer.alloc(4);
    small.writeUInt32LE(1000);
    for (let at = forged.indexOf(size); at >= 0; at = forged.indexOf(size, at)) small.copy(forged, at);
    const before = process.memoryUsage().arrayBuffers;
    expect(await refusal(new Uint8Array(forged))).toBe('wrong-photo');
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(zeros.length / 2);
  });

  test('[HO5] one cut off anywhere is refused', async () => {
    const whole = await bundle([jpeg]);
    for (let length = 5; length < whole.length; length += 1)
      expect(['truncated', 'damaged', 'not-json']).toContain(await refusal(whole.subarray(0, length)));
  });

  test('[HO5] one with any bit turned is refused, or says the same', async () => {
    const whole = await bundle([jpeg]);
    const sha256 = await sha256Hex(jpeg);
    for (let at = 4; at < whole.length; at += 1) {
      const turned = new Uint8Array(whole);
      turned[at] = (turned[at] ?? 0) ^ 1;
      const opened = await openFile(sourceOf(turned));
      if (!opened.ok) {
        expect(fileErrorLine(opened.error)).toMatch(/\.$/);
        continue;
      }
      // Days, versions and flags that we do not read.
      const unstamped = [{ key: 'same/a', value: { any: 'thing' } }];
      expect(opened.value).toMatchObject({ kind: 'walk-file', count: 1, unstamped });
      expect(await opened.value.pictures?.read(sha256)).toEqual(jpeg);
    }
  });

  test.each([
    ['other bytes than its name says', jpeg, `photos/${'a'.repeat(64)}.jpg`],
    ['no picture under the right name', strToU8('<svg onload=alert(1)>') as Bytes, undefined],
  ])('[HO5] one with %s is refused', async (_, bytes, name) => {
    expect(await refusal(withWalk({ [name ?? (await photoName(bytes))]: bytes }))).toBe('wrong-photo');
  });

  test('[PH26] a bundle with a picture of 108 megapixels in 0.4 MB is refused, one of 24 is not', async () => {
    const [large, small] = [greyJpeg(12_000, 9_000), greyJpeg(6_000, 4_000)].map(
      (file) => new Uint8Array(file),
    ) as [Bytes, Bytes];
    expect(await refusal(withWalk({ [await photoName(large)]: [large, { level: 0 }] }))).toBe('large-photo');
    const opened = await openFile(sourceOf(withWalk({ [await photoName(small)]: [small, { level: 0 }] })));
    expect(opened.ok).toBe(true);
  });

  test('[HO5] one whose entries lie over each other is refused', async () => {
    const whole = Buffer.from(await bundle([jpeg]));
    // Let the last entry of the directory begin where the first one does.
    const last = whole.lastIndexOf(Buffer.from([0x50, 0x4b, 1, 2]));
    whole.writeUInt32LE(0, last + 42);
    expect(await refusal(new Uint8Array(whole))).toBe('damaged');
  });

  test.each([
    ['no walk', zipSync({ 'read-me.txt': strToU8('x') }), 'wrong-format'],
    ['a walk and a backup', withWalk({ 'backup.json': strToU8('{}') }), 'bad-entry'],
    ['half a walk', zipSync({ 'walk.json': strToU8(walkText.slice(0, 40)) }), 'truncated'],
  ])('[HO5] one with %s is refused', async (_, bytes, kind) => {
    expect(await refusal(bytes)).toBe(kind);
  });

  test('[HO5] no bytes make it throw', async () => {
    const whole = await bundle([jpeg]);
    const start = whole.subarray(0, 4);
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 200 }), fc.boolean(), async (bytes, withEnd) => {
        const hostile = Buffer.concat([start, bytes, withEnd ? whole.subarray(-22) : new Uint8Array()]);
        expect((await openFile(sourceOf(new Uint8Array(hostile)))).ok).toBe(false);
      }),
      { numRuns: 500 },
    );
  });
});
