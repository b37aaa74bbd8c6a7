/** The offer of a newer version, with the browser's registration played by the test. Service Workers standard: what it says when. */
import { beforeEach, describe, expect, it, vi } from "vitest";
import { newerVersion } from "../../../app/offline/newer-version.ts";
import { startOffline } from "../../../app/offline/start-offline.ts";

class PlayedWorker extends EventTarget {
  state: ServiceWorkerState = "installed";
  readonly postMessage = vi.fn();
  becomes(state: ServiceWorkerState): void {
    this.state = state;
    this.dispatchEvent(new Event("statechange"));
  }
}

function playedPage(waiting: PlayedWorker | null) {
  const registration = Object.assign(new EventTarget(), {
    waiting,
    installing: null as PlayedWorker | null,
    update: async () => undefined,
  });
  const serviceWorker = Object.assign(new EventTarget(), { controller: {}, register: async () => registration });
  const location = { reload: vi.fn() };
  const page = {
    navigator: { serviceWorker, storage: undefined },
    document: new EventTarget(),
    location,
    matchMedia: () => ({ matches: false }),
  };
  return { page: page as unknown as Window, registration, serviceWorker, location };
}

describe("a newer version", () => {
  beforeEach(() => newerVersion.setState({ use: null }));

  it("takes the place of the one that runs when it is asked for, and the page loads anew then", async () => {
    const waiting = new PlayedWorker();
    const { page, serviceWorker, location } = playedPage(waiting);
    await startOffline(page, () => undefined);
    newerVersion.getState().use?.();
    expect(waiting.postMessage).toHaveBeenCalledWith("use-newer");
    expect(location.reload).not.toHaveBeenCalled();
    serviceWorker.dispatchEvent(new Event("controllerchange"));
    expect(location.reload).toHaveBeenCalledTimes(1);
  });

  it("that another tab has taken into use only needs the page to load anew", async () => {
    const waiting = new PlayedWorker();
    const { page, serviceWorker, location } = playedPage(waiting);
    await startOffline(page, () => undefined);
    waiting.becomes("activated");
    serviceWorker.dispatchEvent(new Event("controllerchange"));
    // Nothing is taken out of the hands of who works here.
    expect(location.reload).not.toHaveBeenCalled();
    newerVersion.getState().use?.();
    expect(location.reload).toHaveBeenCalledTimes(1);
  });

  it("is offered once, however often the browser tells of it", async () => {
    const { page, registration } = playedPage(null);
    const offered = vi.fn();
    const installing = new PlayedWorker();
    installing.state = "installing";
    registration.installing = installing;
    await startOffline(page, offered);
    registration.dispatchEvent(new Event("updatefound"));
    installing.becomes("installed");
    expect(offered).toHaveBeenCalledTimes(1);
    installing.becomes("activating");
    expect(offered).toHaveBeenCalledTimes(1);
  });

  it("that another tab takes into use before it was offered here is offered all the same", async () => {
    const { page, registration, serviceWorker } = playedPage(null);
    const offered = vi.fn();
    await startOffline(page, offered);
    const installing = new PlayedWorker();
    registration.installing = installing;
    registration.dispatchEvent(new Event("updatefound"));
    installing.becomes("installed");
    serviceWorker.dispatchEvent(new Event("controllerchange"));
    expect(offered).toHaveBeenCalledTimes(1);
    expect(newerVersion.getState().use).not.toBeNull();
  });
});
