/**
 * Keeps the built program on the machine, so that it starts and works without a network after the first visit.
 *
 * Stages. Install: every built file goes into a cache of this version; files that an older version holds under the same
 * name (names carry a hash of what they hold) are taken from there. Wait: a newer version never takes over a page that
 * runs; it waits until the page asks or all are closed. Activate: caches go, except this version's and that of the one
 * that was used last, whose late parts a page that still runs may ask for. Fetch: the page comes from this version's
 * cache, its files from this or any; what is not there is asked of the network. Nothing but the page's own origin is ever
 * touched.
 */
import { addressOf, type Built, keepVersion, keptAnswer, PAGE, type Shelves, takeUpVersion } from "./kept-versions.ts";

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
const built = JSON.parse("COPPERBAND_BUILT") as Built;
const shelves: Shelves = {
  caches,
  scope: worker.registration.scope,
  fetch: (request) => fetch(request),
  now: Date.now,
};

worker.addEventListener("install", (event) => event.waitUntil(keepVersion(built, shelves)));
worker.addEventListener("activate", (event) => event.waitUntil(activate()));
worker.addEventListener("message", ({ data }) => {
  if (data === "use-newer") void worker.skipWaiting();
});
worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== "GET" || address.origin !== location.origin) return;
  if (request.mode !== "navigate") event.respondWith(answer(request));
  else if (isPage(address)) event.respondWith(answer(new Request(addressOf(PAGE, shelves))));
});

async function activate(): Promise<void> {
  await takeUpVersion(built, shelves);
  await worker.clients.claim();
}

async function answer(request: Request): Promise<Response> {
  return (await keptAnswer(request, built, shelves)) ?? fetch(request);
}

function isPage({ pathname }: URL): boolean {
  const base = new URL(worker.registration.scope).pathname;
  return pathname === base || pathname === base + PAGE;
}
