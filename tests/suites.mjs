// How one suite of `npm test` is run and counted.
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../src/app/install.mjs';

/** @typedef {{ passed: number, failed: number, skipped: number }} Counts */
/** @typedef {{ code: number, output: string }} Ended */
/** @typedef {{ name: string, command: string[], env?: Record<string, string>, count: (ended: Ended) => Counts, show?: boolean, limitMs?: number, needs?: string }} Suite */

const results = join(root, 'build/tests');

/** No suite may hang the run. */
const usualLimitMs = 20 * 60_000;

/**
 * A check without tests of its own: it counts as one. With `show` its output is printed when it passes, too.
 * @param {string} name
 * @param {string[]} command
 * @param {{ show?: boolean, limitMs?: number }} [options]
 * @returns {Suite}
 */
export function gate(name, command, options = {}) {
  return {
    name,
    command,
    ...options,
    count: ({ code }) => ({ passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1, skipped: 0 }),
  };
}

/**
 * Tests in Node: projects of vitest.config.ts.
 * @param {string} name
 * @param {string[]} projects
 * @returns {Suite}
 */
export function vitest(name, projects) {
  const file = join(results, `${name}.json`);
  const config = ['--config', 'tests/vitest.config.ts', '--root', '.'];
  const reporters = ['--reporter=dot', '--reporter=json', `--outputFile.json=${file}`];
  return {
    name,
    command: ['vitest', 'run', ...config, ...reporters, ...projects.map((project) => `--project=${project}`)],
    count: (ended) =>
      counted(ended, file, (report) => ({
        passed: report.numPassedTests,
        failed: report.numFailedTests,
        skipped: report.numPendingTests + report.numTodoTests,
      })),
  };
}

/**
 * Tests in real browsers on the built app.
 * @param {string} name
 * @param {string[]} filters
 * @param {{ env?: Record<string, string>, limitMs?: number }} [options]
 * @returns {Suite}
 */
export function playwright(name, filters, options = {}) {
  const file = join(results, `${name}.json`);
  return {
    name,
    command: [
      'playwright',
      'test',
      '--config',
      'tests/browser/playwright.config.ts',
      '--reporter=list,json',
      ...filters,
    ],
    ...options,
    env: { ...options.env, PLAYWRIGHT_JSON_OUTPUT_FILE: file },
    count: (ended) =>
      counted(ended, file, ({ stats }) => ({
        passed: stats.expected + stats.flaky,
        failed: stats.unexpected,
        skipped: stats.skipped,
      })),
  };
}

/**
 * A suite that fell over without a failed test, or that ran none, has failed.
 * @param {Ended} ended
 * @param {string} file
 * @param {(report: any) => Counts} read
 * @returns {Counts}
 */
function counted(ended, file, read) {
  try {
    const counts = read(JSON.parse(readFileSync(file, 'utf8')));
    const silent = counts.failed === 0 && (ended.code !== 0 || counts.passed === 0);
    return silent ? { ...counts, failed: 1 } : counts;
  } catch {
    return { passed: 0, failed: 1, skipped: 0 };
  }
}

/**
 * Runs suite after suite, whatever becomes of each, and says in one last line how it went.
 * @param {Suite[]} suites
 */
export async function runAll(suites) {
  const total = { passed: 0, failed: 0 };
  const broken = new Set();
  for (const suite of suites) {
    const { passed, failed } = broken.has(suite.needs) ? skipSuite(suite) : await runSuite(suite);
    if (failed > 0) broken.add(suite.name);
    total.passed += passed;
    total.failed += failed;
  }
  console.log(`${total.passed} passed, ${total.failed} failed`);
  process.exitCode = total.failed === 0 ? 0 : 1;
}

/**
 * On what an older build left behind, tests would pass that should not.
 * @param {Suite} suite
 */
function skipSuite({ name, needs }) {
  console.log(`${name}: 0 passed, 1 failed (not run, because ${needs} failed)`);
  return { passed: 0, failed: 1 };
}

/**
 * Runs one suite and prints its share; what it wrote is shown when it failed.
 * @param {Suite} suite
 * @returns {Promise<Counts>}
 */
async function runSuite(suite) {
  const began = performance.now();
  const ended = await run(suite);
  const counts = suite.count(ended);
  if (counts.failed > 0 || suite.show) console.log(ended.output.trimEnd());
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  const skipped = counts.skipped > 0 ? `, ${counts.skipped} skipped` : '';
  console.log(`${suite.name}: ${counts.passed} passed, ${counts.failed} failed${skipped} (${seconds} s)`);
  return counts;
}

/**
 * @param {Suite} suite
 * @returns {Promise<Ended>}
 */
function run({ name, command: [program = '', ...args], env, limitMs = usualLimitMs }) {
  mkdirSync(results, { recursive: true });
  rmSync(join(results, `${name}.json`), { force: true });
  const path = program === 'node' ? process.execPath : join(root, 'node_modules/.bin', program);
  const child = spawn(path, args, {
    cwd: root,
    env: { ...process.env, NO_COLOR: '1', FORCE_COLOR: '0', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const timer = setTimeout(() => child.kill('SIGKILL'), limitMs);
  let output = '';
  const keep = (/** @type {Buffer} */ chunk) => void (output += chunk.toString());
  child.stdout.on('data', keep);
  child.stderr.on('data', keep);
  return new Promise((resolve) => {
    child.on('error', (error) => resolve({ code: 1, output: String(error) }));
    child.on('close', (code) => {
      clearTimeout(timer);
      resolve({ code: code ?? 1, output });
    });
  });
}
