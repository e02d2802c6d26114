import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { build, transform } from 'esbuild';
import { describe, expect, test } from 'vitest';
import { catalogued } from '../../src/app/catalogue.ts';
import type { Text } from '../../src/app/literals.ts';
import { partWords } from '../../src/app/part-words.ts';

const names = catalogued.map((path) => basename(path));
const folder = join(import.meta.dirname, '../../src/words/en');
const sourceOf = (name: string): string => readFileSync(join(folder, name), 'utf8');

type Module = Readonly<Record<string, unknown>>;

async function run(contents: string): Promise<Module> {
  const bundled = await build({
    stdin: { contents, loader: 'ts', resolveDir: folder },
    bundle: true,
    format: 'esm',
    write: false,
  });
  const code = Buffer.from(bundled.outputFiles[0]?.contents ?? []).toString('base64');
  return (await import(`data:text/javascript;base64,${code}`)) as Module;
}

/** Runs what is left of a file, with its texts given back to it as JSON. */
async function runParted(path: string, source: string): Promise<Module> {
  const texts: Text[] = [];
  const code = partWords(path, source, texts);
  return run(`const $texts: any = ${JSON.stringify(texts)}; ${code}`);
}

const samples: readonly (readonly unknown[])[] = [
  [1, 2, 3],
  [7, 7, 7],
  ['cord', 'left', '12'],
  ['idler', 1, []],
  [{ kind: 'not-read', params: {} }, {}, true],
];

/** What a function says to each sample, or that it cannot take it. */
const answers = (say: (...sample: readonly unknown[]) => unknown): readonly unknown[] =>
  samples.map((sample) => {
    try {
      return said(say(...sample));
    } catch (error) {
      return error instanceof Error ? error.name : error;
    }
  });

/** A value by what can be read of it: functions by their answers, tables by their names in any order. */
function said(value: unknown): unknown {
  if (typeof value === 'function') return answers(value as (...sample: readonly unknown[]) => unknown);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, said(part)]));
}

describe('words shipped as data', () => {
  test.each(names)('[WD1] %s says the same with its texts beside it', async (name) => {
    const [whole, parted] = [await run(sourceOf(name)), await runParted(name, sourceOf(name))];
    expect(Object.keys(whole).length).toBeGreaterThan(0);
    expect(said(parted)).toEqual(said(whole));
  });

  test.each(names)('[WD2] %s keeps no sentence in its code', async (name) => {
    const { code } = await transform(partWords(name, sourceOf(name), []), { loader: 'ts' });
    expect(code.replaceAll(/\/\*.*?\*\//gs, '')).not.toMatch(/(?:\p{L}{2,} ){4}/u);
  });

  test.each([
    ['a table', "export const a = { one: 'the first of them', two: ['a second', 'and a third'] } as const;"],
    [
      'a table with functions',
      "export const a = { b: 'some words to read', say: (n: number): string => `${n} of many in a row`, c: { d: 'more words to read', e: () => 'and at last some more' } };",
    ],
    [
      'a later name that counts',
      "const b = { one: 'the first of all' }; export const a = { one: 'what came before', ...b };",
    ],
    [
      'an earlier name that does not count',
      "const b = { one: 'the first of all' }; export const a = { ...b, one: 'what comes after' };",
    ],
    [
      'a constant in a table',
      "const leak = { dry: 'dry', wet: 'it leaks' }; export const a = { hub: leak, rim: { ...leak } };",
    ],
    [
      'an argument with the name of a constant',
      "const name = 'a constant with a name'; export const a = (name: string) => ({ held: { name: name }, name });",
    ],
    [
      'a template with escapes',
      'export const a = (n: number) => `a \\`quoted\\` text, \\${none}: ${n === 1 ? `one of a very long row` : `${n} of a long row`}\\n`;',
    ],
    [
      'a choice in a switch',
      "export const a = (kind: unknown) => { switch (kind) { case 'the name of a kind': return 'the words for a kind'; default: return 'words for any other'; } };",
    ],
    [
      'types',
      "type Kind = 'the name of one kind' | 'that of another'; export const a: Readonly<Record<Kind, string>> = { 'the name of one kind': 'one', 'that of another': 'two' } satisfies Record<Kind, string>;",
    ],
    [
      'numbers and truth',
      'export const a = { few: [1, 2.5, -3], many: [true, false], none: null, gone: undefined };',
    ],
    [
      'a comment',
      "export const a = {\n  // Why it is so, in full.\n  one: 'the first of them', // and more\n  two: () => 'the second of them',\n};",
    ],
  ])('[WD3] %s stays what it is', async (_what, source) => {
    const parted = await runParted('sample.ts', source);
    expect(said(parted)).toEqual(said(await run(source)));
    expect(parted['a']).toBeDefined();
  });

  test('[WD4] what cannot be read is a fault of the build', () => {
    expect(() => partWords('sample.ts', 'export const = 1', [])).toThrow('sample.ts');
  });
});
