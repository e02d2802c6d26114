import { describe, expect, test } from 'vitest';
import { faultLine, fileErrorLine, type FileProblem } from '../../src/words/en/file-errors.ts';

const place = { line: 3, column: 14 };
const fault = { path: ['shape', 'idlers'], problem: { kind: 'above', most: 3 } } as const;

const errors: readonly (readonly [FileProblem, string])[] = [
  [{ kind: 'empty' }, 'is empty'],
  [{ kind: 'not-text' }, 'no readable text'],
  [{ kind: 'truncated' }, 'breaks off'],
  [{ kind: 'wrong-format' }, 'not a walk file'],
  [{ kind: 'no-records' }, 'no records'],
  [{ kind: 'damaged' }, 'damaged'],
  [{ kind: 'unreadable' }, 'could not be read'],
  [{ kind: 'too-large', mostBytes: 25_000_000 }, 'larger than 25 MB'],
  [{ kind: 'too-deep', most: 40 }, 'nested deeper'],
  [{ kind: 'too-many', most: 100_000 }, '100000'],
  [{ kind: 'not-json', ...place }, 'not JSON: line 3, column 14'],
  [{ kind: 'repeated-name', name: 'key', ...place }, '“key” stands twice'],
  [{ kind: 'forbidden-name', name: '__proto__', ...place }, '“__proto__” is not allowed'],
  [{ kind: 'bad-entry', name: '../a' }, '“../a”'],
  [{ kind: 'wrong-photo', name: 'photos/a' }, 'bytes were changed'],
  [{ kind: 'large-photo', name: 'photos/a', mostMegapixels: 25 }, 'more than 25 megapixels'],
  [{ kind: 'newer-version', version: 2 }, 'newer version'],
  [{ kind: 'bad-header', ...fault }, 'at “shape.idlers” it is above 3'],
  [
    { kind: 'bad-record', key: 'machine/a', ...fault },
    '“machine/a” is not right: at “shape.idlers” it is above 3.',
  ],
  [{ kind: 'bad-key', key: 'x' }, '“x”'],
  [{ kind: 'bad-stamp', key: 'machine/a' }, '“machine/a”'],
  [{ kind: 'record-too-large', key: 'machine/a', mostBytes: 65_536 }, 'larger than 64 kB'],
  [{ kind: 'duplicate-record', key: 'machine/a' }, 'stands twice'],
];

describe('files that cannot be taken', () => {
  test.each(errors)('[L19] %j has its sentence', (error, part) => {
    const line = fileErrorLine(error);
    expect(line).toContain(part);
    expect(line).toMatch(/^[A-Z].*\.$/);
    expect(line).not.toMatch(/undefined|\[object/);
  });

  test('[L20] text of the file is cut, so that it cannot bury the sentence', () => {
    const line = fileErrorLine({ kind: 'bad-key', key: 'x'.repeat(5000) });
    expect(line.length).toBeLessThan(200);
  });

  test('[L21] a fault of the whole value names no field', () => {
    expect(faultLine({ path: [], problem: { kind: 'missing' } })).toBe('it is missing');
    expect(faultLine({ path: ['typed', 0], problem: { kind: 'longer', most: 40 } })).toBe(
      'at “typed.0” it is longer than 40 characters',
    );
  });
});
