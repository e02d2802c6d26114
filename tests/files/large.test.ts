import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoFile } from '../../src/cli/demo.ts';
import { scoreFile } from '../../src/cli/score.ts';
import { ok } from '../../src/core/result.ts';
import { openFile } from '../../src/files/open-file.ts';
import { readWalkFile } from '../../src/files/walk-file.ts';
import { writeBackup } from '../../src/files/write-backup.ts';
import { writeWalkFile } from '../../src/files/write-walk-file.ts';
import { fileOf, machineKey, plain, unstampedList, version, versionList } from './samples.ts';

const limit = 25_000_000;

describe('large files', () => {
  test.each<[string, string | Uint8Array, object]>([
    [
      'one byte over the limit',
      new Uint8Array(limit + 1).fill(0x20),
      { kind: 'too-large', mostBytes: limit },
    ],
    ['50 MB of text', ' '.repeat(50_000_000), { kind: 'too-large', mostBytes: limit }],
    ['25 MB of spaces', new Uint8Array(limit).fill(0x20), { kind: 'empty' }],
    ['25 MB of brackets', `[${'[],'.repeat(8_333_332)}0]`, { kind: 'too-many', most: 2_000_000 }],
    ['25 MB of digits', '1'.repeat(limit), { kind: 'wrong-format' }],
    ['25 MB of one text', `"${'a'.repeat(limit - 2)}"`, { kind: 'wrong-format' }],
    ['25 MB of escapes', `"${'\\n'.repeat(limit / 2 - 1)}"`, { kind: 'wrong-format' }],
    ['25 MB of open quotes', '"'.repeat(limit), { kind: 'not-json' }],
    [
      'a million short names',
      `{${Array.from({ length: 1_000_000 }, (_, i) => `"${i}":0`).join()}}`,
      { kind: 'wrong-format' },
    ],
    [
      'a hundred thousand bad records',
      fileOf(Array.from({ length: 100_000 }, () => ({}))),
      { kind: 'bad-record' },
    ],
  ])('[F10] %s', { timeout: 60_000 }, (_, input, expected) => {
    const before = performance.now();
    const read = readWalkFile(input);
    expect(read.ok ? undefined : read.error).toMatchObject(expected);
    expect(performance.now() - before).toBeLessThan(20_000);
  });

  test('[F14] a backup larger than any document is read', { timeout: 60_000 }, async () => {
    const versions = Array.from({ length: 450 }, (_, i) =>
      version(machineKey, { v: 2, blob: 'x'.repeat(60_000) }, i + 1),
    );
    const parts: Uint8Array[] = [];
    const exported = async function* () {
      yield ok(versions);
    };
    await writeBackup(exported(), (text) => void parts.push(new TextEncoder().encode(text)));
    const size = parts.reduce((sum, { length }) => sum + length, 0);
    expect(size).toBeGreaterThan(limit);
    const open = async function* () {
      yield* parts;
    };
    expect(await openFile({ size, open })).toMatchObject({
      ok: true,
      value: { kind: 'backup', count: 450, refused: [] },
    });
  });

  test(
    '[F10] flipped bytes of the demo never throw, and what still reads still scores',
    { timeout: 120_000 },
    async () => {
      const demo = new TextEncoder().encode(await demoFile());
      const flips = fc.array(fc.tuple(fc.nat(demo.length - 1), fc.integer({ min: 1, max: 255 })), {
        minLength: 1,
        maxLength: 3,
      });
      let scored = 0;
      fc.assert(
        fc.property(flips, (list) => {
          const changed = demo.slice();
          for (const [at, bits] of list) changed[at] = (changed[at] ?? 0) ^ bits;
          if (scoreFile(changed).ok) scored += 1;
        }),
        { numRuns: 500 },
      );
      expect(scored).toBeGreaterThan(10);
    },
  );

  test('[F1] a thousand files come back equal', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(versionList, unstampedList, (versions, byHand) => {
        const read = readWalkFile(writeWalkFile([...versions, ...byHand]));
        expect(read).toMatchObject({
          ok: true,
          value: { versions: plain(versions), unstamped: plain(byHand) },
        });
      }),
      { numRuns: 1000 },
    );
  });
});
