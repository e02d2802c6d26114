import { expect } from '@playwright/test';
import { test } from './fixtures.ts';
import { killAgainAndAgain, tallyLine } from './walk-killed.ts';

for (const seed of [1, 2, 3, 4]) {
  test(`[B37] fifty kills with seed ${seed} lose nothing that was shown as saved`, async ({
    browserName,
    origin,
  }) => {
    test.setTimeout(1_800_000);
    const tally = await killAgainAndAgain(browserName, origin, 50, seed);
    console.log(tallyLine(browserName, tally));
    expect(tally.saved).toBeGreaterThan(100);
    expect(tally.drafts + tally.resumed).toBeGreaterThan(0);
  });
}
