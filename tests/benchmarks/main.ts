/**
 * `npm run bench`: prints figures, asserts none. The code is bundled first, as the page's worker is: run file by file it
 * carries helpers that the built program does not have, and they take up to a third of the time.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "vite";

const folder = mkdtempSync(join(tmpdir(), "copperband-bench-"));
try {
  await build({
    configFile: false,
    logLevel: "error",
    ssr: { noExternal: true },
    build: {
      ssr: fileURLToPath(new URL("./all.ts", import.meta.url)),
      outDir: folder,
      emptyOutDir: true,
      rolldownOptions: { output: { entryFileNames: "all.mjs" } },
    },
  });
  const { benchAll } = (await import(pathToFileURL(join(folder, "all.mjs")).href)) as typeof import("./all.ts");
  benchAll(new URL("../../demo-sites/", import.meta.url));
} finally {
  rmSync(folder, { recursive: true });
}
