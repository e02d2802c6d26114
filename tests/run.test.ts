import { execFileSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { findEngines, missingEngines } from './engines.mjs';
import { gate, playwright, runAll, vitest } from './suites.mjs';

const root = join(import.meta.dirname, '..');
const engine = { path: process.execPath, version: 'an engine' };

describe('browsers', () => {
  test('[G1] a path that is given goes before any that is found', () => {
    const found = findEngines({ CHROMIUM_PATH: process.execPath, PATH: '' });
    expect(found).toEqual({ chromium: { path: process.execPath, version: process.version } });
  });

  test('[G1] a given path that is no program is not replaced by another', () => {
    expect(findEngines({ ...process.env, CHROMIUM_PATH: root }).chromium).toBeUndefined();
  });

  test('[G2] one engine is enough, unless others are required', () => {
    expect(missingEngines({ firefox: engine }, {})).toBeUndefined();
    const env = { REQUIRE_ENGINES: 'chromium,firefox' };
    expect(missingEngines({ firefox: engine }, env)).toMatch(/^Please install chromium .*\.$/);
    expect(missingEngines({ firefox: engine, chromium: engine }, env)).toBeUndefined();
  });

  test('[G2] without a browser the tests say what to install, in one sentence, and fail', () => {
    const env = { ...process.env, CHROMIUM_PATH: '/nowhere', FIREFOX_PATH: '/nowhere', REQUIRE_ENGINES: '' };
    let outcome: unknown;
    try {
      execFileSync(process.execPath, [join(root, 'tests/run.mjs')], { env, encoding: 'utf8', stdio: 'pipe' });
    } catch (error) {
      outcome = error;
    }
    expect(outcome).toMatchObject({ status: 1, stdout: '' });
    expect((outcome as { stderr: string }).stderr).toMatch(/^Please install Chromium or Firefox .*\.\n$/);
  });
});

describe('counting', () => {
  const name = `counting-${process.pid}`;
  const report = join(root, 'build/tests', `${name}.json`);
  const write = (content: unknown): void => {
    mkdirSync(join(root, 'build/tests'), { recursive: true });
    writeFileSync(report, typeof content === 'string' ? content : JSON.stringify(content));
  };
  afterAll(() => rmSync(report, { force: true }));

  const suite = vitest(name, []);
  const ended = (code: number) => ({ code, output: '' });
  const vitestReport = (numPassedTests: number, numFailedTests: number) => ({
    numPassedTests,
    numFailedTests,
    numPendingTests: 1,
    numTodoTests: 0,
  });

  test.each([
    ['all passed', 0, vitestReport(3, 0), { passed: 3, failed: 0, skipped: 1 }],
    ['one failed', 1, vitestReport(3, 1), { passed: 3, failed: 1, skipped: 1 }],
    ['fell over after its tests', 1, vitestReport(3, 0), { passed: 3, failed: 1, skipped: 1 }],
    ['ran none', 0, vitestReport(0, 0), { passed: 0, failed: 1, skipped: 1 }],
    ['left no report', 0, 'not JSON', { passed: 0, failed: 1, skipped: 0 }],
  ])('[G3] a suite that %s', (_what, code, content, counts) => {
    write(content);
    expect(suite.count(ended(code))).toEqual(counts);
  });

  test('[G3] browser tests are counted from their report', () => {
    write({ stats: { expected: 4, unexpected: 2, flaky: 0, skipped: 1 } });
    expect(playwright(name, []).count(ended(1))).toEqual({ passed: 4, failed: 2, skipped: 1 });
  });

  test('[G4] a suite that needs a broken one is not run and has failed; the last line adds all up', async () => {
    const lines: string[] = [];
    const log = vi.spyOn(console, 'log').mockImplementation((line: string) => void lines.push(line));
    await runAll([
      gate('first', ['node', '-e', 'process.exit(3)']),
      { ...gate('second', ['node', '-e', '']), needs: 'first' },
      gate('third', ['node', '-e', '']),
    ]);
    log.mockRestore();
    const code = process.exitCode;
    process.exitCode = 0;
    expect(code).toBe(1);
    expect(lines.at(-1)).toBe('1 passed, 2 failed');
    expect(lines).toContain('second: 0 passed, 1 failed (not run, because first failed)');
  });

  test('[G3] a gate counts as one', () => {
    expect(gate('a', []).count(ended(0))).toEqual({ passed: 1, failed: 0, skipped: 0 });
    expect(gate('a', []).count(ended(2))).toEqual({ passed: 0, failed: 1, skipped: 0 });
  });
});
