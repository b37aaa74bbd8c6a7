import { rm } from "node:fs/promises";
import type { TestProject } from "vitest/node";
import { buildApp, requireChromium } from "./chromium.ts";

/** Once before the browser tests: a browser is at hand and the application is built; the build is removed afterwards. */
export default async function prepare(project: TestProject) {
  requireChromium();
  const builtApp = await buildApp();
  project.provide("builtApp", builtApp);
  return () => rm(builtApp, { recursive: true, force: true });
}
