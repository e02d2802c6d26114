import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import {
  checkBarrels,
  checkDatabaseDoor,
  checkDates,
  checkMarkup,
  checkPlaces,
  checkPurity,
} from './walls/forbidden.ts';
import { checkImports, rooms } from './walls/rooms.ts';
import { checkSentences, staleAllowances } from './walls/sentences.ts';
import { filesUnder, projectSources, type Finding, type SourceFile } from './walls/source-tree.ts';

type Check = (file: SourceFile) => Finding[];

const root = join(import.meta.dirname, '..');
const sources = projectSources();
const product = sources.filter(({ path }) => !path.startsWith('tests/'));

/** Built apart, so that this file does not break its own rule. */
const somewhere = ['', 'home', 'someone'].join('/');

const walls: {
  id: string;
  rule: string;
  check: Check;
  files: SourceFile[];
  faults: [path: string, text: string][];
  fine: [path: string, text: string][];
}[] = [
  {
    id: 'RM1',
    rule: 'a room imports only the rooms and packages of its row',
    check: checkImports,
    files: product,
    faults: [
      ['src/core/a.ts', "import { store } from '../storage/store.ts';"],
      ['src/core/a.ts', "export const later = import('../app/start.tsx');"],
      ['src/core/a.ts', "import { readFile } from 'node:fs';"],
      ['src/core/a.ts', "import { z } from 'zod/mini';"],
      ['src/core/a.ts', "import * as z from 'zod';"],
      ['src/words/a.ts', "import type { A } from '../files/a.ts';"],
      ['src/app/a.tsx', "import { openDB } from 'idb';"],
      ['src/server/deep/a.ts', "import { a } from '../../app/a.ts';"],
      ['service-worker/a.ts', "import { a } from '../src/core/a.ts';"],
      ['src/cli/a.ts', "import { a } from '../../tests/a.ts';"],
    ],
    fine: [
      ['src/core/a.ts', "import * as z from 'zod/mini'; import { b } from './b.ts';"],
      ['src/app/screens/a.tsx', "import { a } from '../../core/a.ts'; import '../styles/a.css';"],
      ['src/cli/a.ts', "import { argv } from 'node:process';"],
    ],
  },
  {
    id: 'RM2',
    rule: 'core, reference and protocol know no clock, no chance and no machine',
    check: checkPurity,
    files: product,
    faults: [
      ['src/core/a.ts', 'export const now = () => Date.now();'],
      ['src/core/a.ts', 'export const now = () => new Date();'],
      ['src/core/a.ts', "export const now = globalThis['Date'], a = Date;"],
      ['src/reference/a.ts', 'export const id = Math.random();'],
      ['src/reference/a.ts', "export const id = Math['random']();"],
      ['src/protocol/a.ts', 'export const at = performance.now();'],
      ['src/protocol/a.ts', 'export const id = () => crypto.randomUUID();'],
      ['src/core/a.ts', 'export const here = import.meta.url;'],
    ],
    fine: [
      ['src/core/a.ts', 'export const at = (a: { performance: number }) => a.performance + Math.sqrt(2);'],
      ['src/app/a.ts', 'export const now = () => Date.now();'],
    ],
  },
  {
    id: 'RM3',
    rule: 'every text that a person reads lives in src/words',
    check: checkSentences,
    files: product,
    faults: [
      ['src/core/a.ts', "export const why = 'The part is worn';"],
      ['src/core/a.ts', 'export const why = (n: number) => `${n} parts left`;'],
      ['src/core/a.ts', 'export const why = (n: number) => `worn by ${n}`;'],
      ['src/app/a.tsx', 'export const A = () => <p>Save</p>;'],
      ['src/app/a.tsx', 'export const A = () => <p aria-label="Save" />;'],
      ['src/app/a.tsx', 'export const A = () => <p>{"Save it"}</p>;'],
      ['src/storage/a.ts', "export const a = { message: 'storage is full' };"],
      ['src/files/a.ts', "export const a = ['no, not this'];"],
      ['src/app/a.ts', "export const a = '(worn: very much)';"],
      ['src/app/a.ts', "useLive('a', [], () => 'walks of it');"],
    ],
    fine: [
      ['src/words/a.ts', "export const why = 'The part is worn';"],
      ['src/core/a.ts', "throw new Error('never this way');"],
      ['src/app/a.ts', "matchMedia('(display-mode: standalone)');"],
      ['src/app/a.ts', "useLive('walks of it', [], () => 1);"],
      ['src/core/a.ts', "assert(1 > 0, 'one is more than none');"],
      ['src/core/a.ts', "export const key = 'light-work'; export type A = 'two words';"],
      ['src/core/a.ts', 'export const key = (a: string, b: string) => `walk/${a} ${b}`;'],
      ['src/app/a.tsx', 'export const A = () => <path class="a b" d="M1 2L3 4" />;'],
    ],
  },
  {
    id: 'RM4',
    rule: 'a file is imported where it is',
    check: checkBarrels,
    files: sources,
    faults: [
      ['src/core/a.ts', "export * from './b.ts';"],
      ['src/core/a.ts', "export { b } from './b.ts';"],
      ['src/core/index.ts', 'export const a = 1;'],
      ['src/core/a.ts', 'export default 1;'],
    ],
    fine: [
      ['src/core/a.ts', 'const a = 1; export { a };'],
      ['src/app/vite.config.ts', 'export default {};'],
    ],
  },
  {
    id: 'RM5',
    rule: 'text never becomes markup or code',
    check: checkMarkup,
    files: product,
    faults: [
      ['src/app/a.ts', "document.body.innerHTML = '';"],
      ['src/app/a.tsx', 'export const A = () => <p dangerouslySetInnerHTML={{ __html: "" }} />;'],
      ['src/app/a.ts', "document.body.insertAdjacentHTML('afterend', '');"],
      ['src/app/a.ts', "document.write('');"],
      ['src/app/a.ts', "eval('1');"],
      ['src/app/a.ts', "new Function('1');"],
    ],
    fine: [['src/app/a.ts', "document.body.textContent = '<b>';"]],
  },
  {
    id: 'RM6',
    rule: 'a date is never made from text, nor cut out of one',
    check: checkDates,
    files: product,
    faults: [
      ['src/app/a.ts', "new Date('2026-01-01');"],
      ['src/app/a.ts', 'export const a = (text: string) => new Date(text);'],
      ['src/app/a.ts', "Date.parse('2026-01-01');"],
      ['src/app/a.ts', 'export const day = (a: Date) => a.toISOString().slice(0, 10);'],
      ['src/app/a.ts', "export const day = (a: Date) => a.toISOString().split('T')[0];"],
    ],
    fine: [
      [
        'src/app/a.ts',
        'export const a = (atMs: number) => [new Date(), new Date(atMs), new Date(2026, 0, 1)];',
      ],
    ],
  },
  {
    id: 'RM7',
    rule: 'no file knows the machine it was written on',
    check: checkPlaces,
    files: [...sources, ...otherTexts()],
    faults: [
      ['README.md', `see ${somewhere}/sagline`],
      ['src/app/a.ts', `const a = '${somewhere}';`],
      ['package-lock.json', ['"https:/', ['registry', 'npmjs', 'org'].join('.'), 'a"'].join('/')],
    ],
    fine: [['README.md', 'https://example.org/home/page']],
  },
  {
    id: 'RM8',
    rule: 'only storage opens the database',
    check: checkDatabaseDoor,
    files: product,
    faults: [['src/app/a.ts', "indexedDB.open('a');"]],
    fine: [['src/storage/a.ts', "indexedDB.open('a');"]],
  },
];

describe.each(walls)('wall $id', ({ id, rule, check, files, faults, fine }) => {
  test(`[${id}] ${rule}`, () => {
    expect(files.length).toBeGreaterThan(0);
    expect(files.flatMap((file) => check(file))).toEqual([]);
  });

  test.each(faults)(`[${id}] in %s a planted fault is found: %s`, (path, text) => {
    expect(check({ path, text }).map((finding) => finding.rule)).toContain(id);
  });

  test.each(fine)(`[${id}] in %s this is no fault: %s`, (path, text) => {
    expect(check({ path, text })).toEqual([]);
  });
});

test('[RM3] every allowed text is still there', () => {
  expect(staleAllowances(sources)).toEqual([]);
});

test.each(Object.entries(rooms))(
  '[RM1] the tsconfig of %s refers to no room outside its row',
  (room, row) => {
    const config = JSON.parse(readFileSync(join(root, room, 'tsconfig.json'), 'utf8')) as {
      references?: { path: string }[];
    };
    const referred = (config.references ?? []).map(({ path }) => join(room, path).replaceAll('\\', '/'));
    const allowed = [...row.rooms, 'src/app/tsconfig.build.json'];
    expect(referred.filter((path) => !allowed.includes(path))).toEqual([]);
  },
);

test('[RM1] the compiler refuses an import across a wall, a browser and a clock that core does not know', () => {
  const planted = join(root, 'build/planted');
  rmSync(planted, { recursive: true, force: true });
  for (const room of ['core', 'storage']) {
    mkdirSync(join(planted, 'src', room), { recursive: true });
    cpSync(join(root, 'src', room, 'tsconfig.json'), join(planted, 'src', room, 'tsconfig.json'));
  }
  cpSync(join(root, 'src/tsconfig.base.json'), join(planted, 'src/tsconfig.base.json'));
  writeFileSync(join(planted, 'src/storage/b.ts'), 'export const b = 1;\n');
  const faults = ["import { b } from '../storage/b.ts';", 'export const a = [b, document, process];'];
  writeFileSync(join(planted, 'src/core/a.ts'), faults.join('\n'));
  const said = outputOf(() =>
    execFileSync(join(root, 'node_modules/.bin/tsc'), ['-b', join(planted, 'src/core')], {
      encoding: 'utf8',
    }),
  );
  expect(said).toContain('TS6307');
  expect(said).toMatch(/Cannot find name 'document'/);
  expect(said).toMatch(/Cannot find name 'process'/);
});

function outputOf(run: () => string): string {
  try {
    return run();
  } catch (error) {
    return String((error as { stdout?: unknown }).stdout);
  }
}

function otherTexts(): SourceFile[] {
  const inFolders = ['src', 'service-worker', 'tests', 'public', '.ci']
    .flatMap(filesUnder)
    .filter((path) => /\.(?:mjs|json|html|css|md|txt|svg|webmanifest)$|\.ci\//.test(path));
  const onTop = readdirSync(root, { withFileTypes: true }).flatMap((entry) =>
    entry.isFile() ? entry.name : [],
  );
  return [...onTop, ...inFolders].map((path) => ({
    path,
    text: readFileSync(join(root, path), 'utf8'),
  }));
}
