import jpeg from 'jpeg-js';

export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** Where a pixel of the upright picture is stored under an orientation (Exif 2.3, tag 274). */
function storedAt(
  x: number,
  y: number,
  width: number,
  height: number,
  orientation: number,
): readonly [number, number] {
  const [right, bottom] = [width - 1 - x, height - 1 - y];
  // Row 0 and column 0 as stored are, by the standard: top and left, top and right, bottom and right, bottom and left,
  // left and top, right and top, right and bottom, left and bottom.
  const places = [
    [x, y],
    [right, y],
    [right, bottom],
    [x, bottom],
    [y, x],
    [y, right],
    [bottom, right],
    [bottom, x],
  ] as const;
  return places[orientation - 1] ?? [x, y];
}

const corners = [
  [
    [200, 40, 40],
    [40, 160, 60],
  ],
  [
    [50, 70, 200],
    [220, 200, 60],
  ],
] as const;

/** A picture whose four quarters differ, with a grey middle, as a camera stores it under an orientation. */
export function markedPicture(width: number, height: number, orientation: number): Pixels {
  const [wide, high] = orientation < 5 ? [width, height] : [height, width];
  const data = new Uint8Array(wide * high * 4).fill(255);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const isMiddle = Math.abs(x / width - 0.5) < 0.15 && Math.abs(y / height - 0.5) < 0.15;
      const colour = isMiddle
        ? ([128, 128, 128] as const)
        : corners[y * 2 < height ? 0 : 1][x * 2 < width ? 0 : 1];
      const [column, row] = storedAt(x, y, width, height, orientation);
      data.set(colour, (row * wide + column) * 4);
    }
  }
  return { width: wide, height: high, data };
}

/** A JPEG of these pixels with segments of our own right after its start. */
export function jpegWith(pixels: Pixels, segments: readonly Uint8Array[]): Uint8Array {
  const plain = jpeg.encode({ ...pixels, data: Buffer.from(pixels.data) }, 90).data;
  return Buffer.concat([plain.subarray(0, 2), ...segments, plain.subarray(2)]);
}

interface ExifOptions {
  readonly orientation?: number;
  readonly takenAt?: string;
  readonly gps?: boolean;
  readonly littleEndian?: boolean;
}

/** The TIFF structure of an Exif segment: orientation, a maker, a place in IFD 0, the time in the Exif IFD. */
export function tiffOf({
  orientation = 1,
  takenAt,
  gps = false,
  littleEndian = true,
}: ExifOptions): Uint8Array {
  const tiff = new DataView(new ArrayBuffer(200));
  const put16 = (at: number, value: number): void => tiff.setUint16(at, value, littleEndian);
  const put32 = (at: number, value: number): void => tiff.setUint32(at, value, littleEndian);
  const entry = (at: number, tag: number, type: number, count: number, value: number): void => {
    put16(at, tag);
    put16(at + 2, type);
    put32(at + 4, count);
    if (type === 3) put16(at + 8, value);
    else put32(at + 8, value);
  };
  const text = (at: number, value: string): void =>
    [...Buffer.from(value, 'latin1')].forEach((byte, offset) => tiff.setUint8(at + offset, byte));
  text(0, littleEndian ? 'II' : 'MM');
  put16(2, 42);
  put32(4, 8);
  put16(8, 3);
  entry(10, 0x0112, 3, 1, orientation);
  entry(22, 0x8769, 4, 1, 60);
  entry(34, 0x8825, 4, 1, gps ? 120 : 0);
  put16(60, takenAt === undefined ? 0 : 1);
  if (takenAt !== undefined) entry(62, 0x9003, 2, 20, 90);
  text(90, takenAt ?? '');
  if (gps) {
    put16(120, 1);
    entry(122, 1, 2, 2, 0);
    text(140, 'GPS 52.5N 13.4E');
  }
  return new Uint8Array(tiff.buffer);
}

/** A segment of a JPEG. */
export const segment = (marker: number, head: string, body: Uint8Array): Uint8Array => {
  const length = 2 + head.length + body.length;
  return Buffer.concat([
    Buffer.from([0xff, marker, length >> 8, length & 255]),
    Buffer.from(head, 'latin1'),
    body,
  ]);
};

export const exifSegment = (options: ExifOptions): Uint8Array => segment(0xe1, 'Exif\0\0', tiffOf(options));

/**
 * A grey JPEG of any size in few bytes: both Huffman tables have one code, a single 0, for "no difference" and "no
 * more in this block", so that the coded data are zeros, two bits for each block of 8 × 8.
 */
export function greyJpeg(width: number, height: number): Uint8Array {
  const bytes = (...values: number[]): Uint8Array => Uint8Array.from(values);
  const table = (kind: number): Uint8Array =>
    segment(0xc4, '', bytes(kind, 1, ...Array<number>(15).fill(0), 0));
  const size = [height >> 8, height & 255, width >> 8, width & 255];
  const blocks = Math.ceil(width / 8) * Math.ceil(height / 8);
  return Buffer.concat([
    bytes(0xff, 0xd8),
    segment(0xdb, '', bytes(0, ...Array<number>(64).fill(1))),
    segment(0xc0, '', bytes(8, ...size, 1, 1, 0x11, 0)),
    table(0x00),
    table(0x10),
    segment(0xda, '', bytes(1, 1, 0, 0, 63, 0)),
    new Uint8Array(Math.ceil(blocks / 4)),
    bytes(0xff, 0xd9),
  ]);
}

const u32 = (value: number, littleEndian = false): Uint8Array => {
  const view = new DataView(new ArrayBuffer(4));
  view.setUint32(0, value, littleEndian);
  return new Uint8Array(view.buffer);
};
const latin = (text: string): Uint8Array => Buffer.from(text, 'latin1');

/** The frame of a PNG: head, perhaps an eXIf chunk, end; checksums are left out and so are the pixels. */
export function pngOf(width: number, height: number, tiff?: Uint8Array): Uint8Array {
  const chunk = (name: string, body: Uint8Array): Uint8Array =>
    Buffer.concat([u32(body.length), latin(name), body, u32(0)]);
  return Buffer.concat([
    latin('\x89PNG\r\n\x1a\n'),
    chunk('IHDR', Buffer.concat([u32(width), u32(height), latin('\x08\x02\0\0\0')])),
    ...(tiff === undefined ? [] : [chunk('eXIf', tiff)]),
    chunk('IEND', new Uint8Array()),
  ]);
}

/** The frame of a WebP of one of its three kinds, perhaps with an EXIF chunk; without pixels. */
export function webpOf(
  kind: 'VP8 ' | 'VP8L' | 'VP8X',
  width: number,
  height: number,
  tiff?: Uint8Array,
): Uint8Array {
  const u16 = (value: number): Uint8Array => u32(value, true).subarray(0, 2);
  const u24 = (value: number): Uint8Array => u32(value, true).subarray(0, 3);
  const heads = {
    'VP8 ': () => Buffer.concat([latin('\x10\0\0\x9d\x01\x2a'), u16(width), u16(height)]),
    VP8L: () => Buffer.concat([latin('\x2f'), u32((width - 1) | ((height - 1) << 14), true), latin('\0')]),
    VP8X: () => Buffer.concat([latin('\x08\0\0\0'), u24(width - 1), u24(height - 1)]),
  };
  const chunk = (name: string, body: Uint8Array): Uint8Array =>
    Buffer.concat([latin(name), u32(body.length, true), body, new Uint8Array(body.length % 2)]);
  const chunks = Buffer.concat([
    chunk(kind, heads[kind]()),
    ...(tiff === undefined ? [] : [chunk('EXIF', tiff)]),
  ]);
  return Buffer.concat([latin('RIFF'), u32(chunks.length + 4, true), latin('WEBP'), chunks]);
}

function heifOf(brand: string, width: number, height: number): Uint8Array {
  const box = (name: string, ...body: Uint8Array[]): Uint8Array =>
    Buffer.concat([u32(8 + Buffer.concat(body).length), latin(name), ...body]);
  const ispe = (wide: number, high: number): Uint8Array => box('ispe', u32(0), u32(wide), u32(high));
  const sizes = width === 0 ? [] : [ispe(Math.min(512, width), Math.min(512, height)), ispe(width, height)];
  return Buffer.concat([
    box('ftyp', latin(brand), u32(0), latin(`mif1${brand}`)),
    box('meta', u32(0), box('iprp', box('ipco', ...sizes))),
  ]);
}

/** The boxes of a HEIC file up to the sizes of its tiles and of itself; there is nothing to decode. */
export const heicOf = (width: number, height: number): Uint8Array => heifOf('heic', width, height);
export const avifOf = (width: number, height: number): Uint8Array => heifOf('avif', width, height);
