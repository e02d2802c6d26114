import type { Page } from '@playwright/test';

/**
 * Keeps what a page gives away, since not every engine tells a test of its downloads. Nothing is downloaded: Firefox
 * would open a panel that takes the focus from the page.
 */
export const keepGiven = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const make = URL.createObjectURL.bind(URL);
    URL.createObjectURL = (given: Blob): string => {
      Object.assign(globalThis, { given });
      return make(given);
    };
    HTMLAnchorElement.prototype.click = () => {};
  });

/** The bytes that the page gave away last. */
export async function givenBy(page: Page): Promise<Buffer> {
  const text = await page.evaluate(async () => {
    const bytes = new Uint8Array(await (globalThis as unknown as { given: Blob }).given.arrayBuffer());
    let binary = '';
    for (const byte of bytes) binary += String.fromCharCode(byte);
    return btoa(binary);
  });
  return Buffer.from(text, 'base64');
}
