/** The line above everything: which site, whether it is kept, what is open in it, how much copper. */
import { ListOrdered, Menu as MenuSign, PanelLeft, PanelRight, Redo2, Undo2 } from "lucide-react";
import { useStore } from "zustand";
import { hostOf } from "../canvas/host-of.ts";
import { runCommand } from "../commands/command.ts";
import { useDocument, useEditor, useView } from "../editor-context.tsx";
import { CountsLine } from "./counts-line.tsx";
import { keyWords } from "./key-words.ts";
import { Menu } from "./menu.tsx";
import { SiteName } from "./site-name.tsx";
import { tip } from "./tip-props.ts";

/** The commands of the menu; an empty string begins a group. */
const MENU: readonly string[] = [
  "new",
  "open",
  "gallery",
  "",
  "tape-in",
  "underlay",
  "",
  "save",
  "save-as",
  "duplicate-site",
  "print",
  "",
  "palette",
  "snapping",
  "",
  "commands",
  "help",
  "walk",
];

export function TopBar() {
  const editor = useEditor();
  const shown = useView((view) => view.column);
  const showColumn = useView((view) => view.showColumn);
  // Read so that the words of the menu follow what they say.
  useView((view) => `${view.palette} ${view.snapping}`);
  const items = MENU.flatMap((id, i) => {
    if (id === "") return [];
    const command = editor.commands.get(id);
    return [
      {
        id,
        label: command.labelNow?.(editor) ?? command.label,
        ...(command.key === undefined ? {} : { key: keyWords(command.key) }),
        startsGroup: MENU[i - 1] === "",
        run: () => runCommand(editor, command),
      },
    ];
  });
  return (
    <header className="topbar">
      <Menu
        name="Site menu"
        className="plain topbar-menu"
        label={
          <>
            <MenuSign size={18} aria-hidden="true" /> <span className="topbar-word">Site</span>
          </>
        }
        items={items}
      />
      <div className="topbar-site">
        <SiteName />
        <KeptState />
      </div>
      <div className="topbar-buttons">
        <TravelButton id="undo" />
        <TravelButton id="redo" />
        <StepsButton />
      </div>
      <CountsLine />
      <div className="topbar-columns">
        {(["parts", "details"] as const).map((column) => (
          <button
            key={column}
            type="button"
            className="plain"
            aria-expanded={shown === column}
            aria-controls={`${column}-column`}
            {...tip(column === "parts" ? "Parts of the article" : "Findings, facts, copper, outline, code")}
            onClick={() => showColumn(shown === column ? null : column)}
          >
            {column === "parts" ? (
              <PanelLeft size={18} aria-hidden="true" />
            ) : (
              <PanelRight size={18} aria-hidden="true" />
            )}
            <span className="topbar-word">{column === "parts" ? "Parts" : "Details"}</span>
          </button>
        ))}
      </div>
    </header>
  );
}

function TravelButton({ id }: { readonly id: "undo" | "redo" }) {
  const editor = useEditor();
  const step = useDocument(({ history }) => (id === "undo" ? history.past.at(-1) : history.future[0])?.label ?? null);
  const takesBack = useStore(hostOf(editor).state, (state) => (id === "undo" ? state.takesBack : null));
  const command = editor.commands.get(id);
  const words = takesBack ?? (step === null ? command.label : `${command.label}: ${step}`);
  const isIdle = step === null && takesBack === null;
  const Sign = id === "undo" ? Undo2 : Redo2;
  return (
    <button
      type="button"
      className="plain icon-button"
      aria-label={words}
      aria-disabled={isIdle}
      {...tip(isIdle ? `Nothing to ${id}` : words, command.key)}
      onClick={() => runCommand(editor, command)}
    >
      <Sign size={18} aria-hidden="true" />
    </button>
  );
}

function StepsButton() {
  const editor = useEditor();
  const isOpen = useStore(editor.dialogs, ({ open }) => open === "steps");
  const command = editor.commands.get("steps");
  return (
    <button
      type="button"
      className="plain icon-button"
      aria-label={command.label}
      aria-expanded={isOpen}
      {...tip(command.label, command.key)}
      onClick={() => runCommand(editor, command)}
    >
      <ListOrdered size={18} aria-hidden="true" />
    </button>
  );
}

/** Whether what is on the sheet is safe, in a few words. */
function KeptState() {
  const editor = useEditor();
  const keeping = useStore(editor.files.state, (state) => state.keeping);
  const isLocked = useDocument((state) => state.locked !== null);
  const file = useDocument((state) => (state.file.saved === state.history.present ? state.file.name : ""));
  if (keeping.state === "failed") {
    return (
      <button
        type="button"
        className="kept kept-failed"
        {...tip("Save", undefined, keeping.reason)}
        onClick={() => runCommand(editor, editor.commands.get("save"))}
      >
        Not kept: save to a file
      </button>
    );
  }
  if (isLocked) return <span className="kept">Only looked at</span>;
  return (
    <span className="kept" title={file === "" ? "A copy is kept in this browser at every step." : `Saved as ${file}`}>
      {file === "" ? "Kept in this browser" : `Saved as ${file}`}
    </span>
  );
}
