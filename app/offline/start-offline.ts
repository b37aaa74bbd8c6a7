/** Lets the program be kept on the machine, and says when a newer version waits. */
import { newerVersion } from "./newer-version.ts";

/** Time between looks for a newer version while the page stays open, milliseconds. */
const LOOK_EVERY = 60 * 60_000;

/** Registers the service worker; false where the browser has none or refuses it, as in some private windows. */
export async function startOffline(page: Window, onNewer: () => void): Promise<boolean> {
  const { serviceWorker, storage } = page.navigator;
  if (serviceWorker === undefined) return false;
  let registration: ServiceWorkerRegistration;
  try {
    registration = await serviceWorker.register("./service-worker.js", { updateViaCache: "none" });
  } catch (error) {
    console.warn("The program could not be kept on this machine and needs the network.", error);
    return false;
  }
  const offer = (waiting: ServiceWorker) => {
    const use = () => {
      // Another tab has taken it into use: this page only has to load anew.
      if (waiting.state !== "installed") {
        page.location.reload();
        return;
      }
      serviceWorker.addEventListener("controllerchange", () => page.location.reload(), { once: true });
      waiting.postMessage("use-newer");
    };
    newerVersion.setState({ use });
    onNewer();
  };
  // Without a page under its control this is the first version: nothing is newer.
  const watched = new WeakSet<ServiceWorker>();
  const watch = (installing: ServiceWorker | null) => {
    if (!installing || watched.has(installing)) return;
    watched.add(installing);
    installing.addEventListener("statechange", () => {
      if (installing.state === "installed" && serviceWorker.controller) offer(installing);
    });
  };
  if (registration.waiting && serviceWorker.controller) offer(registration.waiting);
  watch(registration.installing);
  registration.addEventListener("updatefound", () => watch(registration.installing));
  let looked = Date.now();
  page.document.addEventListener("visibilitychange", () => {
    if (page.document.visibilityState !== "visible" || Date.now() - looked < LOOK_EVERY) return;
    looked = Date.now();
    // Without a network there is nothing to find.
    registration.update().catch((error: unknown) => console.info("No look for a newer version.", error));
  });
  // Installed as an application, its copies are not to be cleared by a browser that tidies up.
  if (page.matchMedia("(display-mode: standalone)").matches) await storage?.persist?.();
  return true;
}
