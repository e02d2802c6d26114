import { deflateRawSync, constants } from 'node:zlib';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { openFile, type FileSource } from '../../src/files/open-file.ts';
import { writeBundle } from '../../src/files/write-bundle.ts';
import { onePiece } from '../../src/files/zip-write.ts';
import { sha256Hex } from '../../src/seal/hash.ts';
import { fileErrorLine } from '../../src/words/en/file-errors.ts';

type Bytes = Uint8Array<ArrayBuffer>;

const walkText = '{"format":"sagline-walk","version":1,"records":[{"key":"same/a","value":{"any":"thing"}}]}';
const jpeg = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3]);

/** Deflate of 10 GB of zeros: a megabyte of them that ends on a byte, over and over, and an empty last block. */
function tenGigabytes(): Bytes {
  const megabyte = deflateRawSync(new Uint8Array(1_000_000), {
    finishFlush: constants.Z_FULL_FLUSH,
    level: 9,
  });
  const last = Buffer.from([0x03, 0x00]);
  return new Uint8Array(Buffer.concat([...Array.from({ length: 10_000 }, () => megabyte), last]));
}
const unpackedBytes = 10_000_000_000;

interface Entry {
  readonly name: string;
  readonly data: Uint8Array;
  readonly method: 0 | 8;
  readonly size: number;
  readonly crc?: number;
  readonly flags?: number;
  /** Where the directory says that it lies. */
  readonly offset?: number;
  readonly extra?: number;
}

/** A container that says what it is told to say, true or not. */
function forged(
  entries: readonly Entry[],
  end: { readonly count?: number; readonly start?: number } = {},
): Bytes {
  const parts: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let at = 0;
  for (const { name, data, method, size, crc = 0, flags = 0, offset = at, extra = 0 } of entries) {
    const bytes = strToU8(name);
    const local = Buffer.alloc(30 + bytes.length + extra);
    local.writeUInt32LE(0x04034b50, 0);
    local.writeUInt16LE(method, 8);
    local.writeUInt32LE(crc, 14);
    local.writeUInt32LE(data.length, 18);
    local.writeUInt32LE(size, 22);
    local.writeUInt16LE(bytes.length, 26);
    local.writeUInt16LE(extra, 28);
    local.set(bytes, 30);
    const central = Buffer.alloc(46 + bytes.length);
    central.writeUInt32LE(0x02014b50, 0);
    central.writeUInt16LE(flags, 8);
    central.writeUInt16LE(method, 10);
    central.writeUInt32LE(crc, 16);
    central.writeUInt32LE(data.length, 20);
    central.writeUInt32LE(size, 24);
    central.writeUInt16LE(bytes.length, 28);
    central.writeUInt32LE(offset, 42);
    central.set(bytes, 46);
    parts.push(local, data);
    directory.push(central);
    at += local.length + data.length;
  }
  const tail = Buffer.alloc(22);
  tail.writeUInt32LE(0x06054b50, 0);
  tail.writeUInt16LE(end.count ?? entries.length, 8);
  tail.writeUInt16LE(end.count ?? entries.length, 10);
  tail.writeUInt32LE(Buffer.concat(directory).length, 12);
  tail.writeUInt32LE(end.start ?? at, 16);
  return new Uint8Array(Buffer.concat([...parts, ...directory, tail]));
}

const rss = (): number => process.memoryUsage().rss;

/** A file on disk, as good as: what is read is copied, and how much memory is taken is looked at each time. */
function watched(bytes: Bytes): {
  readonly source: FileSource;
  readonly peak: () => number;
  readonly longest: () => number;
} {
  let most = rss();
  let longest = 0;
  const look = (): void => void (most = Math.max(most, rss()));
  const source: FileSource = {
    size: bytes.length,
    slice: async (from, to) => {
      look();
      longest = Math.max(longest, to - from);
      return bytes.slice(from, to);
    },
    open: async function* () {
      for (let at = 0; at < bytes.length; at += 65_536) {
        look();
        yield bytes.slice(at, at + 65_536);
      }
    },
  };
  return { source, peak: () => Math.max(most, rss()), longest: () => longest };
}

/** Why it is refused, in one sentence. */
async function refusal(bytes: Bytes): Promise<string> {
  const opened = await openFile(watched(bytes).source);
  if (opened.ok) return 'taken';
  expect(fileErrorLine(opened.error)).toMatch(/^[A-Z][^\n]*[.]$/);
  return opened.error.kind;
}

const walk: Entry = { name: 'walk.json', data: strToU8(walkText), method: 0, size: walkText.length };

describe('10 GB of zeros in 10 MB', () => {
  const bomb = tenGigabytes();
  const photo = `photos/${'a'.repeat(64)}.jpg`;
  const packed = { data: bomb, method: 8 as const };

  test.each<[string, readonly Entry[], string]>([
    ['as the walk that says what it is', [{ ...packed, name: 'walk.json', size: 0xfffffffe }], 'bad-entry'],
    ['as the walk that says it is small', [{ ...packed, name: 'walk.json', size: 25_000_000 }], 'damaged'],
    ['as the walk that says it is nothing', [{ ...packed, name: 'walk.json', size: 0 }], 'damaged'],
    [
      'as a backup that says it is nearly a gigabyte',
      [{ ...packed, name: 'backup.json', size: 900_000_000 }],
      'truncated',
    ],
    [
      'as a picture that says it is small',
      [
        { ...walk, crc: crcOf(walkText) },
        { ...packed, name: photo, size: 8_000_000 },
      ],
      'wrong-photo',
    ],
    [
      'as a picture that says it is large',
      [
        { ...walk, crc: crcOf(walkText) },
        { ...packed, name: photo, size: 900_000_000 },
      ],
      'wrong-photo',
    ],
  ])('[HO18] %s is refused with memory bounded', { timeout: 60_000 }, async (_, entries, kind) => {
    const bytes = forged(entries);
    const { source, peak, longest } = watched(bytes);
    const before = rss();
    const opened = await openFile(source);
    const taken = peak() - before;
    console.log(
      `${kind}: ${Math.round(taken / 1e6)} MB taken for ${Math.round(bytes.length / 1e6)} MB that unpack to 10 GB, ` +
        `1 : ${Math.round(unpackedBytes / Math.max(taken, 1e6))}`,
    );
    expect(opened.ok ? 'taken' : opened.error.kind).toBe(kind);
    if (!opened.ok) expect(fileErrorLine(opened.error)).toMatch(/^[A-Z][^\n]*[.]$/);
    expect(taken).toBeLessThan(200_000_000);
    // Some browsers unpack all of what they are given at once, to a thousandfold.
    expect(longest()).toBeLessThanOrEqual(16_000);
  });

  test('[HO18] beside a walk that nobody has to unpack, it is left as it is', async () => {
    const bytes = forged([
      { ...walk, crc: crcOf(walkText) },
      { ...packed, name: 'report.pdf', size: 900_000_000 },
    ]);
    const { source, peak } = watched(bytes);
    const before = rss();
    expect((await openFile(source)).ok).toBe(true);
    expect(peak() - before).toBeLessThan(200_000_000);
  });
});

/** CRC-32 of a text, as a general program writes it. */
function crcOf(text: string): number {
  const packed = Buffer.from(zipSync({ a: strToU8(text) }));
  return packed.readUInt32LE(14);
}

describe('containers that lie', () => {
  const good: Entry = { ...walk, crc: crcOf(walkText) };

  test('[HO19] the same one without a lie is taken', async () => {
    expect(await refusal(forged([good]))).toBe('taken');
  });

  test.each<[string, Bytes, string]>([
    ['says that it is encrypted', forged([{ ...good, flags: 1 }]), 'damaged'],
    ['has a checksum of something else', forged([{ ...good, crc: 1 }]), 'damaged'],
    ['says that it is packed in a way of its own', forged([{ ...good, method: 9 as 8 }]), 'bad-entry'],
    ['says that its numbers stand elsewhere', forged([good], { start: 0xffffffff }), 'too-large'],
    ['says that it has 65,535 entries', forged([good], { count: 0xffff }), 'too-many'],
    ['says that it has two entries and has one', forged([good], { count: 2 }), 'damaged'],
    ['says that it has none', forged([good], { count: 0 }), 'damaged'],
    ['lies beyond its own end', forged([{ ...good, offset: 5000 }]), 'damaged'],
    ['begins in the directory', forged([{ ...good, offset: walkText.length + 20 }]), 'damaged'],
    ['has the walk twice', forged([good, good]), 'bad-entry'],
    ['is a bundle in a picture', forged([good, inPicture(forged([good]))]), 'wrong-photo'],
  ])('[HO19] one that %s is refused', async (_, bytes, kind) => {
    expect(await refusal(bytes)).toBe(kind);
  });

  test('[HO19] one whose entry reaches into the next by what stands before its bytes is refused', async () => {
    // Without the room before its bytes the entry would end where the next one begins.
    const reaching = { ...good, extra: 60 };
    const bytes = forged([reaching, { ...good, name: 'read-me.txt' }]);
    const shifted = Buffer.from(bytes);
    const second = shifted.lastIndexOf(Buffer.from([0x50, 0x4b, 1, 2]));
    shifted.writeUInt32LE(30 + walkText.length, second + 42);
    expect(await refusal(new Uint8Array(shifted))).toBe('damaged');
  });

  test('[HO19] cut off behind any hundredth of it, a bundle of many pictures is refused', async () => {
    const pieces: Bytes[] = [];
    const photos = async function* () {
      for (let at = 0; at < 40; at += 1) {
        const bytes = new Uint8Array([...jpeg, ...new Uint8Array(500).fill(at)]);
        yield { sha256: await sha256Hex(bytes), bytes };
      }
    };
    const document = onePiece(strToU8(walkText) as Bytes);
    await writeBundle(
      { kind: 'walk', document, photos: photos(), readMe: 'Read me' },
      (piece) => void pieces.push(piece),
    );
    const whole = new Uint8Array(Buffer.concat(pieces));
    expect(await refusal(whole)).toBe('taken');
    for (let at = 4; at < whole.length; at += Math.ceil(whole.length / 100))
      expect(await refusal(whole.slice(0, at))).toBe('truncated');
  });
});

function inPicture(bundle: Bytes): Entry {
  return { name: `photos/${'b'.repeat(64)}.jpg`, data: bundle, method: 0, size: bundle.length };
}
