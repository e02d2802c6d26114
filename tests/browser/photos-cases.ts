import jpeg from 'jpeg-js';
import { photoFaultLine } from '../../src/words/en/photos.ts';
import { exifSegment, jpegWith, markedPicture, type Pixels } from '../photo-files.ts';
import type { Told } from './photos-page.ts';

/** Colour of the pixel at a share of both sides, each channel 0 to 255. */
function pixelAt(picture: Pixels, x: number, y: number): readonly number[] {
  const at = (Math.floor(y * picture.height) * picture.width + Math.floor(x * picture.width)) * 4;
  return [...picture.data.subarray(at, at + 3)];
}

const corners = [
  [0.1, 0.1],
  [0.9, 0.1],
  [0.1, 0.9],
  [0.9, 0.9],
  [0.5, 0.5],
] as const;

/** Where a picture differs from the upright one by more than an encoder's noise. */
function turnedAt(picture: Pixels, upright: Pixels): readonly string[] {
  return corners.flatMap(([x, y]) => {
    const [seen, truth] = [pixelAt(picture, x, y), pixelAt(upright, x, y)];
    const off = Math.max(...seen.map((value, at) => Math.abs(value - (truth[at] ?? NaN))));
    return off < 20 ? [] : [`at ${x}, ${y} it is ${seen.join()}`];
  });
}

const metadata = /Exif\0|http:\/\/ns\.adobe\.com|xmp|GPS|Photoshop|2026/;

const decoded = (bytes: readonly number[]): Pixels => jpeg.decode(Buffer.from(bytes), { useTArray: true });

/** What is wrong with the photo made of a picture of 2400 × 1600 that is stored under an orientation. */
function faultsOf(made: Told, upright: Pixels, length: number): readonly string[] {
  const [picture, small] = [decoded(made.bytes), decoded(made.thumbnail)];
  const facts = [
    [made.width, made.height, picture.width, picture.height, small.width, small.height].join(),
    [made.from, made.takenAt, made.original.type, made.original.bytes].join(),
  ];
  const wanted = ['2048,1365,2048,1365,320,213', `gallery,2026-05-01T09:30:00,image/jpeg,${length}`];
  return [
    ...facts.filter((fact, at) => fact !== wanted[at]),
    ...turnedAt(picture, upright),
    ...turnedAt(small, upright).map((fault) => `thumbnail: ${fault}`),
    ...[made.bytes, made.thumbnail].flatMap(
      (bytes) => metadata.exec(Buffer.from(bytes).toString('latin1'))?.[0] ?? [],
    ),
  ];
}

/** Makes photos of one picture under each of the eight orientations; what is wrong with them. */
export async function uprightFaults(
  shrink: (bytes: readonly number[]) => Promise<Told | string>,
): Promise<readonly string[]> {
  const upright = markedPicture(2400, 1600, 1);
  const faults: string[] = [];
  for (let orientation = 1; orientation <= 8; orientation += 1) {
    const file = jpegWith(markedPicture(2400, 1600, orientation), [
      exifSegment({ orientation, takenAt: '2026:05:01 09:30:00', gps: true }),
    ]);
    const made = await shrink([...file]);
    const found = typeof made === 'string' ? [made] : faultsOf(made, upright, file.length);
    faults.push(...found.map((fault) => `orientation ${orientation}: ${fault}`));
  }
  return faults;
}

const sentence = (kind: 'not-an-image' | 'truncated' | 'heic' | 'undecodable'): string =>
  photoFaultLine({ kind });

/** Files that are no photo, and what is said of each. */
export function refusedFiles(): readonly (readonly [what: string, bytes: readonly number[], said: string])[] {
  const whole = jpegWith(markedPicture(300, 200, 1), []);
  const latin = (text: string): number[] => [...Buffer.from(text, 'latin1')];
  const heic = '\0\0\0\x18ftypheic\0\0\0\0mif1heic';
  const size =
    '\0\0\0\x3cmeta\0\0\0\0\0\0\0\x30iprp\0\0\0\x28ipco\0\0\0\x14ispe\0\0\0\0\0\0\x0f\xc0\0\0\x0b\xd0';
  return [
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
}

/** All tables of a JPEG gone: the head says what it is, but nothing can be decoded. */
function withJunk(whole: Uint8Array): Uint8Array {
  const junk = Uint8Array.from(whole);
  for (let at = 2; at < junk.length - 4; at += 1)
    if (junk[at] === 0xff && junk[at + 1] === 0xdb) junk[at + 4] = 0x7f;
  return junk;
}
