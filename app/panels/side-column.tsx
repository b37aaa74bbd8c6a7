/** The column beside the sheet: findings, facts, copper and the outline of the site, one at a time. */
import { X } from "lucide-react";
import { type KeyboardEvent, useLayoutEffect, useRef } from "react";
import { PANELS } from "../commands/panel-commands.ts";
import { useView } from "../editor-context.tsx";
import { FindingPanel } from "./finding-panel.tsx";
import { CodePanel, CopperPanel, ElementPanel, OutlinePanel } from "./later.tsx";
import { tip } from "./tip-props.ts";

export function SideColumn({ onClose }: { onClose(): void }) {
  const panel = useView((view) => view.panel);
  const setPanel = useView((view) => view.setPanel);
  const list = useRef<HTMLDivElement>(null);
  const finding = useView((view) => view.finding);
  const box = useRef<HTMLDivElement>(null);
  const listPlace = useRef(0);
  // A finding begins at its heading; back in the list, the list stands where it stood.
  useLayoutEffect(() => {
    if (box.current && panel === "findings") box.current.scrollTop = finding === null ? listPlace.current : 0;
  }, [finding, panel]);
  const onKeyDown = (event: KeyboardEvent) => {
    const at = PANELS.findIndex((tab) => tab.panel === panel);
    const next =
      event.key === "ArrowRight"
        ? (at + 1) % PANELS.length
        : event.key === "ArrowLeft"
          ? (at - 1 + PANELS.length) % PANELS.length
          : event.key === "Home"
            ? 0
            : event.key === "End"
              ? PANELS.length - 1
              : null;
    const tab = next === null ? undefined : PANELS[next];
    if (!tab) return;
    event.preventDefault();
    event.stopPropagation();
    setPanel(tab.panel);
    list.current?.querySelectorAll<HTMLElement>("[role=tab]")[next ?? 0]?.focus();
  };
  return (
    <>
      <div className="side-head">
        <div className="tabs" role="tablist" aria-label="Details" ref={list} onKeyDown={onKeyDown}>
          {PANELS.map((tab) => (
            <button
              key={tab.panel}
              type="button"
              role="tab"
              id={`tab-${tab.panel}`}
              aria-selected={panel === tab.panel}
              aria-controls="side-panel"
              tabIndex={panel === tab.panel ? 0 : -1}
              {...tip(tab.label, `${PANELS.indexOf(tab) + 1}`)}
              onClick={() => setPanel(tab.panel)}
            >
              {tab.label}
            </button>
          ))}
        </div>
        <button
          type="button"
          className="plain icon-button side-close"
          aria-label="Close the details"
          {...tip("Close the details")}
          onClick={onClose}
        >
          <X size={18} aria-hidden="true" />
        </button>
      </div>
      <div
        className={`side-panel side-panel-${panel}`}
        id="side-panel"
        role="tabpanel"
        aria-labelledby={`tab-${panel}`}
        key={panel}
        ref={box}
        onScroll={(event) => {
          if (panel === "findings" && finding === null) listPlace.current = event.currentTarget.scrollTop;
        }}
      >
        {panel === "findings" ? <FindingPanel /> : null}
        {panel === "element" ? <ElementPanel /> : null}
        {panel === "copper" ? <CopperPanel /> : null}
        {panel === "outline" ? <OutlinePanel /> : null}
        {panel === "code" ? <CodePanel /> : null}
      </div>
    </>
  );
}
