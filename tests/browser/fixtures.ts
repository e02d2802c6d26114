import { expect, test as base, type Page } from '@playwright/test';
import { startOrigin, type Origin } from './server.ts';

type Fixtures = {
  /** A server of this test's own, stopped and started at will; `page.goto('/')` goes to it. */
  origin: Origin;
  /** What must stay empty: broken rules of the content policy, errors on the page, requests to anyone else. */
  complaints: string[];
};

/** Firefox says so too when whoever leaves a page ends what it was loading. */
const endedLoad = 'A ServiceWorker intercepted the request and encountered an unexpected error';

/** A load that ended so near to leaving the page was ended by it. */
const leavingMs = 2000;

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
    const ended: { readonly text: string; readonly at: number }[] = [];
    const leavings: number[] = [];
    context.on('request', (request) => {
      if (request.isNavigationRequest()) leavings.push(Date.now());
    });
    const complain = (text: string): void => {
      if (text.includes(endedLoad)) ended.push({ text, at: Date.now() });
      else complaints.push(text);
    };
    page.on('console', (message) => {
      const text = message.text();
      if (message.type() === 'error' || text.includes('Content-Security-Policy')) complain(text);
    });
    page.on('pageerror', (error) => complain(String(error)));
    context.on('request', (request) => {
      if (new URL(request.url()).origin !== origin.url) complaints.push(`asks ${request.url()}`);
    });
    await page.addInitScript(() => {
      addEventListener('securitypolicyviolation', (event) =>
        console.error(event.violatedDirective, event.blockedURI),
      );
    });
    await use(complaints);
    const isLeaving = (at: number): boolean => leavings.some((left) => Math.abs(at - left) < leavingMs);
    complaints.push(...ended.flatMap(({ text, at }) => (isLeaving(at) ? [] : [text])));
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
