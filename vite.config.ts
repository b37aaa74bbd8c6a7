import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import type { Plugin } from "vite";
import { defineConfig } from "vitest/config";
import { offline } from "./app/offline/build-offline.ts";

const repository = fileURLToPath(new URL(".", import.meta.url));

/** True where a browser window can appear: not on a build machine, and on Linux only with a display. */
const hasScreen =
  !process.env.CI &&
  (process.platform !== "linux" || Boolean(process.env.DISPLAY) || Boolean(process.env.WAYLAND_DISPLAY));

/** The page's content policy, as its own first lines set it; a server can add that no other page may frame this one. */
const policy = /content="(default-src[^"]+)"/.exec(readFileSync(`${repository}app/index.html`, "utf8"))?.[1];
if (policy === undefined) throw new Error("app/index.html sets no content policy");
const servedHeaders = {
  "Content-Security-Policy": `${policy}; frame-ancestors 'none'`,
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
};

/**
 * The page's content policy forbids inline scripts and styles. While developing, vite puts its own into the page: the
 * policy then lets those in, and its connection; a built page keeps the strict one.
 */
const policyWhileDeveloping: Plugin = {
  name: "policy-while-developing",
  apply: "serve",
  transformIndexHtml: {
    order: "pre",
    handler: (html) =>
      html
        .replace("script-src 'self'", "script-src 'self' 'unsafe-inline'")
        .replace("style-src 'self'", "style-src 'self' 'unsafe-inline'")
        .replace("connect-src 'self'", "connect-src 'self' ws:"),
  },
};

export default defineConfig({
  root: "app",
  base: "./",
  plugins: [react(), policyWhileDeveloping, offline()],
  server: { open: hasScreen },
  preview: { headers: servedHeaders },
  build: { outDir: "../dist", emptyOutDir: true },
  worker: { format: "es" },
  test: {
    root: repository,
    // A busy machine takes its time; nothing here tells speed.
    testTimeout: 180_000,
    hookTimeout: 180_000,
    reporters: ["default", "./tests/end-to-end/second-tries.ts"],
    projects: [
      {
        extends: true,
        test: {
          name: "logic",
          environment: "node",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: ["tests/end-to-end/**"],
          // What is waited for comes at once, except on a busy machine.
          expect: { poll: { timeout: 20_000 } },
        },
      },
      {
        extends: true,
        test: {
          name: "end-to-end",
          environment: "node",
          include: ["tests/end-to-end/**/*.test.{ts,tsx}"],
          globalSetup: "tests/end-to-end/prepare.ts",
          // What fails is tried once more, and named at the end where only that passed: see second-tries.ts.
          retry: 1,
          expect: { poll: { timeout: 40_000 } },
        },
      },
    ],
  },
});
