/**
 * Versions that are kept on the machine, with the browser's caches and a server played by the test. Expectations are
 * arithmetic; what a cache and a redirected page do is from the Service Workers and Fetch standards.
 */
import { describe, expect, it } from "vitest";
import {
  type Built,
  keepVersion,
  keptAnswer,
  type Shelves,
  takeUpVersion,
} from "../../../app/offline/kept-versions.ts";

const SCOPE = "https://example.test/app/";

/** Caches in the order in which they were made, as a browser keeps them. */
function playedCaches() {
  const shelves = new Map<string, Map<string, Response>>();
  const addressOf = (asked: RequestInfo | URL) => (asked instanceof Request ? asked.url : String(asked));
  const open = async (name: string) => {
    const shelf = shelves.get(name) ?? new Map<string, Response>();
    shelves.set(name, shelf);
    return { put: async (asked: RequestInfo | URL, held: Response) => void shelf.set(addressOf(asked), held) };
  };
  const match = async (asked: RequestInfo | URL, { cacheName }: MultiCacheQueryOptions = {}) => {
    const among = cacheName === undefined ? [...shelves.values()] : [shelves.get(cacheName)];
    return among.flatMap((shelf) => shelf?.get(addressOf(asked)) ?? [])[0]?.clone();
  };
  const caches = {
    open,
    match,
    keys: async () => [...shelves.keys()],
    delete: async (name: string) => shelves.delete(name),
  };
  return { caches: caches as unknown as CacheStorage, names: () => [...shelves.keys()] };
}

/** A server with the files of one version, which can be exchanged. */
function played() {
  const { caches, names } = playedCaches();
  let served: Record<string, Response> = {};
  let time = 0;
  const fetched: string[] = [];
  const shelves: Shelves = {
    caches,
    scope: SCOPE,
    now: () => ++time,
    async fetch({ url }) {
      fetched.push(url.slice(SCOPE.length));
      return (served[url.slice(SCOPE.length)] ?? new Response("nothing", { status: 404 })).clone();
    },
  };
  const serve = (files: Record<string, Response>) => {
    served = files;
  };
  return { shelves, names, serve, fetched };
}

const page = (asset: string) =>
  new Response(`<html><script type="module" src="./assets/${asset}"></script></html>`, {
    headers: { "content-type": "text/html; charset=utf-8" },
  });
const script = (text: string) => new Response(text, { headers: { "content-type": "text/javascript" } });

function version(name: string): { built: Built; files: Record<string, Response> } {
  const built = { version: name, files: [`assets/index-${name}.js`, "icon.svg", "index.html"] };
  const files = {
    [`assets/index-${name}.js`]: script(`"${name}"`),
    "icon.svg": new Response(`<svg>${name}</svg>`, { headers: { "content-type": "image/svg+xml" } }),
    "index.html": page(`index-${name}.js`),
  };
  return { built, files };
}

const textOf = async (file: string, built: Built, shelves: Shelves) =>
  (await keptAnswer(new Request(SCOPE + file), built, shelves))?.text();

describe("versions kept on the machine", () => {
  const [one, two, three] = [version("one"), version("two"), version("three")];

  it("answers with its own files, and for late parts of a page that still runs with those of the version used before", async () => {
    const { shelves, serve } = played();
    serve(one.files);
    await keepVersion(one.built, shelves);
    await takeUpVersion(one.built, shelves);
    serve(two.files);
    await keepVersion(two.built, shelves);
    expect(await textOf("icon.svg", one.built, shelves)).toBe("<svg>one</svg>");
    await takeUpVersion(two.built, shelves);
    expect(await textOf("assets/index-one.js", two.built, shelves)).toBe('"one"');
    expect(await textOf("index.html", two.built, shelves)).toContain("index-two.js");
    // The icon is called the same in both.
    expect(await textOf("icon.svg", two.built, shelves)).toBe("<svg>two</svg>");
  });

  it("keeps the version whose page may still run, not one that only waited or did not come whole", async () => {
    const { shelves, serve, names } = played();
    serve(one.files);
    await keepVersion(one.built, shelves);
    await takeUpVersion(one.built, shelves);
    serve(two.files);
    await keepVersion(two.built, shelves);
    const half = { version: "half", files: ["assets/index-two.js", "assets/gone.js", "index.html"] };
    await expect(keepVersion(half, shelves)).rejects.toThrow("assets/gone.js did not come: 404");
    serve(three.files);
    await keepVersion(three.built, shelves);
    await takeUpVersion(three.built, shelves);
    expect(names()).toEqual(["copperband-one", "copperband-three"]);
  });

  it("keeps the one used last where an older one had been taken up again", async () => {
    const { shelves, serve, names } = played();
    for (const { built, files } of [one, two]) {
      serve(files);
      await keepVersion(built, shelves);
      await takeUpVersion(built, shelves);
    }
    await takeUpVersion(one.built, shelves);
    serve(three.files);
    await keepVersion(three.built, shelves);
    await takeUpVersion(three.built, shelves);
    expect(names()).toEqual(["copperband-one", "copperband-three"]);
  });

  it("never keeps the page of another version with its own files", async () => {
    const { shelves, serve } = played();
    // Another version was put in place while this one was on its way; its old files are still served.
    serve({ ...two.files, ...one.files, "index.html": page("index-two.js") });
    await expect(keepVersion(one.built, shelves)).rejects.toThrow(
      "index.html is of another version: it names assets/index-two.js",
    );
    expect(await textOf("index.html", one.built, shelves)).toBeUndefined();
  });

  it("never keeps a page that a server sends in place of a file, nor takes such a one over", async () => {
    const { shelves, serve, fetched } = played();
    serve({ ...one.files, "assets/index-one.js": page("index-one.js") });
    await expect(keepVersion(one.built, shelves)).rejects.toThrow("a page in its place");
    const cache = await shelves.caches.open("copperband-earlier");
    await cache.put(`${SCOPE}assets/index-one.js`, page("index-one.js"));
    serve(one.files);
    await keepVersion(one.built, shelves);
    expect(await textOf("assets/index-one.js", one.built, shelves)).toBe('"one"');
    expect(fetched.filter((file) => file === "assets/index-one.js")).toHaveLength(2);
  });

  it("keeps a page that came by way of another address as one that a browser accepts", async () => {
    const { shelves, serve } = played();
    const moved = page("index-one.js");
    Object.defineProperty(moved, "redirected", { value: true });
    moved.clone = () => moved;
    serve({ ...one.files, "index.html": moved });
    await keepVersion(one.built, shelves);
    const kept = await keptAnswer(new Request(`${SCOPE}index.html`), one.built, shelves);
    expect(kept?.redirected).toBe(false);
    expect(await kept?.text()).toContain("index-one.js");
  });
});
