/**
 * What the build adds so that the program works without a network and can be installed: the list of its files inside the
 * service worker, the manifest, and the icons, which are worked out from code.
 */
import { createHash } from "node:crypto";
import { fileURLToPath } from "node:url";
import type { Plugin } from "vite";
import { iconPixels, iconSvg } from "./icon.ts";
import { pngOf } from "./png.ts";

const WORKER = "service-worker";
const PLACE = /(["'`])COPPERBAND_BUILT\1/;
const SIZES = [192, 512];

/** Fields of a web app manifest (W3C). */
export const MANIFEST = {
  id: "./",
  name: "Copperband: pool bonding on a drawing sheet",
  short_name: "Copperband",
  description: "Draws a swimming pool and its yard to scale and works out what has to be bonded or kept clear.",
  start_url: "./",
  scope: "./",
  display: "standalone",
  background_color: "#ebe7dc",
  theme_color: "#ffffff",
  icons: [
    { src: "icon.svg", sizes: "any", type: "image/svg+xml", purpose: "any" },
    ...SIZES.flatMap((size) => [
      { src: `icon-${size}.png`, sizes: `${size}x${size}`, type: "image/png", purpose: "any" },
      { src: `icon-full-${size}.png`, sizes: `${size}x${size}`, type: "image/png", purpose: "maskable" },
    ]),
  ],
};

export function offline(): Plugin {
  const folder = fileURLToPath(new URL("..", import.meta.url));
  return {
    name: "offline",
    apply: "build",
    enforce: "post",
    config: () => ({
      build: {
        rolldownOptions: {
          input: { index: `${folder}index.html`, [WORKER]: `${folder}offline/service-worker.ts` },
          output: {
            entryFileNames: ({ name }) => (name === WORKER ? `${WORKER}.js` : "assets/[name]-[hash].js"),
          },
        },
      },
    }),
    transformIndexHtml: (html) =>
      html.replace(
        '<link rel="icon" href="data:," />',
        [
          '<link rel="icon" href="./icon.svg" type="image/svg+xml" />',
          '<link rel="apple-touch-icon" href="./icon-full-192.png" />',
          '<link rel="manifest" href="./manifest.webmanifest" />',
        ].join("\n    "),
      ),
    generateBundle(_, bundle) {
      const emit = (fileName: string, source: string | Uint8Array) =>
        this.emitFile({ type: "asset", fileName, source });
      const made = new Map<string, string | Uint8Array>([
        ["icon.svg", iconSvg()],
        ["manifest.webmanifest", JSON.stringify(MANIFEST, null, 2)],
      ]);
      for (const size of SIZES) {
        made.set(`icon-${size}.png`, pngOf(iconPixels(size, false), size, size));
        made.set(`icon-full-${size}.png`, pngOf(iconPixels(size, true), size, size));
      }
      for (const [name, source] of made) emit(name, source);
      const worker = bundle[`${WORKER}.js`];
      if (worker?.type !== "chunk") throw new Error(`the build has no ${WORKER}.js`);
      const built = [...new Set([...Object.keys(bundle), ...made.keys()])].filter(isNeeded).sort();
      const hash = createHash("sha256");
      for (const name of built) {
        const file = bundle[name];
        hash.update(name).update(made.get(name) ?? (file?.type === "chunk" ? file.code : (file?.source ?? "")));
      }
      hash.update(worker.code);
      const text = JSON.stringify({ version: hash.digest("hex").slice(0, 16), files: built });
      if (!PLACE.test(worker.code)) throw new Error(`${WORKER}.js has no place for the list of files`);
      worker.code = worker.code.replace(PLACE, () => JSON.stringify(text));
    },
  };
}

/** Fonts come twice; every browser that has service workers reads the smaller form. */
function isNeeded(name: string): boolean {
  return name !== `${WORKER}.js` && !name.endsWith(".map") && !name.endsWith(".woff");
}
