import type { RouteHandlerCallback } from 'workbox-core/types.js';
import {
  inboxCache,
  inboxField,
  inboxNameHeader,
  inboxPath,
  mostInboxFileBytes,
  mostInboxFiles,
} from '../src/protocol/inbox.ts';

/** Lays shared files down and opens the page that asks what to do with them; a page cannot read such a request. */
export const takeShared: RouteHandlerCallback = async ({ request }) => {
  const kept = await keep(request).catch(() => false);
  return Response.redirect(kept ? inboxPath : `${inboxPath}?lost`, 303);
};

async function keep(request: Request): Promise<boolean> {
  const files = (await request.formData()).getAll(inboxField).filter((each) => each instanceof File);
  const cache = await caches.open(inboxCache);
  const free = mostInboxFiles - (await cache.keys()).length;
  const fitting = files.filter(({ size }) => size <= mostInboxFileBytes).slice(0, Math.max(0, free));
  for (const file of fitting) {
    const headers = { 'content-type': 'application/octet-stream', [inboxNameHeader]: encodeURI(file.name) };
    await cache.put(`${inboxPath}/${crypto.randomUUID()}`, new Response(file, { headers }));
  }
  return files.length > 0 && fitting.length === files.length;
}
