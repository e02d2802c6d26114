import { PrecacheController } from 'workbox-precaching/PrecacheController';
import { PrecacheRoute } from 'workbox-precaching/PrecacheRoute';
import { NavigationRoute } from 'workbox-routing/NavigationRoute';
import { registerRoute } from 'workbox-routing/registerRoute';
import { appRoutes } from '../src/protocol/app-routes.ts';
import { inboxPath } from '../src/protocol/inbox.ts';
import { forgetOldShells, shellName } from './generations.ts';
import { takeShared } from './inbox.ts';
import { answerNavigation } from './navigation.ts';

declare const self: ServiceWorkerGlobalScope;

// A cache of its own for every build, so that activating one never takes files from an open older page.
const precache = new PrecacheController({ cacheName: shellName });
precache.addToCacheList(self.__WB_MANIFEST);

self.addEventListener('install', (event) => void precache.install(event));
self.addEventListener('activate', (event) => event.waitUntil(forgetOldShells()));
// A new build waits until a person takes it; nothing else here calls skipWaiting.
self.addEventListener('message', (event) => {
  if ((event.data as { type?: unknown } | null)?.type === 'SKIP_WAITING') void self.skipWaiting();
});

registerRoute(new NavigationRoute(answerNavigation(precache), { allowlist: [appRoutes] }));
registerRoute(({ url, sameOrigin }) => sameOrigin && url.pathname === inboxPath, takeShared, 'POST');
registerRoute(
  new PrecacheRoute(precache, { cleanURLs: false, directoryIndex: '', ignoreURLParametersMatching: [] }),
);
// A page of the build before this one still asks for its own chunks.
registerRoute(
  ({ url, sameOrigin }) => sameOrigin && url.pathname.startsWith('/assets/'),
  async ({ request }) => (await caches.match(request)) ?? fetch(request),
);
