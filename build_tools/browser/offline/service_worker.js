// Keeps a whole edition of the handbook on the reader's device, or none of it.
//
// Workbox does the keeping: every file is fetched with its SHA-256, so that a file which is damaged or
// belongs to another edition fails the installation, and the edition in use stays untouched. Files that did
// not change between editions are not fetched again, nor those of an installation that broke off.
/* global EDITION -- put in by the build: {date, base, files: [[path, sha256 in base64, bytes]]} */
import { PrecacheController, PrecacheRoute } from "workbox-precaching";
import { NavigationRoute, Route, Router } from "workbox-routing";

const AT_ONCE = 6;
const scope = new URL(self.registration.scope);
const controller = new PrecacheController({
  // Asks the server whether a file that the browser already holds is still good, instead of loading it anew.
  plugins: [{ requestWillFetch: async ({ request }) => new Request(request, { cache: "no-cache" }) }],
});
controller.addToCacheList(
  EDITION.files.map(([url, hash]) => ({ url, revision: hash.slice(0, 16), integrity: `sha256-${hash}` })),
);

self.addEventListener("install", (event) => event.waitUntil(keepAll(event)));
self.addEventListener("activate", (event) => {
  // Drops what only older editions had; this edition is in use from here on.
  controller.activate(event);
  event.waitUntil(self.clients.claim());
});
self.addEventListener("message", ({ data, ports }) => {
  if (data?.bendbook === "take over") self.skipWaiting();
  if (data?.bendbook === "edition") ports[0].postMessage({ date: EDITION.date });
});

// Workbox fetches one file after the other, which takes many times as long where each answer is slow to
// come; so several lanes share its list here.
async function keepAll(event) {
  const sizes = new Map(EDITION.files.map(([path, , bytes]) => [new URL(path, scope).href, bytes]));
  const waiting = [...controller.getURLsToCacheKeys()];
  const total = [...sizes.values()].reduce((sum, bytes) => sum + bytes, 0);
  const cache = await caches.open(controller.strategy.cacheName);
  const before = new Set((await cache.keys()).map((request) => request.url));
  const kept = [];
  let done = 0;
  let broken = "";
  const lane = async () => {
    for (let next; (next = waiting.pop()); ) {
      const [url, cacheKey] = next;
      const request = new Request(url, {
        integrity: controller.getIntegrityForCacheKey(cacheKey),
        credentials: "same-origin",
      });
      await Promise.all(controller.strategy.handleAll({ request, event, params: { cacheKey } })).catch((error) => {
        broken ||= url;
        throw error;
      });
      kept.push(cacheKey);
      done += sizes.get(url);
      if (!broken && (kept.length % 8 === 0 || !waiting.length)) await tell({ keeping: { done, total } });
    }
  };
  try {
    await Promise.all(Array.from({ length: AT_ONCE }, lane));
  } catch (error) {
    waiting.length = 0;
    const full = error.name === "QuotaExceededError";
    // A device that ran full gets its space back; what was there before may belong to the edition in use.
    if (full) for (const key of kept) if (!before.has(key)) await cache.delete(key);
    await tell({ failed: full ? "full" : "failed", why: `${broken}: ${error}` });
    throw error;
  }
}

async function tell(message) {
  const windows = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  for (const page of windows) if (page.url.startsWith(scope.href)) page.postMessage(message);
}

const router = new Router();

// An address without its last slash would break every relative link of the page, so it is mended, not served.
router.registerRoute(
  new Route(
    ({ request, url }) => request.mode === "navigate" && isKept(`${url.origin}${url.pathname}/index.html`),
    async ({ url }) => Response.redirect(`${url.origin}${url.pathname}/${url.search}`, 302),
  ),
);

// What stands after a ? only says how to show a page, such as the words to highlight.
router.registerRoute(new PrecacheRoute(controller, { ignoreURLParametersMatching: [/.*/], cleanURLs: false }));

// Any other page: the server may know it. If it does not or is not there, the handbook's own page says so.
router.registerRoute(
  new NavigationRoute(async ({ request }) => {
    try {
      const response = await fetch(request);
      return response.status === 404 ? await notFound() : response;
    } catch {
      return notFound();
    }
  }),
);
router.addFetchListener();

function isKept(address) {
  return controller.getCacheKeyForURL(address) !== undefined;
}

// The page is written for the folder it was built for; in another folder its addresses are moved along.
async function notFound() {
  const page = await controller.matchPrecache(new URL("404.html", scope).href);
  if (!page) return Response.error();
  const html = await page.text();
  const quotedBase = new RegExp(`(["'])${EDITION.base.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}(?!/)`, "g");
  const moved = await allowingItsScripts(html.replace(quotedBase, `$1${scope.pathname}`));
  return new Response(moved, { status: 404, headers: { "Content-Type": "text/html; charset=utf-8" } });
}

// The page's policy names its inline scripts by their hashes, and a moved address changes one of them.
async function allowingItsScripts(html) {
  const hashes = await Promise.all(
    [...html.matchAll(/<script>([^]*?)<\/script>/g)].map(async ([, text]) => {
      const bytes = new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text)));
      return `'sha256-${btoa(String.fromCharCode(...bytes))}'`;
    }),
  );
  return html.replace(/'sha256-[^']+'(?: 'sha256-[^']+')*/, hashes.join(" "));
}
