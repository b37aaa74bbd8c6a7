/** Which tab this is, which others still run, and what tabs say to each other: so that two never write the same copy. */

export type TabMessage =
  /** A copy was written. */
  | { readonly say: "kept"; readonly record: string }
  /** Another tab asks for a copy; the one that keeps it answers with "given" once all is written. */
  | { readonly say: "take"; readonly record: string; readonly by: string }
  | { readonly say: "given"; readonly record: string; readonly by: string }
  /** Are you there? Asked where the browser has no locks. */
  | { readonly say: "ask"; readonly tab: string }
  | { readonly say: "here"; readonly tab: string };

export interface Tab {
  readonly id: string;
  isRunning(tab: string): Promise<boolean>;
  say(message: TabMessage): void;
  /** Called with what other tabs say. */
  hear(listener: (message: TabMessage) => void): void;
}

const NAME = "copperband-tab";
const lockOf = (tab: string) => `${NAME}/${tab}`;
/** How long another tab has to answer, milliseconds. */
const ANSWER = 400;

/**
 * This tab's id: the same after a reload, another in a duplicated tab. A tab holds a lock under its id as long as it
 * runs. Where the browser has no locks (a page that is not served securely), tabs are asked whether they are there.
 */
export async function browserTab(page: Window): Promise<Tab> {
  const remembered = readId(page);
  const { locks } = page.navigator;
  const channel = browserTalk(page);
  const talk = channel ?? { say: () => undefined, hear: () => undefined };
  if (!locks) {
    const isTaken = remembered !== null && channel !== null && (await answers(channel, remembered));
    const id = remembered === null || isTaken ? randomId() : remembered;
    writeId(page, id);
    talk.hear((message) => {
      if (message.say === "ask" && message.tab === id) talk.say({ say: "here", tab: id });
    });
    // Without a channel either, every other tab is taken to run.
    return { id, ...talk, isRunning: async (tab) => channel === null || answers(channel, tab) };
  }
  const id = remembered !== null && (await holdLock(locks, remembered)) ? remembered : await holdNew(locks);
  writeId(page, id);
  return {
    id,
    ...talk,
    async isRunning(tab) {
      const { held } = await locks.query();
      return (held ?? []).some((lock) => lock.name === lockOf(tab));
    },
  };
}

type Talk = Pick<Tab, "say" | "hear">;

/** What tabs say to each other; null where the browser has no channel for it. */
function browserTalk(page: Window): Talk | null {
  const { BroadcastChannel: Channel } = page as unknown as { BroadcastChannel?: typeof BroadcastChannel };
  if (typeof Channel !== "function") return null;
  const channel = new Channel(NAME);
  return {
    say: (message) => channel.postMessage(message),
    hear: (listener) =>
      channel.addEventListener("message", ({ data }: MessageEvent<TabMessage>) => {
        if (typeof data?.say === "string") listener(data);
      }),
  };
}

function answers(talk: Talk, tab: string): Promise<boolean> {
  return new Promise((resolve) => {
    talk.hear((message) => {
      if (message.say === "here" && message.tab === tab) resolve(true);
    });
    talk.say({ say: "ask", tab });
    setTimeout(() => resolve(false), ANSWER);
  });
}

async function holdNew(locks: LockManager): Promise<string> {
  const id = randomId();
  await holdLock(locks, id);
  return id;
}

/** Takes the lock for as long as the page lives; false when another tab holds it. */
function holdLock(locks: LockManager, id: string): Promise<boolean> {
  return new Promise((resolve, reject) => {
    locks
      .request(lockOf(id), { ifAvailable: true }, (lock) => {
        resolve(lock !== null);
        return lock === null ? undefined : new Promise<void>(() => undefined);
      })
      .catch(reject);
  });
}

/** 32 random hexadecimal digits; unlike randomUUID also there for a page that is not served securely. */
export function randomId(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** A browser may forbid a page its session storage; then a reload is a new tab. */
function readId(page: Window): string | null {
  try {
    return page.sessionStorage.getItem(NAME);
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}

function writeId(page: Window, id: string): void {
  try {
    page.sessionStorage.setItem(NAME, id);
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
  }
}
