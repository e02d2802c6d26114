import { expect, test as base } from '@playwright/test';
import jpeg from 'jpeg-js';
import { photoFaultLine } from '../../src/words/en/photos.ts';
import { exifSegment, jpegWith, markedPicture } from '../photo-files.ts';
import { askPhotos, servePhotos, type PhotosOrigin } from './photos-origin.ts';

const test = base.extend<object, { origin: PhotosOrigin }>({
  origin: [
    // eslint-disable-next-line no-empty-pattern -- Playwright reads the names of the fixtures out of the pattern
    async ({}, use) => {
      const origin = await servePhotos();
      await use(origin);
      await origin.close();
    },
    { scope: 'worker' },
  ],
});

/** Colour of a pixel, each channel 0 to 255. */
const pixelOf = (picture: { width: number; data: Uint8Array }, x: number, y: number): readonly number[] =>
  [0, 1, 2].map((channel) => picture.data[(y * picture.width + x) * 4 + channel] ?? NaN);

test('[PH30] the eight orientations of one picture become the same upright picture, without metadata', async ({
  page,
  origin,
}) => {
  await page.goto(origin.url);
  const upright = markedPicture(2400, 1600, 1);
  const wanted = { width: 2048, height: 1365 };
  const hashes = new Set<string>();
  for (let orientation = 1; orientation <= 8; orientation += 1) {
    const file = jpegWith(markedPicture(2400, 1600, orientation), [
      exifSegment({ orientation, takenAt: '2026:05:01 09:30:00', gps: true }),
    ]);
    const made = await askPhotos(page, 'shrink', [...file], 'image/jpeg');
    if (typeof made === 'string') throw new Error(`${orientation}: ${made}`);
    expect([made.width, made.height], `orientation ${orientation}`).toEqual([wanted.width, wanted.height]);
    expect([made.from, made.takenAt, made.original.type, made.original.bytes]).toEqual([
      'gallery',
      '2026-05-01T09:30:00',
      'image/jpeg',
      file.length,
    ]);
    const picture = jpeg.decode(Buffer.from(made.bytes), { useTArray: true });
    const small = jpeg.decode(Buffer.from(made.thumbnail), { useTArray: true });
    expect([picture.width, picture.height, small.width, small.height]).toEqual([2048, 1365, 320, 213]);
    for (const [x, y] of [
      [0.1, 0.1],
      [0.9, 0.1],
      [0.1, 0.9],
      [0.9, 0.9],
      [0.5, 0.5],
    ] as const) {
      const truth = pixelOf(upright, Math.floor(x * 2400), Math.floor(y * 1600));
      for (const [what, one] of [
        ['photo', picture],
        ['thumbnail', small],
      ] as const) {
        const seen = pixelOf(one, Math.floor(x * one.width), Math.floor(y * one.height));
        const off = Math.max(...seen.map((value, at) => Math.abs(value - (truth[at] ?? NaN))));
        expect(off, `${what}, orientation ${orientation}, at ${x}, ${y}: ${seen.join()}`).toBeLessThan(20);
      }
    }
    for (const bytes of [made.bytes, made.thumbnail]) {
      const text = Buffer.from(bytes).toString('latin1');
      expect(text).not.toMatch(/Exif\0|http:\/\/ns\.adobe\.com|xmp|GPS|Photoshop|2026/);
    }
    hashes.add(made.original.sha256);
  }
  expect(hashes.size).toBe(8);
});

const sentence = (kind: 'not-an-image' | 'truncated' | 'heic' | 'undecodable'): string =>
  photoFaultLine({ kind });

test('[PH31] what is no photo, breaks off, or cannot be decoded is refused with its sentence', async ({
  page,
  origin,
}) => {
  await page.goto(origin.url);
  const whole = jpegWith(markedPicture(300, 200, 1), []);
  const latin = (text: string): number[] => [...Buffer.from(text, 'latin1')];
  const heic = '\0\0\0\x18ftypheic\0\0\0\0mif1heic';
  const size =
    '\0\0\0\x3cmeta\0\0\0\0\0\0\0\x30iprp\0\0\0\x28ipco\0\0\0\x14ispe\0\0\0\0\0\0\x0f\xc0\0\0\x0b\xd0';
  const cases: readonly (readonly [what: string, bytes: readonly number[], said: string])[] = [
    ['text', latin('not a picture at all, whatever its name says'), sentence('not-an-image')],
    ['nothing', [], sentence('not-an-image')],
    [
      'SVG',
      latin('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'),
      sentence('not-an-image'),
    ],
    [
      'GIF',
      latin('GIF89a\x01\0\x01\0\x80\0\0\0\0\0\xff\xff\xff,\0\0\0\0\x01\0\x01\0\0\x02\x02D\x01\0;'),
      sentence('not-an-image'),
    ],
    ['JPEG cut in half', [...whole.subarray(0, whole.length / 2)], sentence('truncated')],
    ['JPEG without its last byte', [...whole.subarray(0, -1)], sentence('truncated')],
    ['HEIC with junk', [...latin(heic), ...latin(size), ...latin('junk'.repeat(5))], sentence('heic')],
    ['HEIC of no size', latin(heic), sentence('heic')],
    ['JPEG with junk for a picture', [...withJunk(whole)], sentence('undecodable')],
  ];
  for (const [what, bytes, said] of cases)
    expect(await askPhotos(page, 'shrink', bytes, 'image/jpeg'), what).toBe(said);
});

/** All tables of a JPEG gone: the head says what it is, but nothing can be decoded. */
function withJunk(whole: Uint8Array): Uint8Array {
  const junk = Uint8Array.from(whole);
  for (let at = 2; at < junk.length - 4; at += 1)
    if (junk[at] === 0xff && junk[at + 1] === 0xdb) junk[at + 4] = 0x7f;
  return junk;
}
