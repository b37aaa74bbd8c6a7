/**
 * Keeps the built program on the machine, so that it starts and works without a network after the first visit.
 *
 * Stages. Install: every built file goes into a cache of this version; files that an older version holds under the same
 * name (names carry a hash of what they hold) are taken from there. Wait: a newer version never takes over a page that
 * runs; it waits until the page asks or all are closed. Activate: caches go, except this version's and the last one's,
 * whose late parts a page that still runs may ask for. Fetch: the page comes from this version's cache, its files from
 * any; what is not there is asked of the network. Nothing but the page's own origin is ever touched.
 */

/** What is used of a service worker's surroundings. */
interface Surroundings {
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: "install" | "activate", run: (event: LastingEvent) => void): void;
  addEventListener(type: "fetch", run: (event: FetchEvent) => void): void;
  addEventListener(type: "message", run: (event: MessageEvent) => void): void;
}
interface LastingEvent {
  waitUntil(work: Promise<unknown>): void;
}
interface FetchEvent {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

const worker = self as unknown as Surroundings;

/** Put in by the build: see build-offline.ts. */
const { version, files } = JSON.parse("COPPERBAND_BUILT") as { version: string; files: string[] };
const PREFIX = "copperband-";
const CACHE = PREFIX + version;
const PAGE = "index.html";

const addressOf = (file: string) => new URL(file, worker.registration.scope).href;

worker.addEventListener("install", (event) => event.waitUntil(install()));
worker.addEventListener("activate", (event) => event.waitUntil(activate()));
worker.addEventListener("message", ({ data }) => {
  if (data === "use-newer") void worker.skipWaiting();
});
worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== "GET" || address.origin !== location.origin) return;
  if (request.mode !== "navigate") event.respondWith(answer(request));
  else if (isPage(address)) event.respondWith(answer(new Request(addressOf(PAGE)), CACHE));
});

async function install(): Promise<void> {
  const cache = await caches.open(CACHE);
  await Promise.all(
    files.map(async (file) => {
      const address = addressOf(file);
      const held = hasHash(file) ? await caches.match(address, { ignoreVary: true }) : undefined;
      // Past the browser's own cache, which may hold the page of another version.
      await (held ? cache.put(address, held) : cache.add(new Request(address, { cache: "reload" })));
    }),
  );
}

async function activate(): Promise<void> {
  const others = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(others.slice(0, -1).map((name) => caches.delete(name)));
  await worker.clients.claim();
}

async function answer(request: Request, cacheName?: string): Promise<Response> {
  // What was asked for with other headers is the same file.
  const how = { ignoreVary: true, ...(cacheName === undefined ? {} : { cacheName }) };
  const held = await caches.match(request, how);
  return held ?? fetch(request);
}

function isPage({ pathname }: URL): boolean {
  const base = new URL(worker.registration.scope).pathname;
  return pathname === base || pathname === base + PAGE;
}

/** True for a file whose name changes with what it holds. */
function hasHash(file: string): boolean {
  return file.startsWith("assets/");
}
