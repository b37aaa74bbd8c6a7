/** New, open, save and print. */
import { newerVersion } from "../offline/newer-version.ts";
import { ALWAYS, type Command } from "./command.ts";

export const siteCommands: readonly Command[] = [
  { id: "new", label: "New sheet", group: "Site", available: ALWAYS, run: ({ files }) => void files.newSite() },
  {
    id: "open",
    label: "Open a file",
    group: "Site",
    key: "Mod+O",
    available: ALWAYS,
    run: ({ files }) => files.openByPicker(),
  },
  {
    id: "gallery",
    label: "Demo sites and kept copies",
    group: "Site",
    available: ALWAYS,
    run: (editor) => editor.openDialog("gallery"),
  },
  { id: "save", label: "Save", group: "Site", key: "Mod+S", available: ALWAYS, run: ({ files }) => files.save() },
  {
    id: "save-as",
    label: "Save as another file",
    group: "Site",
    key: "Mod+Shift+S",
    available: ALWAYS,
    run: ({ files }) => files.saveAs(),
  },
  {
    id: "duplicate-site",
    label: "Duplicate the site",
    group: "Site",
    available: ({ document }) =>
      document.getState().history.present.elements.length > 0 ? true : "The sheet is empty: there is nothing to copy.",
    run: ({ files }) => files.duplicateSite(),
  },
  {
    id: "print",
    label: "Print the plan",
    group: "Site",
    key: "Mod+P",
    available: ALWAYS,
    run: (editor) => editor.print(),
  },
];

export const helpCommands: readonly Command[] = [
  {
    id: "commands",
    label: "All commands",
    group: "Help",
    key: "Mod+K",
    available: ALWAYS,
    run: (editor) => editor.openDialog("commands"),
  },
  {
    id: "help",
    label: "Help",
    group: "Help",
    key: "?",
    otherKeys: ["F1"],
    available: ALWAYS,
    run: (editor) => editor.openDialog("help"),
  },
  {
    id: "walk",
    label: "Walk round the program",
    group: "Help",
    available: ALWAYS,
    run: (editor) => editor.startWalk(),
  },
  {
    id: "newer",
    label: "Use the newer version",
    group: "Help",
    available({ files }) {
      if (newerVersion.getState().use === null) return "This is the newest version that was found.";
      return files.atRisk() ? "Save the site to a file first: the browser keeps no copy of its changes." : true;
    },
    async run({ files }) {
      await files.settled();
      newerVersion.getState().use?.();
    },
  },
];
