/**
 * The addresses that the app itself answers, matched against path and query: the server and the service
 * worker answer these, and no others, with index.html. An allow-list, because a fallback for everything
 * also swallows downloads, sign-in redirects and missing chunks.
 *
 * No dot may follow: a name with an ending is a file, never a screen.
 */
export const appRoutes =
  /^\/(?:(?:machine|walk)\/[^?.]*|(?:sheets|rules|prices|rates|tracks)(?:\/[^?.]*)?|settings|about|demo|inbox|check|hauling)?(?:\?.*)?$/;

/** Whether an address (path with its query) is a screen of the app. */
export function isAppRoute(pathAndQuery: string): boolean {
  return appRoutes.test(pathAndQuery);
}
