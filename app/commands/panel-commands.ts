/** What stands beside the sheet, the parts of the page one after the other, and the elements one after the other. */
import type { Panel } from "../view/view-store.ts";
import { ALWAYS, type Command } from "./command.ts";
import type { EditorPorts } from "./editor-ports.ts";

/** The panels beside the sheet in the order of their tabs. */
export const PANELS: readonly { readonly panel: Panel; readonly label: string }[] = [
  { panel: "findings", label: "Findings" },
  { panel: "element", label: "Facts" },
  { panel: "copper", label: "Copper" },
  { panel: "outline", label: "Outline" },
  { panel: "code", label: "Code" },
];

const showPanels: readonly Command[] = PANELS.map(({ panel, label }, i) => ({
  id: `panel-${panel}`,
  label: `Show ${label.toLowerCase()}`,
  group: "View",
  key: String(i + 1),
  available: ALWAYS,
  run({ view, focusPart }) {
    view.getState().setPanel(panel);
    view.getState().showColumn("details");
    focusPart("details");
  },
}));

const around: readonly Command[] = [
  {
    id: "next-part",
    label: "Next part of the page",
    group: "View",
    key: "F6",
    available: ALWAYS,
    run: ({ focusPart }) => focusPart("next"),
  },
  {
    id: "previous-part",
    label: "Previous part of the page",
    group: "View",
    key: "Shift+F6",
    available: ALWAYS,
    run: ({ focusPart }) => focusPart("previous"),
  },
];

/** Selects the element after or before the one that is selected, in the order of the file. */
function stepElement(id: string, label: string, key: string, way: 1 | -1): Command {
  return {
    id,
    label,
    group: "Select",
    key,
    repeats: true,
    available: ({ document }) => (document.getState().shown.elements.length > 0 ? true : "The sheet is empty."),
    run({ document, view }: EditorPorts) {
      const { elements } = document.getState().shown;
      const { selection, select } = view.getState();
      const at = elements.findIndex((element) => selection.includes(element.id));
      const next = at < 0 ? (way === 1 ? 0 : elements.length - 1) : (at + way + elements.length) % elements.length;
      const element = elements[next];
      if (element) select([element.id]);
    },
  };
}

export const panelCommands: readonly Command[] = [
  stepElement("next-element", "Next element", "N", 1),
  stepElement("previous-element", "Previous element", "Shift+N", -1),
  ...showPanels,
  ...around,
];
