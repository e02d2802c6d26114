import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { covered, setTextSize, tooPale, tooSmall, type Fault } from './access-page.ts';

/** Faults by where and how they were found. */
type Found = Readonly<Record<string, readonly Fault[]>>;

const entry = (name: string, faults: readonly Fault[]): Found =>
  faults.length > 0 ? { [name]: faults } : {};

/** What axe finds on a page, and texts below 7 to 1, in light and dark. */
export async function readingFaults(page: Page, name: string): Promise<Found> {
  let found: Found = {};
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const { violations } = await new AxeBuilder({ page }).setLegacyMode(true).analyze();
    const faults = [
      ...violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`),
      ...(await tooPale(page)),
    ];
    found = { ...found, ...entry(`${name}, ${colorScheme}`, faults) };
  }
  return found;
}

/**
 * Targets too small to tap at these widths in pixels; then, at 360, what scrolls sideways with text of twice the size,
 * and controls that something lies over when they have the focus.
 */
export async function reachFaults(page: Page, name: string, widths = [320, 360, 412]): Promise<Found> {
  let found: Found = {};
  for (const width of widths) {
    await page.setViewportSize({ width, height: 740 });
    found = { ...found, ...entry(`${name}, ${width} px`, await tooSmall(page)) };
  }
  await page.setViewportSize({ width: 360, height: 740 });
  await setTextSize(page, 2);
  const sideways = (await tooSmall(page)).filter((fault) => fault.startsWith('scrolls'));
  await setTextSize(page, 1);
  return {
    ...found,
    ...entry(`${name}, text of 200 %`, sideways),
    ...entry(`${name}, focus covered`, await covered(page)),
  };
}

/** Opens everything that is folded away; folds within folds come to light only once those are open. */
export async function openFolds(page: Page): Promise<void> {
  for (let depth = 0; depth < 2; depth += 1)
    await page.locator('main details').evaluateAll((folds) => {
      for (const fold of folds) fold.setAttribute('open', '');
    });
}
