/**
 * The worker that opens the app where the line does not: it keeps the built files, and nothing else. With a line pages come from the server as ever,
 * so that an update is there at the next opening. It does not push itself in front of the one before it: pages that are open keep the
 * files that they were built with until the last of them is closed.
 */
import { NO_PAGE } from '@rootclock/contracts/interfaces';
import { clientsClaim } from 'workbox-core';
import { cleanupOutdatedCaches, matchPrecache, type PrecacheEntry, precache } from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';

/** Written in by the build. */
declare const SHELL_FILES: PrecacheEntry[];

/** A line that has not brought the page by then counts as none. */
const PATIENCE_MS = 3_000;
const PAGE = '/index.html';

async function fromLineFirst(request: Request, address: string): Promise<Response> {
  const asked = fetch(request);
  const patience = new Promise<null>((resolve) => setTimeout(resolve, PATIENCE_MS, null));
  const answer = await Promise.race([asked.catch(() => null), patience]);
  // What a proxy says for a server that is away is no page either.
  if (answer !== null && answer.status < 500) return answer;
  return (await matchPrecache(address)) ?? asked;
}

clientsClaim();
cleanupOutdatedCaches();
const files = SHELL_FILES;
precache(files);

registerRoute(new NavigationRoute(({ request }) => fromLineFirst(request, PAGE), { denylist: [NO_PAGE] }));
const kept = new Set(files.map(({ url }) => url));
registerRoute(
  ({ url, sameOrigin }) => sameOrigin && kept.has(url.pathname),
  // What is named after its content never changes; everything else keeps its address and is asked for anew.
  async ({ request, url }) =>
    url.pathname.startsWith('/assets/')
      ? ((await matchPrecache(request)) ?? fetch(request))
      : fromLineFirst(request, url.pathname),
);
