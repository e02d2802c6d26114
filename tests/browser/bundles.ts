import { encode } from 'jpeg-js';
import { canonicalJson } from '../../src/core/canonical-json.ts';
import type { RecordKey } from '../../src/core/keys.ts';
import { openFile } from '../../src/files/open-file.ts';
import { writeBundle } from '../../src/files/write-bundle.ts';
import { onePiece } from '../../src/files/zip-write.ts';
import { sha256Hex } from '../../src/seal/hash.ts';
import { recordsOf, type FileRecord } from '../checks/walk-file.ts';

type Bytes = Uint8Array<ArrayBuffer>;

/** A small picture in one colour. */
function picture(red: number): Bytes {
  const [width, height] = [64, 48];
  const data = Buffer.alloc(width * height * 4, 255);
  for (let at = 0; at < data.length; at += 4) data[at] = red;
  return new Uint8Array(encode({ data, width, height }, 80).data);
}

/** A published walk with pictures, as somebody would send it. */
export async function sentBundle(walk: string, count: number) {
  const records: FileRecord[] = [...recordsOf(walk)];
  const id = records.find(({ key }) => key.startsWith('walk/'))?.key.slice('walk/'.length) ?? '';
  const photos: { sha256: string; bytes: Bytes }[] = [];
  for (let at = 0; at < count; at += 1) {
    const bytes = picture((at * 37) % 256);
    const sha256 = await sha256Hex(bytes);
    photos.push({ sha256, bytes });
    const value = {
      v: 1,
      type: 'image/jpeg',
      bytes: bytes.length,
      width: 64,
      height: 48,
      original: { sha256, bytes: bytes.length },
      shows: [{ place: 'left.track' }],
      from: 'gallery',
    };
    records.push({ key: `photo/${id}/${sha256}` as RecordKey, value });
  }
  const document = { format: 'sagline-walk', version: 1, records, seals: [] };
  const pieces: Bytes[] = [];
  await writeBundle(
    {
      kind: 'walk',
      document: onePiece(new TextEncoder().encode(JSON.stringify(document))),
      photos: (async function* () {
        yield* photos;
      })(),
      readMe: 'A walk.',
    },
    (piece) => void pieces.push(piece),
  );
  return { id, records, photos, file: Buffer.concat(pieces) };
}

/** What a file holds, in an order of its own: records as text, and the bytes of each picture. */
export async function contentOf(file: Uint8Array) {
  const opened = await openFile({
    size: file.length,
    slice: async (from, to) => new Uint8Array(file.subarray(from, to)),
    open: async function* () {
      yield file;
    },
  });
  if (!opened.ok || opened.value.kind !== 'walk-file') throw new Error('no walk file');
  const { versions, unstamped, pictures } = opened.value;
  const records = [...versions, ...unstamped]
    .map(({ key, value }) => `${key} ${canonicalJson(value)}`)
    .sort();
  const photos: Record<string, string> = {};
  for (const sha256 of pictures?.hashes ?? [])
    photos[sha256] = Buffer.from((await pictures?.read(sha256)) ?? []).toString('base64');
  return { records, photos };
}
