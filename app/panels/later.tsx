/**
 * Parts of the page that its first paint does without: windows, the print view, and the panels behind other tabs. They
 * are loaded once the page stands, so that they open at once and without a network; or when they are asked for earlier.
 */
import { type ComponentType, lazy, type ReactNode, Suspense, useRef, useState } from "react";
import { PartBoundary } from "./part-boundary.tsx";
import { FindOnItsWay, NOTHING_TYPED, TypedAheadContext, WindowOnItsWay } from "./typed-ahead.tsx";

const loaders: (() => Promise<unknown>)[] = [];

/**
 * A component of a module that is loaded later. Once it is there it shows without a pause; until then `meanwhile` stands in
 * its place. Where it does not come, it says so there, and is asked for again when that is wanted or when it is shown the
 * next time.
 */
export function later<P extends object>(
  load: () => Promise<ComponentType<P>>,
  meanwhile: ReactNode = null,
): ComponentType<P> {
  let loaded: ComponentType<P> | null = null;
  const take = async () => {
    loaded = await load();
    return { default: loaded };
  };
  loaders.push(take);
  // Made anew each time: one that has failed once stays failed.
  const waiting = () => loaded ?? (lazy(take) as unknown as ComponentType<P>);
  // biome-ignore lint/correctness/noComponentHookFactories: made once for each part, when this module is read
  return function LatePart(props: P) {
    // For as long as it is on the page it stays the same component, and so keeps its state.
    const [Part, setPart] = useState(waiting);
    const ahead = useRef(NOTHING_TYPED);
    const instead = (failure: Error, again: () => void) => (
      <div className="problem part-missing" role="alert">
        <p>This part of the page cannot be shown: {failure.message}</p>
        <p>All else goes on. Where only the network is missing, it can be loaded once there is one.</p>
        <button
          type="button"
          onClick={() => {
            setPart(waiting);
            again();
          }}
        >
          Try again
        </button>
      </div>
    );
    return (
      <PartBoundary instead={instead}>
        <TypedAheadContext value={ahead}>
          <Suspense fallback={meanwhile}>
            <Part {...props} />
          </Suspense>
        </TypedAheadContext>
      </PartBoundary>
    );
  };
}

/** Loads them all, one after another. What cannot be loaded now is asked for again when it is wanted, and says so then. */
export async function loadLaterParts(): Promise<void> {
  for (const load of loaders) await load().catch(() => undefined);
}

const aWindow = <WindowOnItsWay />;
const aQuestion = <WindowOnItsWay staysOpen />;
const aSearch = <WindowOnItsWay field="Search the commands and elements" />;

export const GalleryDialog = later(async () => (await import("./gallery-dialog.tsx")).GalleryDialog, aWindow);
export const CommandsDialog = later(async () => (await import("./commands-dialog.tsx")).CommandsDialog, aSearch);
export const HelpDialog = later(async () => (await import("./help-dialog.tsx")).HelpDialog, aWindow);
export const RefusedDialog = later(async () => (await import("./refused-dialog.tsx")).RefusedDialog, aQuestion);
export const PrintView = later(async () => (await import("../print/print-view.tsx")).PrintView, aWindow);
export const FindingDetail = later(async () => (await import("./finding-detail.tsx")).FindingDetail);
export const ElementPanel = later(async () => (await import("./element-panel.tsx")).ElementPanel);
export const CopperPanel = later(async () => (await import("./copper-panel.tsx")).CopperPanel);
export const OutlinePanel = later(async () => (await import("./outline-panel.tsx")).OutlinePanel, <FindOnItsWay />);
export const CodePanel = later(async () => (await import("./code-panel.tsx")).CodePanel);
export const TapingDialog = later(async () => (await import("../taping/taping-dialog.tsx")).default, aWindow);
export const UnderlayDialog = later(async () => (await import("../underlay/underlay-dialog.tsx")).default, aWindow);
export const StepsList = later(async () => (await import("./steps-list.tsx")).default);
export const ChangedFileDialog = later(async () => (await import("./changed-file-dialog.tsx")).default, aQuestion);
export const ElsewhereBar = later(async () => (await import("./elsewhere-bar.tsx")).default);
export const ShapeStrip = later(async () => (await import("../pool-shapes/shape-strip.tsx")).default);
export const WalkCard = later(async () => (await import("../walk/walk-card.tsx")).default);

/** Does something once the page has been painted and has nothing better to do. Returns what calls it off. */
export function afterFirstPaint(page: Window, work: () => void): () => void {
  // A browser without idle time of its own gets a moment's rest instead.
  if (typeof page.requestIdleCallback !== "function") {
    const timer = page.setTimeout(work, 1500);
    return () => page.clearTimeout(timer);
  }
  const idle = page.requestIdleCallback(work, { timeout: 4000 });
  return () => page.cancelIdleCallback(idle);
}
