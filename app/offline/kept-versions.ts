/**
 * Versions of the built program that are kept on the machine, each in a cache of its own.
 *
 * Terms. Used: a version that has come to answer for pages; when that was stands in its cache. A version whose files did
 * not all come, and one that waited until a newer one took its place, were never used.
 */

export const PAGE = "index.html";
const PREFIX = "copperband-";
/** Where the time stands at which a version was taken up last; no file of a build is called so. */
const USED = "used-since";

/** What the build tells of itself. */
export interface Built {
  readonly version: string;
  /** Every file the program needs, as lies beside the service worker. */
  readonly files: readonly string[];
}

/** What is used of the browser. */
export interface Shelves {
  readonly caches: CacheStorage;
  /** The address that file names lie under. */
  readonly scope: string;
  fetch(request: Request): Promise<Response>;
  now(): number;
}

/**
 * Brings every file of a version into its cache, the page last: taken from an older version where the name carries a hash
 * of what it holds, else past the browser's own cache, which may hold the page of another version. An error when a file
 * does not come, or is not what the version names: half of one version and half of another is never kept as one.
 */
export async function keepVersion(built: Built, shelves: Shelves): Promise<void> {
  const cache = await shelves.caches.open(PREFIX + built.version);
  await Promise.all(built.files.filter((file) => file !== PAGE).map((file) => keepFile(file, cache, shelves)));
  const page = await brought(PAGE, shelves);
  const others = assetsNamedIn(await page.clone().text()).filter((file) => !built.files.includes(file));
  if (others.length > 0) throw new Error(`${PAGE} is of another version: it names ${others.join(", ")}`);
  await cache.put(addressOf(PAGE, shelves), page);
}

/** Marks a version as used, and lets all others go but the one that was used last: a page of it may still run. */
export async function takeUpVersion({ version }: Built, shelves: Shelves): Promise<void> {
  const { caches } = shelves;
  const own = await caches.open(PREFIX + version);
  await own.put(addressOf(USED, shelves), new Response(String(shelves.now())));
  const others = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== PREFIX + version);
  const times = await Promise.all(others.map((name) => usedSince(name, shelves)));
  const last = times.lastIndexOf(Math.max(...times));
  await Promise.all(others.map((name, i) => (i === last ? undefined : caches.delete(name))));
}

/** What is kept under an address: of this version, else, for a late part of a page that still runs, of another. */
export async function keptAnswer(
  request: Request,
  { version }: Built,
  { caches }: Pick<Shelves, "caches">,
): Promise<Response | undefined> {
  // What was asked for with other headers is the same file.
  const own = await caches.match(request, { ignoreVary: true, cacheName: PREFIX + version });
  if (own || isPageAddress(request.url)) return own;
  return caches.match(request, { ignoreVary: true });
}

export function addressOf(file: string, { scope }: Pick<Shelves, "scope">): string {
  return new URL(file, scope).href;
}

async function keepFile(file: string, cache: Cache, shelves: Shelves): Promise<void> {
  const address = addressOf(file, shelves);
  const held = hasHash(file) ? await shelves.caches.match(address, { ignoreVary: true }) : undefined;
  await cache.put(address, held && isSaneFor(file, held) ? held : await brought(file, shelves));
}

async function brought(file: string, shelves: Shelves): Promise<Response> {
  const response = await shelves.fetch(new Request(addressOf(file, shelves), { cache: "reload" }));
  if (!response.ok) throw new Error(`${file} did not come: ${response.status} ${response.statusText}`);
  if (!isSaneFor(file, response)) throw new Error(`${file} did not come: the server has sent a page in its place`);
  // A browser refuses a page that came by way of another address: the file alone is kept.
  return response.redirected ? new Response(await response.blob(), { headers: response.headers }) : response;
}

/** Many servers send their page for whatever they do not have. */
function isSaneFor(file: string, { headers }: Response): boolean {
  return file === PAGE || !(headers.get("content-type") ?? "").includes("text/html");
}

/** When a version was last taken up, milliseconds; -1 for one that never was. */
async function usedSince(cacheName: string, shelves: Shelves): Promise<number> {
  const mark = await shelves.caches.match(addressOf(USED, shelves), { cacheName });
  return mark ? Number(await mark.text()) : -1;
}

function assetsNamedIn(page: string): string[] {
  return [...page.matchAll(/["'](?:\.\/)?(assets\/[^"']+)["']/g)].map(([, file]) => file as string);
}

/** True for a file whose name changes with what it holds. */
function hasHash(file: string): boolean {
  return file.startsWith("assets/");
}

function isPageAddress(address: string): boolean {
  return new URL(address).pathname.endsWith(`/${PAGE}`);
}
