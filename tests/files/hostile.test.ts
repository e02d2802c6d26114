import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readWalkFile } from '../../src/files/walk-file.ts';
import { fileOf, machine, machineKey } from './samples.ts';

const example = new Uint8Array(readFileSync(new URL('../../src/files/example.json', import.meta.url)));

function errorOf(input: string | Uint8Array) {
  const read = readWalkFile(input);
  return read.ok ? undefined : read.error;
}

const bytes = (...list: number[]): Uint8Array => Uint8Array.from(list);

describe('hostile files', () => {
  test.each<[string, string | Uint8Array, object]>([
    ['nothing', '', { kind: 'empty' }],
    ['no bytes', bytes(), { kind: 'empty' }],
    ['spaces', ' \n\t ', { kind: 'empty' }],
    ['a picture', bytes(0xff, 0xd8, 0xff, 0xe0, 0, 16), { kind: 'not-text' }],
    ['a zip', bytes(0x50, 0x4b, 3, 4, 20, 0), { kind: 'not-json', line: 1, column: 1 }],
    ['bytes that are no UTF-8', bytes(0x7b, 0xc3, 0x28, 0x7d), { kind: 'not-text' }],
    ['half of the mark of UTF-16', bytes(0xff, 0x30), { kind: 'not-text' }],
    ['the other half', bytes(0x30, 0xfe), { kind: 'not-text' }],
    ['a text cut in the middle of a character', bytes(0x7b, 0x22, 0xc3), { kind: 'truncated' }],
    ['UTF-16 cut in the middle of a character', bytes(0xff, 0xfe, 0x7b, 0x00, 0x22), { kind: 'truncated' }],
    ['a page', '<!doctype html><script>alert(1)</script>', { kind: 'not-json', line: 1, column: 1 }],
    ['a script', 'alert(1)', { kind: 'not-json', line: 1, column: 1 }],
    [
      'JSON with a slip',
      '{\n  "format": "sagline-walk",\n  version: 1\n}',
      { kind: 'not-json', line: 3, column: 3 },
    ],
    [
      'a name twice',
      '{"format":"sagline-walk",\n"format":"x"}',
      { kind: 'repeated-name', line: 2, column: 1 },
    ],
    ['lists in lists', '['.repeat(100_000), { kind: 'too-deep', most: 40 }],
    ['objects in objects', '{"a":'.repeat(100_000) + '1' + '}'.repeat(100_000), { kind: 'too-deep' }],
    [
      'a prototype',
      '{"format":"sagline-walk","version":1,"records":[],"__proto__":{"admin":true}}',
      { kind: 'forbidden-name', name: '__proto__', line: 1 },
    ],
    [
      'a prototype in a value',
      fileOf([{ key: machineKey, value: machine }]).replace('"name"', '"__proto__":{"x":1},"name"'),
      { kind: 'forbidden-name' },
    ],
  ])('[F10] %s', (_, input, expected) => {
    expect(errorOf(input)).toMatchObject(expected);
  });

  test('[F10] a hostile file leaves the prototype as it was', () => {
    readWalkFile('{"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}}}');
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });

  test('[F9] cut off at any byte, it is truncated and nothing else', () => {
    const end = example.lastIndexOf(0x7d);
    for (let at = 1; at < end; at += 7) {
      expect(errorOf(example.subarray(0, at)), `at ${at}`).toEqual({ kind: 'truncated' });
    }
  });

  test('[F10] flipped bytes never throw', () => {
    const flips = fc.array(fc.tuple(fc.nat(example.length - 1), fc.integer({ min: 1, max: 255 })), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(flips, (list) => {
        const changed = example.slice();
        for (const [at, bits] of list) changed[at] = (changed[at] ?? 0) ^ bits;
        readWalkFile(changed);
      }),
      { numRuns: 200 },
    );
  });

  test('[F10] whatever JSON stands where a record should, it never throws', () => {
    fc.assert(
      fc.property(
        fc.jsonValue(),
        fc.constantFrom('records', 'seals', 'version', 'format'),
        (value, field) => {
          readWalkFile(fileOf([{ key: machineKey, value: machine }], { [field]: value }));
          readWalkFile(fileOf([{ key: machineKey, value }]));
          readWalkFile(fileOf([value]));
        },
      ),
      { numRuns: 200 },
    );
  });
});
