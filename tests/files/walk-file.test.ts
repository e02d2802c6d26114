import type { RecordKey } from '../../src/core/keys.ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { walkFormat } from '../../src/files/document.ts';
import { readWalkFile } from '../../src/files/walk-file.ts';
import { writeWalkFile } from '../../src/files/write-walk-file.ts';
import { fileErrorLine } from '../../src/words/en/file-errors.ts';
import {
  cordKey,
  device,
  fileOf,
  lug,
  lugKey,
  machine,
  machineKey,
  plain,
  unstampedList,
  version,
  versionList,
} from './samples.ts';

const good = { key: machineKey, value: machine };
const utf16 = (text: string): Uint8Array => Uint8Array.from([0xff, 0xfe, ...Buffer.from(text, 'utf16le')]);

function errorOf(input: string | Uint8Array) {
  const read = readWalkFile(input);
  if (read.ok) throw new Error(`taken: ${JSON.stringify(read.value)}`);
  expect(fileErrorLine(read.error)).toMatch(/^[^\n]+\.$/);
  return read.error;
}

function contentOf(input: string | Uint8Array) {
  const read = readWalkFile(input);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

describe('what goes out comes back', () => {
  test('[F1] import after export gives equal records', () => {
    fc.assert(
      fc.property(versionList, unstampedList, (versions, byHand) => {
        const content = contentOf(writeWalkFile([...versions, ...byHand]));
        expect(content.versions).toEqual(plain(versions));
        expect(content.unstamped).toEqual(plain(byHand));
        expect(content.refused).toEqual([]);
      }),
      { numRuns: 50 },
    );
  });

  test('[F1] text, UTF-8 and the UTF-16 of a redirect read alike', () => {
    fc.assert(
      fc.property(versionList, (versions) => {
        const text = writeWalkFile(versions);
        const content = contentOf(text);
        expect(contentOf(new TextEncoder().encode(text))).toEqual(content);
        expect(contentOf(utf16(text))).toEqual(content);
      }),
      { numRuns: 20 },
    );
  });

  test('[F1] however the text is laid out, it says the same', () => {
    const text = writeWalkFile([
      version(machineKey, machine),
      { key: lugKey, value: lug },
      { key: `seal/w/${'0'.repeat(64)}` as RecordKey, value: { v: 1, jws: 'a.b.c' } },
    ]);
    const laidOut = `\uFEFF\r\n${JSON.stringify(JSON.parse(text), null, '\t').replaceAll('\n', '\r\n')}`;
    expect(contentOf(laidOut)).toEqual(contentOf(text));
    expect(contentOf(text).seals).toEqual(['a.b.c']);
    expect(contentOf(text).format).toBe(walkFormat);
  });

  test('[F1] a mark of the byte order stands at the start alone', () => {
    const text = writeWalkFile([{ key: machineKey, value: { ...machine, note: '\uFEFFa\uFEFF' } }]);
    expect(contentOf(text).unstamped[0]?.value['note']).toBe('\uFEFFa\uFEFF');
  });

  test('[F1] one record stands on one line', () => {
    const lines = writeWalkFile([version(machineKey, machine), { key: lugKey, value: lug }]).split('\n');
    expect(lines).toHaveLength(5);
    expect(lines[0]).toBe('{"format":"sagline-walk","version":1,"records":[');
    expect(lines[1]).toMatch(/^\{"key":"machine\/digger",.*\},$/);
    expect(lines[3]).toBe('],"seals":[]}');
  });

  test('[F2] a demo record is never written with real data', () => {
    const demo = { ...good, key: `demo/${machineKey}` as typeof machineKey };
    expect(() => writeWalkFile([demo])).toThrow('not to be exported');
  });
});

describe('stamps', () => {
  const stamped = version(machineKey, machine, 3);

  test('[F3] a stamp alone is enough: seen is nothing, by is the device', () => {
    const { seen: _seen, by: _by, ...bare } = stamped;
    expect(contentOf(fileOf([bare])).versions).toEqual([{ ...bare, seen: {}, by: device }]);
  });

  test('[F3] a version without a value is a removal', () => {
    const removal = version(machineKey, undefined, 9);
    const { versions } = contentOf(fileOf([removal]));
    expect(versions).toEqual([removal]);
    expect(Object.keys(versions[0] ?? {})).not.toContain('value');
  });

  test.each([
    ['an odd stamp', { stamp: 'yesterday' }],
    ['a stamp that counts 0', { stamp: `${'0'.repeat(12)}-${device}`, seen: { [device]: 0 } }],
    ['seen of no device', { seen: { phone: 1 } }],
    ['seen below nothing', { seen: { [device]: -1 } }],
    ['seen as far as itself', { seen: { [device]: 3 } }],
    ['an author with capitals', { by: 'Somebody' }],
    ['seen without a stamp', { stamp: undefined, by: undefined }],
    ['an author without a stamp', { stamp: undefined, seen: undefined }],
  ])('[F3] %s is a bad stamp', (_, change) => {
    expect(errorOf(fileOf([{ ...stamped, ...change }]))).toEqual({
      kind: 'bad-stamp',
      key: machineKey,
      index: 0,
    });
  });

  test('[F3] the same key may have a version and a record by hand', () => {
    const content = contentOf(fileOf([stamped, good]));
    expect([content.versions.length, content.unstamped.length]).toEqual([1, 1]);
  });
});

describe('records', () => {
  const of = (key: string, value: unknown) => ({ key, value });
  const reads = (what: object) => of(cordKey, { v: 1, what });

  test.each<[string, unknown, object]>([
    [
      'no object',
      3,
      { kind: 'bad-record', key: '#2', path: [], problem: { kind: 'wrong-type', expected: 'object' } },
    ],
    ['null', null, { kind: 'bad-record', key: '#2' }],
    [
      'no key',
      { value: machine },
      { kind: 'bad-record', key: '#2', path: ['key'], problem: { kind: 'missing' } },
    ],
    ['a number as key', of(7 as never, machine), { kind: 'bad-record', key: '#2', path: ['key'] }],
    ['an unknown kind', of('wheel/a', machine), { kind: 'bad-key', key: 'wheel/a', index: 1 }],
    ['a place that cannot be', of('reading/w1/top.track/sag/1', lug), { kind: 'bad-key' }],
    ['a way out of the key', of('machine/../a', machine), { kind: 'bad-key' }],
    ['an empty key', of('', machine), { kind: 'bad-key', key: '' }],
    ['the demo', of('demo/machine/a', machine), { kind: 'bad-key', key: 'demo/machine/a' }],
    [
      'neither value nor stamp',
      { key: lugKey },
      { kind: 'bad-record', key: lugKey, path: ['value'], problem: { kind: 'missing' } },
    ],
    [
      'null as value',
      of(lugKey, null),
      { kind: 'bad-record', path: ['value'], problem: { kind: 'wrong-type' } },
    ],
    ['a list as value', of(lugKey, [lug]), { kind: 'bad-record', path: ['value'] }],
    [
      'a field beside the envelope',
      { ...good, extra: 1 },
      { kind: 'bad-record', path: [], problem: { kind: 'unknown-field', name: 'extra' } },
    ],
    [
      'no v',
      of(machineKey, { ...machine, v: undefined }),
      { path: ['value', 'v'], problem: { kind: 'missing' } },
    ],
    [
      'v as text',
      of(machineKey, { ...machine, v: '2' }),
      { path: ['value', 'v'], problem: { kind: 'not-one-of', options: ['1'] } },
    ],
    [
      'an object for a text',
      of(machineKey, { ...machine, name: { type: 'div', props: {} } }),
      { path: ['value', 'name'], problem: { kind: 'wrong-type', expected: 'string' } },
    ],
    [
      'a name too long',
      of(machineKey, { ...machine, name: 'x'.repeat(121) }),
      { path: ['value', 'name'], problem: { kind: 'longer', most: 120 } },
    ],
    [
      'too many idlers',
      of(machineKey, { ...machine, shape: { ...machine.shape, idlers: 4 } }),
      { path: ['value', 'shape', 'idlers'], problem: { kind: 'above', most: 3 } },
    ],
    [
      'half an idler',
      of(machineKey, { ...machine, shape: { ...machine.shape, idlers: 1.5 } }),
      { path: ['value', 'shape', 'idlers'], problem: { kind: 'wrong-type', expected: 'int' } },
    ],
    [
      'a negative mass',
      of(machineKey, { ...machine, massKg: -1 }),
      { path: ['value', 'massKg'], problem: { kind: 'below', least: 0 } },
    ],
    [
      'a reading of nothing known',
      reads({ kind: 'smell' }),
      { path: ['value', 'what', 'kind'], problem: { kind: 'not-one-of' } },
    ],
    [
      'a size where a finding is asked',
      reads(lug.what),
      { path: ['value', 'what', 'kind'], problem: { kind: 'not-one-of', options: ['finding', 'unseen'] } },
    ],
    [
      'a finding that the item does not have',
      reads({ kind: 'finding', finding: 'showign' }),
      { path: ['value', 'what', 'finding'], problem: { kind: 'not-one-of' } },
    ],
    [
      'a pass of one item',
      reads({ kind: 'pass', items: [], except: [], seen: 'whole' }),
      { path: ['value', 'what', 'kind'] },
    ],
    [
      'a pass that is none',
      of('reading/w1/left.track/pass-tread/1', lug),
      { path: ['value', 'what', 'kind'], problem: { kind: 'not-one-of', options: ['pass'] } },
    ],
    [
      'half a character',
      of(machineKey, { ...machine, note: '\ud83d' }),
      { path: ['value'], problem: { kind: 'lone-surrogate' } },
    ],
    [
      'half a character in a name',
      of('same/a', { ['\udc00']: 1 }),
      { path: ['value'], problem: { kind: 'lone-surrogate' } },
    ],
    [
      'a rule set nested too deep',
      of('rules/a', {
        v: 1,
        language: 1,
        name: 'deep',
        covers: {},
        rules: [
          {
            id: 'a',
            items: ['sag'],
            when: nested(9),
            call: 'run',
            meanwhile: 'work',
            reason: { message: 'a' },
          },
        ],
      }),
      { kind: 'bad-record', path: ['value', 'rules', 0, 'when'], problem: { kind: 'no-alternative' } },
    ],
    ['a condition of its own', of('same/a', { deep: nested(32) }), { problem: { kind: 'too-deep' } }],
  ])('[F4] %s is refused and named', (_, record, expected) => {
    expect(errorOf(fileOf([good, record]))).toMatchObject({ index: 1, ...expected });
  });

  test('[F4] a number too large to be one is refused', () => {
    const text = fileOf([{ key: 'same/a', value: { sum: 12345 } }]).replace('12345', '1e999');
    expect(errorOf(text)).toMatchObject({ kind: 'bad-record', problem: { kind: 'not-finite' } });
  });

  test.each(['constructor', 'prototype', 'toString', 'hasOwnProperty'])(
    '[F4] a field called %s stays a field',
    (field) => {
      const value = { ...machine, [field]: { polluted: true } };
      expect(contentOf(fileOf([{ key: machineKey, value }])).unstamped).toEqual([{ key: machineKey, value }]);
      expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    },
  );

  test('[F4] not seen, an unknown item, a later v and an unknown kind are taken as they are', () => {
    const records = [
      { key: cordKey, value: { v: 1, what: { kind: 'unseen', why: 'mud' } } },
      { key: 'reading/w1/left.track/hoverboard/1', value: lug },
      { key: machineKey, value: { v: 2, wheels: 4 } },
      { key: 'same/a', value: { anything: [1, 'two', null] } },
    ];
    expect(contentOf(fileOf(records)).unstamped).toEqual(records);
  });

  test('[F4] a script in a note is text like any other', () => {
    const note = '<img src=x onerror="alert(1)"><script>alert(2)</script>';
    const [record] = contentOf(fileOf([{ key: machineKey, value: { ...machine, note } }])).unstamped;
    expect(record?.value['note']).toBe(note);
  });

  test('[F5] the same record twice is one, two values of one key are refused', () => {
    const again = { key: machineKey, value: Object.fromEntries(Object.entries(machine).reverse()) };
    expect(contentOf(fileOf([good, again])).unstamped).toHaveLength(1);
    const other = { key: machineKey, value: { ...machine, name: 'Other' } };
    expect(errorOf(fileOf([good, good, other]))).toEqual({
      kind: 'duplicate-record',
      key: machineKey,
      index: 2,
    });
  });

  test('[F6] a record may take 64 kB of text, and no more', () => {
    const sized = (bytes: number) => {
      const empty = JSON.stringify({ key: 'same/a', value: { a: '' } }).length;
      return fileOf([{ key: 'same/a', value: { a: 'x'.repeat(bytes - empty) } }]);
    };
    expect(readWalkFile(sized(65_536)).ok).toBe(true);
    expect(errorOf(sized(65_537))).toEqual({
      kind: 'record-too-large',
      key: 'same/a',
      index: 0,
      mostBytes: 65_536,
    });
  });

  test(
    '[F6] no walk has more than 2000 readings, and no record more than 100 sides',
    { timeout: 30_000 },
    () => {
      const readings = (count: number) =>
        Array.from({ length: count }, (_, n) => ({
          key: `reading/w${n % 2}/left.track/lug-depth/${n}`,
          value: lug,
        }));
      expect(readWalkFile(fileOf(readings(4000))).ok).toBe(true);
      expect(errorOf(fileOf(readings(4001)))).toEqual({ kind: 'too-many', most: 2000 });
      const sides = (count: number) =>
        Array.from({ length: count }, (_, n) => version(machineKey, machine, n + 1));
      expect(contentOf(fileOf([...sides(100), ...readings(1)])).count).toBe(101);
      expect(errorOf(fileOf(sides(101)))).toEqual({ kind: 'too-many', most: 100 });
    },
  );

  test('[F6] a seal may take 512 kB', () => {
    const seal = (length: number) =>
      fileOf([{ key: `seal/a/${'0'.repeat(64)}`, value: { v: 1, jws: `a.${'x'.repeat(length)}.b` } }]);
    expect(readWalkFile(seal(400_000)).ok).toBe(true);
    expect(errorOf(seal(600_000))).toMatchObject({ kind: 'record-too-large', mostBytes: 524_288 });
  });
});

/** A condition that holds itself so many times. */
function nested(depth: number): object {
  return depth === 0 ? { unknown: 'sag' } : { not: nested(depth - 1) };
}

describe('the head', () => {
  test.each<[string, string, object]>([
    ['a list', '[]', { kind: 'wrong-format' }],
    ['a text', '"sagline-walk"', { kind: 'wrong-format' }],
    ['null', 'null', { kind: 'wrong-format' }],
    ['no format', '{"version":1,"records":[]}', { kind: 'wrong-format' }],
    ['another format', fileOf([good], { format: 'other' }), { kind: 'wrong-format' }],
    ['a later version', fileOf([good], { version: 2, extra: 1 }), { kind: 'newer-version', version: 2 }],
    [
      'version 0',
      fileOf([good], { version: 0 }),
      { kind: 'bad-header', path: ['version'], problem: { kind: 'not-one-of', options: ['1'] } },
    ],
    ['a version between two', fileOf([good], { version: 1.5 }), { kind: 'bad-header', path: ['version'] }],
    ['a version as text', fileOf([good], { version: '2' }), { kind: 'bad-header', path: ['version'] }],
    [
      'no version',
      fileOf([good], { version: undefined }),
      { kind: 'bad-header', problem: { kind: 'missing' } },
    ],
    ['no list of records', fileOf([good], { records: {} }), { kind: 'bad-header', path: ['records'] }],
    ['a seal that is no text', fileOf([good], { seals: [1] }), { kind: 'bad-header', path: ['seals', 0] }],
    [
      'too many seals',
      fileOf([good], { seals: Array(1001).fill('') }),
      { kind: 'bad-header', path: ['seals'] },
    ],
    [
      'a field of its own',
      fileOf([good], { photos: [] }),
      { kind: 'bad-header', problem: { kind: 'unknown-field', name: 'photos' } },
    ],
    ['no records', fileOf([]), { kind: 'no-records' }],
    [
      'too many records',
      fileOf(Array.from({ length: 100_001 }, () => 0)),
      { kind: 'too-many', most: 100_000 },
    ],
  ])('[F7] %s', (_, text, expected) => {
    expect(errorOf(text)).toMatchObject(expected);
  });

  test('[F7] an editor may be told where the schema is, and seals may be left out', () => {
    const read = readWalkFile(fileOf([good], { $schema: './walk.schema.json' }));
    expect(read.ok && read.value.seals).toEqual([]);
  });
});
