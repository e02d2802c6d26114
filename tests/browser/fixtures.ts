import { expect, test as base, type Page } from '@playwright/test';
import { startOrigin, type Origin } from './server.ts';

type Fixtures = {
  /** A server of this test's own, stopped and started at will; `page.goto('/')` goes to it. */
  origin: Origin;
  /** What must stay empty: broken rules of the content policy, errors on the page, requests to anyone else. */
  complaints: string[];
};

export const test = base.extend<Fixtures>({
  // Playwright reads the names of the fixtures out of the pattern, so it has to stand there even when empty.
  origin: async ({}, use) => {
    const origin = await startOrigin();
    await use(origin);
    await origin.close();
  },
  baseURL: async ({ origin }, use) => use(origin.url),
  complaints: async ({ page, context, origin }, use) => {
    const complaints: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error' || message.text().includes('Content-Security-Policy'))
        complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(String(error)));
    context.on('request', (request) => {
      if (new URL(request.url()).origin !== origin.url) complaints.push(`asks ${request.url()}`);
    });
    await page.addInitScript(() => {
      addEventListener('securitypolicyviolation', (event) =>
        console.error(event.violatedDirective, event.blockedURI),
      );
    });
    await use(complaints);
    expect(complaints).toEqual([]);
  },
});

/** Waits until the worker holds every file and answers for the page: from here on the network may go. */
export async function keptOffline(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    if (navigator.serviceWorker.controller !== null) return;
    await new Promise((resolve) => {
      navigator.serviceWorker.addEventListener('controllerchange', resolve, { once: true });
    });
  });
}
