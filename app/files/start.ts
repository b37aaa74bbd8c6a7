/**
 * What comes onto the sheet when the page loads: the copy of the last session, else the first demo.
 *
 * Whatever was opened meanwhile, a file that was dropped, stays, and so does what was drawn on the empty sheet. A store
 * that does not answer is not waited for: the demo comes, it is said that nothing is kept yet, and the copies are there to
 * be opened once it answers.
 */
import type { Site } from "../../rules/site/site.ts";
import type { DocumentStore, FileState } from "../site-document/store.ts";
import type { ViewStore } from "../view/view-store.ts";
import type { Keeper, Origin } from "./keeping.ts";
import type { KeptRecord } from "./kept-store.ts";
import type { Restored } from "./restore.ts";

/** How long the store may take to answer, milliseconds. */
export const STORE_PATIENCE = 6000;

const LAST_TIME = "The site of last time is among the kept copies.";

const SILENT =
  "The browser's storage does not answer, so no copy of this site is being kept yet. Save it to a file, or load the page again.";

export interface StartParts {
  readonly keeper: Keeper;
  readonly document: DocumentStore;
  readonly say: ReturnType<ViewStore["getState"]>["say"];
  put(site: Site, file: FileState, origin: Origin): boolean;
  putKept(site: Site, record: KeptRecord, isOurs: boolean): Promise<boolean>;
  /** `isWanted` is asked once more when the demo is there. */
  openFirstDemo(isWanted: () => boolean): Promise<boolean>;
  /** Null when the store fails. */
  claim(record: KeptRecord): Promise<boolean | null>;
  /** Goes on with what was being drawn on a site when its page went; false: nothing was. */
  goOnDrawing(record: string): Promise<boolean>;
  /** How many sites were put on the sheet so far. */
  openings(): number;
  /** Whether something is being drawn on the sheet that is no step of the document yet. */
  isDrawing(): boolean;
}

export type Started = "kept" | "demo" | "empty";

export function createStart(parts: StartParts): () => Promise<Started> {
  const { keeper, document, say } = parts;
  /** Asked again after every wait: a person may have opened something meanwhile, or have begun to draw. */
  const isUntouched = () => parts.openings() === 0 && !hasBegun();
  const hasBegun = () => {
    const { history, gesture } = document.getState();
    return history.past.length > 0 || history.future.length > 0 || gesture !== null || parts.isDrawing();
  };

  async function start(): Promise<Started> {
    const restoring = keeper.restore();
    const found = await orSilence(restoring, STORE_PATIENCE);
    keeper.start();
    if (found !== null) return begin(found);
    keeper.tellFailed(SILENT);
    const isDemo = isUntouched() && (await parts.openFirstDemo(isUntouched));
    say(SILENT, "problem", ["save"]);
    void restoring.then((late) => {
      keeper.tryAgain();
      if (late.record !== null) {
        say(`The browser's storage answers now. ${LAST_TIME}`, "plain", ["gallery"]);
      }
    });
    return isDemo ? "demo" : isUntouched() ? "empty" : "kept";
  }

  async function begin(found: Restored): Promise<Started> {
    const isTaken = !isUntouched();
    const opened = isTaken || (found.site && found.record ? await putFound(found.site, found.record, found) : false);
    if (found.setAside.length > 0) {
      const instead =
        found.earlierAt === null || isTaken
          ? ""
          : ` The last good one, of ${timeWords(found.earlierAt)}, is on the sheet instead.`;
      say(`A copy kept in this browser cannot be read and was set aside. ${found.setAside[0]}${instead}`, "problem", [
        "gallery",
      ]);
    }
    const isDemo = !opened && (await parts.openFirstDemo(isUntouched));
    // A copy that cannot be read is said already, and leads to the copies as well.
    if (parts.openings() === 0 && found.record !== null && found.setAside.length === 0)
      say(LAST_TIME, "plain", ["gallery"]);
    // Said once the site is on the sheet: a problem's notice goes with the site that it was said of.
    if (found.failure !== null) say(found.failure, "problem", ["save"]);
    return isDemo ? "demo" : isUntouched() ? "empty" : "kept";
  }

  async function putFound(site: Site, record: KeptRecord, found: Restored): Promise<boolean> {
    const asNew = () => parts.put(site, { name: record.file, saved: null }, { handle: null, changed: true });
    if (found.earlierAt !== null) return asNew();
    const isOurs = found.isElsewhere ? false : await parts.claim(record);
    if (!isUntouched()) return true;
    if (isOurs === null) return asNew();
    if (!(await parts.putKept(site, record, isOurs))) return false;
    const { move } = found;
    if (isOurs && move !== null) {
      document.getState().edit({ label: move.label, apply: () => ({ ok: true, site: move.site }) });
      say(`The page closed in the middle of a step. It is here as far as it went: ${move.label}. Undo takes it back.`);
    }
    if (isOurs && (await parts.goOnDrawing(record.id))) {
      say(
        "The page closed in the middle of a drawing. It is here as far as it went: go on with it, or Escape gives it up.",
      );
    }
    return true;
  }

  return start;
}

/** What is promised, or null when it does not come within so many milliseconds. */
async function orSilence<T>(promised: Promise<T>, patience: number): Promise<T | null> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const silence = new Promise<null>((resolve) => {
    timer = setTimeout(() => resolve(null), patience);
  });
  try {
    return await Promise.race([promised, silence]);
  } finally {
    clearTimeout(timer);
  }
}

/** A time as people say it: "May 1, 2:05 PM". */
export function timeWords(at: number): string {
  return new Date(at).toLocaleString("en-US", { month: "short", day: "numeric", hour: "numeric", minute: "2-digit" });
}
