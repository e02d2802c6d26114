import fc from 'fast-check';
import jpeg from 'jpeg-js';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { readExif } from '../../src/files/exif.ts';
import { bareJpeg, readJpeg } from '../../src/files/jpeg.ts';
import { mostMegapixels, readOriginal } from '../../src/app/photos/picture.ts';
import type { Result } from '../../src/core/result.ts';
import {
  avifOf,
  exifSegment,
  greyJpeg,
  heicOf,
  jpegWith,
  markedPicture,
  pngOf,
  segment,
  tiffOf,
  webpOf,
} from '../photo-files.ts';

const small = jpegWith(markedPicture(60, 40, 1), []);
const bytesOf = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'latin1'));

const kindOf = (read: Result<unknown, { readonly kind: string }>): string =>
  read.ok ? 'ok' : read.error.kind;

describe('what a file is, by its content', () => {
  const taken = { takenAt: '2026:05:01 09:30:00' };
  const takenAt = '2026-05-01T09:30:00';
  test.each([
    ['JPEG', small, { type: 'image/jpeg', width: 60, height: 40 }],
    [
      'JPEG from the side',
      jpegWith(markedPicture(60, 40, 6), [exifSegment({ orientation: 6 })]),
      { type: 'image/jpeg', width: 60, height: 40 },
    ],
    [
      'JPEG with a time',
      jpegWith(markedPicture(60, 40, 1), [exifSegment(taken)]),
      { type: 'image/jpeg', width: 60, height: 40, takenAt },
    ],
    [
      'JPEG with bytes after its end',
      Buffer.concat([small, bytesOf('a film')]),
      { type: 'image/jpeg', width: 60, height: 40 },
    ],
    ['PNG', PNG.sync.write(new PNG({ width: 70, height: 50 })), { type: 'image/png', width: 70, height: 50 }],
    ['PNG with a time', pngOf(7, 5, tiffOf(taken)), { type: 'image/png', width: 7, height: 5, takenAt }],
    ['WebP, lossy', webpOf('VP8 ', 640, 480), { type: 'image/webp', width: 640, height: 480 }],
    ['WebP, lossless', webpOf('VP8L', 640, 480), { type: 'image/webp', width: 640, height: 480 }],
    [
      'WebP, extended',
      webpOf('VP8X', 5000, 4000, tiffOf(taken)),
      { type: 'image/webp', width: 5000, height: 4000, takenAt },
    ],
    ['HEIC', heicOf(4032, 3024), { type: 'image/heic', width: 4032, height: 3024 }],
    ['AVIF', avifOf(400, 300), { type: 'image/avif', width: 400, height: 300 }],
  ] as const)('[PH20] %s is told by its bytes, with its upright size', (_what, bytes, expected) => {
    const read = readOriginal(bytes);
    expect(read).toEqual({ ok: true, value: { ...expected, complete: true } });
  });

  test.each([
    ['nothing', new Uint8Array(), 'not-an-image'],
    ['text', bytesOf('a photo, it says'), 'not-an-image'],
    ['SVG', bytesOf('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>'), 'not-an-image'],
    ['GIF', bytesOf('GIF89a\x01\0\x01\0'), 'not-an-image'],
    ['PDF', bytesOf('%PDF-1.7'), 'not-an-image'],
    ['a film in the same boxes', bytesOf('\0\0\0\x18ftypisom\0\0\0\0isommp42'), 'not-an-image'],
    ['JPEG head alone', small.subarray(0, 20), 'truncated'],
    ['JPEG without end', small.subarray(0, -2), 'truncated'],
    ['JPEG with a segment beyond its end', small.subarray(0, 100), 'truncated'],
    ['PNG without end', pngOf(7, 5).subarray(0, -12), 'truncated'],
    [
      'PNG that does not begin with its head',
      Buffer.concat([pngOf(7, 5).subarray(0, 8), pngOf(7, 5).subarray(33)]),
      'truncated',
    ],
    ['WebP without end', webpOf('VP8 ', 640, 480).subarray(0, -1), 'truncated'],
    ['JPEG without a frame', Uint8Array.of(0xff, 0xd8, 0xff, 0xd9), 'undecodable'],
    ['JPEG without height', greyJpeg(100, 0), 'undecodable'],
    ['HEIC without size', heicOf(0, 0), 'heic'],
    ['JPEG of 108 megapixels', greyJpeg(12_000, 9_000), 'too-many-pixels'],
    ['JPEG of 108 megapixels that breaks off', greyJpeg(12_000, 9_000).subarray(0, 400), 'too-many-pixels'],
    ['PNG of 2 × 2 thousand million', pngOf(2 ** 31 - 1, 2 ** 31 - 1), 'too-many-pixels'],
    ['PNG of one endless line', pngOf(40_000, 1), 'too-many-pixels'],
    ['WebP as large as its fields allow', webpOf('VP8X', 2 ** 24, 2 ** 24), 'too-many-pixels'],
    ['AVIF that says so', avifOf(20_000, 20_000), 'too-many-pixels'],
  ] as const)('[PH21] %s is refused before anything is decoded', (_what, bytes, kind) => {
    expect(kindOf(readOriginal(bytes))).toBe(kind);
  });

  test('[PH21] a small frame beside a large one does not hide it', () => {
    const [little, large] = [greyJpeg(10, 10), greyJpeg(12_000, 9_000)];
    const both = Buffer.concat([little.subarray(0, -2), large.subarray(2)]);
    expect(kindOf(readOriginal(both))).toBe('too-many-pixels');
    expect(kindOf(readOriginal(Buffer.concat([large.subarray(0, -2), little.subarray(2)])))).toBe(
      'too-many-pixels',
    );
  });

  test('[PH21] the limit is 60 megapixels, and the message has the number of the picture', () => {
    expect(mostMegapixels).toBe(60);
    expect(kindOf(readOriginal(pngOf(10_000, 6_000)))).toBe('ok');
    expect(readOriginal(pngOf(10_000, 6_001))).toEqual({
      ok: false,
      error: { kind: 'too-many-pixels', megapixels: 61, most: 60 },
    });
  });
});

describe('the time that the camera wrote', () => {
  test.each([
    ['2026:05:01 09:30:00', '2026-05-01T09:30:00'],
    ['1999:12:31 23:59:60', '1999-12-31T23:59:60'],
    ['0000:00:00 00:00:00', undefined],
    ['    :  :     :  :  ', undefined],
    ['2026:13:01 09:30:00', undefined],
    ['2026:05:32 09:30:00', undefined],
    ['2026:05:01 24:30:00', undefined],
    ['2026-05-01 09:30:00', undefined],
    ['2026:05:01T09:30:00', undefined],
    ['<script>alert(1)', undefined],
  ])('[PH22] %o is read as %s, in either order of bytes', (text, takenAt) => {
    for (const littleEndian of [true, false])
      expect(readExif(tiffOf({ takenAt: text, orientation: 3, littleEndian }))).toEqual({
        orientation: 3,
        ...(takenAt !== undefined && { takenAt }),
      });
  });

  test('[PH22] an orientation that there is not, and a directory that points beyond the end, are as if absent', () => {
    expect(readExif(tiffOf({ orientation: 9 }))).toEqual({});
    expect(readExif(tiffOf({ orientation: 0 }))).toEqual({});
    const lost = tiffOf({ orientation: 6, takenAt: '2026:05:01 09:30:00' });
    lost.set([0xff, 0xff, 0xff, 0x7f], 30); // the value of the second entry: where the Exif directory lies
    expect(readExif(lost)).toEqual({ orientation: 6 });
    lost.set([0xff, 0xff, 0xff, 0xff], 4);
    expect(readExif(lost)).toEqual({});
    expect(readExif(bytesOf('XX'))).toEqual({});
  });
});

describe('a picture laid bare', () => {
  const loud = jpegWith(markedPicture(60, 40, 1), [
    exifSegment({ gps: true, takenAt: '2026:05:01 09:30:00' }),
    segment(0xe1, 'http://ns.adobe.com/xap/1.0/\0', bytesOf('<x:xmpmeta/>')),
    segment(0xe2, 'ICC_PROFILE\0', bytesOf('\x01\x01somebody')),
    segment(0xed, 'Photoshop 3.0\0', bytesOf('8BIM')),
    segment(0xfe, '', bytesOf('taken at home')),
    segment(0xef, '', bytesOf('anything')),
  ]);

  test('[PH23] loses every segment that is not needed to show it, and what follows its end', () => {
    const bare = bareJpeg(Buffer.concat([loud, bytesOf('a film of home')]));
    expect(bare && Buffer.from(bare).equals(Buffer.from(small))).toBe(true);
  });

  test('[PH23] keeps its pixels', () => {
    const before = jpeg.decode(loud, { useTArray: true });
    const after = jpeg.decode(bareJpeg(loud) ?? new Uint8Array(), { useTArray: true });
    expect(Buffer.from(after.data).equals(Buffer.from(before.data))).toBe(true);
  });

  test('[PH23] is none when it breaks off or is something else', () => {
    expect(bareJpeg(loud.subarray(0, -1))).toBeUndefined();
    expect(bareJpeg(bytesOf('GIF89a'))).toBeUndefined();
    expect(bareJpeg(new Uint8Array())).toBeUndefined();
  });
});

/** Real files, with some bytes changed, cut off, or put twice. */
const damaged = fc
  .tuple(
    fc.constantFrom(
      jpegWith(markedPicture(30, 20, 1), [exifSegment({ takenAt: '2026:05:01 09:30:00' })]),
      pngOf(7, 5, tiffOf({ takenAt: '2026:05:01 09:30:00' })),
      webpOf('VP8X', 50, 40, tiffOf({})),
      webpOf('VP8L', 50, 40),
      heicOf(40, 30),
      avifOf(40, 30),
      tiffOf({ takenAt: '2026:05:01 09:30:00', gps: true }),
    ),
    fc.array(
      fc.tuple(fc.nat({ max: 2_000 }), fc.constantFrom(0, 1, 0x7f, 0x80, 0xd8, 0xd9, 0xda, 0xe1, 0xfe, 0xff)),
      {
        maxLength: 12,
      },
    ),
    fc.nat({ max: 2_000 }),
    fc.boolean(),
  )
  .map(([file, changes, length, twice]) => {
    const bytes = Uint8Array.from(twice ? Buffer.concat([file, file]) : file);
    for (const [at, value] of changes) if (bytes.length > 0) bytes[at % bytes.length] = value;
    return length % 3 === 0 ? bytes.subarray(0, length % (bytes.length + 1)) : bytes;
  });

describe('hostile heads', () => {
  test('[PH24] whatever the bytes, reading them ends with a value, and a picture that is let through is small', () => {
    fc.assert(
      fc.property(fc.oneof(fc.uint8Array({ maxLength: 300 }), damaged), (bytes) => {
        const read = readOriginal(bytes);
        if (read.ok) {
          const { width, height, takenAt } = read.value;
          expect(width * height).toBeLessThanOrEqual(mostMegapixels * 1e6);
          expect(width > 0 && height > 0).toBe(true);
          expect(takenAt ?? '0000-00-00T00:00:00').toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d$/);
        }
        readExif(bytes);
        readJpeg(bytes);
        const bare = bareJpeg(bytes);
        expect(bare === undefined || bare.length <= bytes.length).toBe(true);
        expect(bare === undefined || Buffer.from(bareJpeg(bare) ?? []).equals(Buffer.from(bare))).toBe(true);
      }),
      { numRuns: 3_000 },
    );
  });

  const mega = 1_000_000;
  test.each([
    [
      'a million empty segments',
      Buffer.concat([
        Uint8Array.of(0xff, 0xd8),
        ...Array<Uint8Array>(mega).fill(Uint8Array.of(0xff, 0xe1, 0, 2)),
      ]),
    ],
    ['filling without end', new Uint8Array(4 * mega).fill(0xff).fill(0xd8, 1, 2)],
    [
      'a scan that is all restarts',
      Uint8Array.from(
        { length: 4 * mega },
        (_, at) => [0xff, 0xd8, 0xff, 0xda, 0, 2][at] ?? (at % 2 ? 0xd0 : 0xff),
      ),
    ],
    ['a million empty chunks', Buffer.concat([pngOf(7, 5).subarray(0, 33), new Uint8Array(12 * mega)])],
    ['empty chunks of a WebP', Buffer.concat([webpOf('VP8 ', 64, 48), new Uint8Array(8 * mega)])],
    [
      'a million empty boxes',
      Buffer.concat([heicOf(0, 0), ...Array<Uint8Array>(mega).fill(Uint8Array.of(0, 0, 0, 8, 1, 1, 1, 1))]),
    ],
    ['boxes within boxes', nested(20_000)],
  ])('[PH25] %s are read in a time that grows with their length alone', (_what, bytes) => {
    const half = timeOf(bytes.subarray(0, bytes.length / 2));
    const whole = timeOf(bytes);
    // Four times would be quadratic; a machine that does other things is forgiven 200 ms.
    expect(whole).toBeLessThan(half * 3.5 + 200);
  });
});

function timeOf(bytes: Uint8Array): number {
  const start = performance.now();
  readOriginal(bytes);
  return performance.now() - start;
}

/** `meta` in `meta` in `meta`, as deep as asked. */
function nested(depth: number): Uint8Array {
  const head = bytesOf('\0\0\0\x10ftypheic\0\0\0\0');
  const inner = new Uint8Array(depth * 12);
  for (let at = 0; at < depth; at += 1) {
    new DataView(inner.buffer).setUint32(at * 12, (depth - at) * 12);
    inner.set(bytesOf('meta'), at * 12 + 4);
  }
  return Buffer.concat([head, inner]);
}
