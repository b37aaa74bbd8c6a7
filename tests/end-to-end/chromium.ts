import { execFileSync, spawn } from "node:child_process";
import { accessSync, constants, existsSync } from "node:fs";
import { mkdtemp } from "node:fs/promises";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { build, preview } from "vite";

declare module "vitest" {
  interface ProvidedContext {
    /** Folder of the application built for this test run; see prepare.ts. */
    builtApp: string;
  }
}

/** How long a browser may take for one thing before a test gives up, milliseconds. A busy machine takes its time. */
export const PATIENCE = 40_000;

const repository = fileURLToPath(new URL("../..", import.meta.url));

const commandNames = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
const fixedPlaces = [
  "/usr/bin/chromium",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

/** Quiet, self-contained browsing: nothing leaves the machine except what the page itself asks for. */
const launchArguments = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/**
 * Path of a Chromium or Chrome: what CHROMIUM_PATH names, else the first found on PATH or in the usual places.
 * Null when there is none. Throws when CHROMIUM_PATH names a file that cannot be run.
 */
export function findChromium(environment: NodeJS.ProcessEnv = process.env): string | null {
  const named = environment.CHROMIUM_PATH;
  if (named) {
    if (!canRun(named)) throw new Error(`CHROMIUM_PATH names "${named}", which is not a program that can be run.`);
    return named;
  }
  const folders = (environment.PATH ?? "").split(delimiter).filter(Boolean);
  const places = folders.flatMap((folder) => commandNames.map((name) => join(folder, name)));
  return [...places, ...fixedPlaces].find(canRun) ?? null;
}

/** Finds Chromium, or installs it where that needs no question: on Debian, as root. Throws with one line otherwise. */
export function requireChromium(): string {
  const found = findChromium();
  if (found) return found;
  if (existsSync("/etc/debian_version") && process.getuid?.() === 0) {
    console.log("No Chromium found: installing Debian's package for the browser tests.");
    for (const command of [["update"], ["install", "-y", "chromium"]]) {
      execFileSync("apt-get", ["-q", ...command], {
        stdio: ["ignore", "ignore", "inherit"],
        env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
      });
    }
    const installed = findChromium();
    if (installed) return installed;
  }
  throw new Error(
    "The browser tests need Chromium: install it (Debian: apt-get install chromium) or set CHROMIUM_PATH.",
  );
}

export interface ProfileBrowser {
  readonly context: BrowserContext;
  /** Ends the browser at once with all its processes and without a word, as a crash or a dead battery does. */
  kill(): Promise<void>;
}

/** A headless browser on a profile that stays, so that it can be killed and started again on the same one. */
export async function launchOnProfile(profile: string): Promise<ProfileBrowser> {
  const place = [`--user-data-dir=${profile}`, "--remote-debugging-port=0", "--headless=new"];
  const child = spawn(requireChromium(), [...launchArguments, ...place, "about:blank"], {
    detached: true,
    stdio: ["ignore", "ignore", "pipe"],
  });
  const ended = new Promise<void>((resolve) => child.once("exit", () => resolve()));
  const address = await new Promise<string>((resolve, reject) => {
    let said = "";
    child.stderr.on("data", (text) => {
      said += text;
      const found = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (found) resolve(found);
    });
    child.once("error", reject);
    child.once("exit", (code) => reject(new Error(`the browser ended with ${code}: ${said}`)));
  });
  const browser = await chromium.connectOverCDP(address);
  const [context] = browser.contexts();
  if (!context || child.pid === undefined) throw new Error("the browser has no context");
  const group = -child.pid;
  return {
    context,
    async kill() {
      if (child.exitCode === null && child.signalCode === null) process.kill(group, "SIGKILL");
      await ended;
      await browser.close();
    },
  };
}

/** A headless browser with a new, empty profile that is deleted when it closes (Playwright's own doing). */
export function launchChromium(): Promise<Browser> {
  return chromium.launch({
    executablePath: requireChromium(),
    headless: true,
    args: launchArguments,
    timeout: 3 * PATIENCE,
  });
}

/**
 * Builds the application as it is shipped, whatever the environment of the tests says, into a new temporary folder, which
 * the caller removes. Returns that folder.
 */
export async function buildApp(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), "copperband-app-"));
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = "production";
  try {
    await build({
      configFile: join(repository, "vite.config.ts"),
      root: join(repository, "app"),
      build: { outDir: folder, emptyOutDir: true },
      logLevel: "warn",
    });
  } finally {
    if (before === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = before;
  }
  return folder;
}

/** Serves a built application, by default the one built for this test run, on a free port of this machine. */
export async function serveApp(builtApp?: string): Promise<{ url: string; close: () => Promise<void> }> {
  const folder = builtApp ?? (await import("vitest")).inject("builtApp");
  const server = await preview({
    configFile: join(repository, "vite.config.ts"),
    root: join(repository, "app"),
    build: { outDir: folder },
    preview: { host: "127.0.0.1", port: 0, open: false },
    logLevel: "warn",
  });
  const address = server.httpServer.address();
  if (address === null || typeof address === "string") throw new Error(`The server has no port: ${address}`);
  return { url: `http://127.0.0.1:${address.port}/`, close: () => server.close() };
}

export interface PageWatch {
  /** Console errors and uncaught exceptions, in order. */
  errors: string[];
  /** Addresses asked for that are neither of the page's own origin nor inline (data:, blob:). */
  foreignRequests: () => string[];
}

/** Starts watching a page; call it before the page loads anything. */
export function watchPage(page: Page): PageWatch {
  const errors: string[] = [];
  const requested: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error") errors.push(message.text());
  });
  page.on("pageerror", (error) => errors.push(error.stack ?? error.message));
  page.on("websocket", (socket) => requested.push(socket.url()));
  page.context().on("request", (request) => requested.push(request.url()));
  return {
    errors,
    foreignRequests: () => {
      const own = new URL(page.url()).host;
      return requested.filter((address) => /^(https?|wss?|file|ftp):/.test(address) && new URL(address).host !== own);
    },
  };
}

function canRun(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
