import type { Page } from '@playwright/test';

/** Draws a line across the pad like a finger that does not stop. */
export async function draw(page: Page, label: string): Promise<void> {
  const field = page.locator('[data-pad]').filter({ has: page.getByRole('img', { name: label }) });
  await field.scrollIntoViewIfNeeded();
  const box = await field.boundingBox();
  if (box === null) throw new Error('no pad');
  const at = (share: number) =>
    [
      box.x + box.width * (0.1 + 0.8 * share),
      box.y + box.height * (0.5 + 0.3 * Math.sin(share * 9)),
    ] as const;
  await page.mouse.move(...at(0));
  await page.mouse.down();
  for (let step = 1; step <= 30; step += 1) await page.mouse.move(...at(step / 30));
  await page.mouse.up();
}
