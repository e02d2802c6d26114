import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { readWalkFile } from '../../src/files/walk-file.ts';

const run = promisify(execFile);
const cwd = fileURLToPath(new URL('../../', import.meta.url));

test('[X8] npx sagline runs from a built checkout', { timeout: 60_000 }, async () => {
  const demo = await run('npx', ['--no-install', 'sagline', 'demo'], {
    cwd,
    shell: process.platform === 'win32',
  });
  expect(readWalkFile(demo.stdout).ok).toBe(true);
  expect(demo.stderr).toBe('');
});
