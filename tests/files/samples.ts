import fc from 'fast-check';
import { items } from '../../src/core/items.ts';
import { idSchema, keySchema, makePlace, type Id, type RecordKey } from '../../src/core/keys.ts';
import { deviceIdOf, makeStamp } from '../../src/core/stamp.ts';
import type { RecordValue, Version } from '../../src/core/versions.ts';
import type { FileRecord } from '../../src/files/envelope.ts';
import { walkFormat } from '../../src/files/document.ts';

export const keyOf = (text: string): RecordKey => keySchema.parse(text);

export const machineKey = keyOf('machine/digger');
export const machine = {
  v: 1,
  name: 'Digger',
  kind: 'excavator',
  shape: {
    track: 'rubber-cored',
    drive: 'oval',
    idlers: 1,
    bottomRollers: 3,
    carrierRollers: 0,
    slidePlate: true,
    suspension: 'rigid',
    flanges: 'double',
    tensioner: 'grease',
  },
} as const satisfies RecordValue;

export const lugKey = keyOf('reading/w1/left.track/lug-depth/1');
export const lug = { v: 1, what: { kind: 'length', mm: 12, typed: '12', unit: 'mm' } } as const;
export const cordKey = keyOf('reading/w1/left.track/cord/1');

export const device = deviceIdOf(new Uint8Array(8).fill(7));
export const author = idSchema.parse('somebody');

/** A version as another phone would have made it. */
export const version = (key: RecordKey, value: RecordValue | undefined, counter = 1): Version => ({
  key,
  ...(value && { value }),
  stamp: makeStamp(counter, device),
  seen: {},
  by: author,
});

/** The text of a walk file that holds these records, whatever they are. */
export const fileOf = (records: readonly unknown[], head: object = {}): string =>
  JSON.stringify({ format: walkFormat, version: 1, records, ...head });

const id = fc.stringMatching(/^[0-9a-z-]{1,20}$/).map((text) => text as Id);
const hash = fc.stringMatching(/^[0-9a-f]{64}$/);
const note = fc.string({ unit: 'grapheme', maxLength: 60 });
const name = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 6 })
  .filter((each) => each !== '__proto__');
/** Fields of a build that does not exist yet. */
const unknownFields = fc
  .dictionary(
    name.map((each) => `later-${each}`),
    fc.jsonValue({ maxDepth: 3 }),
    { maxKeys: 3 },
  )
  .filter((fields) => !JSON.stringify(fields).includes('__proto__'));

const places = items.map(({ id: item, component, ask }) => ({
  item,
  ask,
  place: makePlace({ side: component === 'machine' ? 'whole' : 'left', component }),
}));

const mm = fc.double({ min: -100, max: 900, noNaN: true });

const what = fc.constantFrom(...places).chain(({ item, ask, place }) => {
  const read = (fields: object) => fc.record({ kind: fc.constant(ask.kind), ...fields });
  const unit = fc.constantFrom('mm', 'in', 'in/32', 'in/16');
  const typed = fc.constant('12');
  const pair = fc.tuple(typed, typed);
  const shapes = {
    finding: () => read({ finding: fc.constantFrom(...(ask.kind === 'finding' ? ask.findings : [''])) }),
    length: () => read({ mm, typed, unit }),
    pitch: () => read({ totalMm: mm, links: fc.integer({ min: 1, max: 20 }), typed, unit }),
    tread: () => read({ centreMm: mm, linkMm: mm, typed: pair, unit }),
    pair: () => read({ outerMm: mm, innerMm: mm, typed: pair, unit }),
    crack: () => read({ lengthMm: mm, depthMm: mm, cordVisible: fc.boolean() }),
    sag: () =>
      read({
        mm: fc.array(mm, { minLength: 1, maxLength: 4 }),
        typed: fc.array(typed, { maxLength: 4 }),
        unit,
        method: fc.constantFrom('string', 'roller-gap', 'deflection'),
        posture: fc.constantFrom('ground', 'raised'),
        clean: fc.constantFrom('clean', 'working-dirt', 'packed'),
      }),
  };
  return shapes[ask.kind]().map((observed) => ({ item, place, observed }));
});

const reading = fc
  .tuple(id, what, fc.integer({ min: 0, max: 9999 }), unknownFields, note)
  .map(([walk, { item, place, observed }, n, later, said]) => ({
    key: keyOf(`reading/${walk}/${place}/${item}/${n}`),
    value: { v: 1, what: observed, note: said, ...later } as RecordValue,
  }));

const machines = fc.tuple(id, note, unknownFields).map(([each, said, later]) => ({
  key: keyOf(`machine/${each}`),
  value: { ...machine, note: said, ...later } as RecordValue,
}));

const photos = fc.tuple(id, hash, hash, note, unknownFields).map(([walk, sha, original, said, later]) => ({
  key: keyOf(`photo/${walk}/${sha}`),
  value: {
    v: 1,
    type: 'image/jpeg',
    bytes: 1,
    width: 4,
    height: 3,
    original: { sha256: original, bytes: 2 },
    shows: [{ place: 'left.track', item: 'lug' }],
    from: 'camera',
    note: said,
    ...later,
  } as RecordValue,
}));

/** Kinds that this build does not read, and values of later builds: carried along. */
const opaque = fc.oneof(
  fc
    .tuple(id, hash, unknownFields)
    .map(([walk, sha, later]) => ({ key: keyOf(`photo/${walk}/${sha}`), value: { v: 2, ...later } })),
  fc.tuple(id, unknownFields).map(([each, later]) => ({ key: keyOf(`same/${each}`), value: later })),
  fc.tuple(id, fc.integer({ min: 2 }), unknownFields).map(([each, v, later]) => ({
    key: keyOf(`machine/${each}`),
    value: { v, ...later } as RecordValue,
  })),
);

/** Any record that somebody could have written by hand. */
export const unstampedRecord = fc.oneof(reading, machines, photos, opaque);

const counter = fc.integer({ min: 1, max: 5000 });
const devices = fc.stringMatching(/^[0-9a-f]{16}$/);

const stampedRecord = fc
  .record({
    record: unstampedRecord,
    isRemoval: fc.boolean(),
    counter,
    device: devices,
    seen: fc.dictionary(devices, fc.nat(4999), { maxKeys: 3 }),
    by: id,
  })
  .map(({ record, isRemoval, counter: at, device: on, seen, by }): Version => {
    const below = Object.entries(seen).map(([each, count]) => [each, Math.min(count, at - 1)]);
    const stamp = makeStamp(at, on as typeof device);
    return {
      key: record.key,
      ...(!isRemoval && { value: record.value }),
      stamp,
      seen: Object.fromEntries(below) as Version['seen'],
      by,
    };
  });

/** Versions as phones make them, of all kinds, with removals and with values of later builds. */
export const versionList = fc.array(stampedRecord, { minLength: 1, maxLength: 6 });

/** Records by hand, each key once. */
export const unstampedList = fc.uniqueArray(unstampedRecord, {
  minLength: 1,
  maxLength: 6,
  selector: ({ key }) => key,
});

export const plain = (records: readonly FileRecord[]): unknown =>
  JSON.parse(JSON.stringify(records)) as unknown;
