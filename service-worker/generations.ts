declare const self: ServiceWorkerGlobalScope;

const prefix = 'sagline-shell-';
const markCache = 'sagline-running';
const markUrl = '/running-shell';

/** The cache that holds this build's files. */
export const shellName = prefix + __BUILD_ID__;

/** On activation: keeps this build's files and those of the build that ran until now, drops all older ones. */
export async function forgetOldShells(): Promise<void> {
  const marks = await caches.open(markCache);
  const previous = await (await marks.match(markUrl))?.text();
  const old = (name: string): boolean => name.startsWith(prefix) && name !== shellName && name !== previous;
  await Promise.all((await caches.keys()).filter(old).map((name) => caches.delete(name)));
  await marks.put(markUrl, new Response(shellName));
  // Only the very first worker takes over open pages: they came from the network as this same build.
  if (previous === undefined) await self.clients.claim();
}
