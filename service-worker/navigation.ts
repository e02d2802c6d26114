import type { RouteHandlerCallback, RouteHandlerCallbackOptions } from 'workbox-core/types.js';
import type { PrecacheController } from 'workbox-precaching/PrecacheController';

/** A damaged shell waits this long for the network before it is used as it is. */
const networkMs = 4000;

/** Without a page at all: an empty one with the repair script, which then shows itself. */
const barePage = '<!doctype html><meta charset="utf-8" /><script src="/boot.js"></script>';

/**
 * Answers every screen with index.html from the cache. Browsers may evict single entries, and a page whose script
 * is gone stays white: so the shell is first checked to be whole, else the network answers and the gaps are filled.
 */
export function answerNavigation(precache: PrecacheController): RouteHandlerCallback {
  return async (options) => {
    const missing = await missingFiles(precache);
    if (missing.length === 0) return cachedPage(precache);
    try {
      const response = await fetch(options.request, { signal: AbortSignal.timeout(networkMs) });
      options.event.waitUntil(fill(precache, missing, options));
      if (response.ok) return response;
    } catch {
      // No network: what is left of the shell is all there is.
    }
    return cachedPage(precache);
  };
}

async function cachedPage(precache: PrecacheController): Promise<Response> {
  return (
    (await precache.matchPrecache('/index.html')) ??
    new Response(barePage, { headers: { 'content-type': 'text/html' } })
  );
}

async function missingFiles(precache: PrecacheController): Promise<string[]> {
  const cache = await caches.open(precache.strategy.cacheName);
  const held = new Set((await cache.keys()).map((request) => request.url));
  const needed = [...precache.getURLsToCacheKeys()].filter(([url]) => /\.(?:html|js|css|json)$/.test(url));
  return needed.filter(([, cacheKey]) => !held.has(cacheKey)).map(([url]) => url);
}

/** Puts a file back only when its bytes are this build's: the strategy checks them against the integrity. */
async function fill(
  precache: PrecacheController,
  urls: string[],
  { event }: RouteHandlerCallbackOptions,
): Promise<void> {
  for (const url of urls) {
    const cacheKey = precache.getCacheKeyForURL(url);
    if (cacheKey === undefined) continue;
    const integrity = precache.getIntegrityForCacheKey(cacheKey);
    await precache.strategy.handle({ request: new Request(url), event, params: { cacheKey, integrity } });
  }
}
