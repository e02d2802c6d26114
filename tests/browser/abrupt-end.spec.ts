import { expect } from '@playwright/test';
import { test } from './fixtures.ts';
import { killAgainAndAgain, tallyLine } from './walk-killed.ts';

// Named so that it begins first: it takes longest, and the other tests run beside it.
test('[B36] the browser killed twenty times in a walk loses nothing that was shown as saved', async ({
  browserName,
  origin,
}) => {
  test.setTimeout(600_000);
  const tally = await killAgainAndAgain(browserName, origin, 20, 20_261_125);
  console.log(tallyLine(browserName, tally));
  // A run in which nothing had been saved would show nothing; how much it was is up to the machine's speed.
  expect(tally.saved).toBeGreaterThan(10);
});
