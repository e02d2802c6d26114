import { expect, test } from '@playwright/test';
import { build } from 'esbuild';
import { join } from 'node:path';

test.skip(({ browserName }) => browserName !== 'chromium', 'only Chromium can be throttled');

const throttle = 6;

test('[BE7] on a phone six times slower a plan of 16 jobs takes some copies of 25 such inputs', async ({
  page,
}) => {
  const built = await build({
    entryPoints: [join(import.meta.dirname, 'plan-page.ts')],
    bundle: true,
    write: false,
    format: 'iife',
    logLevel: 'error',
  });
  await page.goto('about:blank');
  await page.addScriptTag({ content: built.outputFiles[0]?.text ?? '' });
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: throttle });
  const { planMs, copyMs } = await page.evaluate(() =>
    (globalThis as unknown as { planTimes: () => { planMs: number; copyMs: number } }).planTimes(),
  );
  console.log(
    `plan of 16 jobs at ${throttle}× throttle: ${(planMs / copyMs).toFixed(1)} × a copy of 25 inputs (${planMs.toFixed(0)} ms)`,
  );
  expect(planMs / copyMs).toBeLessThan(60);
});
