/** Which tab this is, and which others still run: so that two tabs never write the same copy. */

export interface Tab {
  readonly id: string;
  isRunning(tab: string): Promise<boolean>;
}

const NAME = "copperband-tab";
const lockOf = (tab: string) => `${NAME}/${tab}`;

/**
 * This tab's id: the same after a reload, another in a duplicated tab. A tab holds a lock under its id as long as it
 * runs. Where the browser has no locks, every other tab is taken to run.
 */
export async function browserTab(page: Window): Promise<Tab> {
  const remembered = readId(page);
  const { locks } = page.navigator;
  if (!locks) return { id: remembered ?? randomId(), isRunning: async () => true };
  const id = remembered !== null && (await holdLock(locks, remembered)) ? remembered : await holdNew(locks);
  writeId(page, id);
  return {
    id,
    async isRunning(tab) {
      const { held } = await locks.query();
      return (held ?? []).some((lock) => lock.name === lockOf(tab));
    },
  };
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
