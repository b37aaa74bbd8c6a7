/** Arranging what is selected: copies, places, directions, rows, locks, groups, and what is not drawn. */
import type { Site } from "../../rules/site/site.ts";
import { type Alignment, alignElements, distributeElements } from "../edits/align-elements.ts";
import {
  groupElements,
  hiddenIds,
  isOneGroup,
  lockedIds,
  setHidden,
  setLocked,
  ungroupElements,
} from "../edits/arrangement.ts";
import { deleteElements } from "../edits/delete-elements.ts";
import { DUPLICATE_STEP, duplicateElements } from "../edits/duplicate-elements.ts";
import type { Edit } from "../edits/edit.ts";
import { boxRound, middleOf } from "../edits/element-box.ts";
import { elementsOf, elementsWords, wordsFor } from "../edits/element-words.ts";
import { isFrom, pasteElements, takeElements } from "../edits/paste-elements.ts";
import { setOrder } from "../edits/set-order.ts";
import { turnElements } from "../edits/turn-elements.ts";
import type { ArrangeForm } from "../view/view-store.ts";
import type { Command } from "./command.ts";
import type { EditorPorts } from "./editor-ports.ts";
import { hasSelection, isAllLocked, makeCopies, makeEdit, selectedIds, selectionWords } from "./selection.ts";

const present = (editor: EditorPorts) => editor.document.getState().history.present;
const say = (editor: EditorPorts, text: string) => editor.view.getState().say(text);

const named =
  (verb: string) =>
  (editor: EditorPorts): string =>
    hasSelection(editor) === true ? `${verb} ${selectionWords(editor)}` : verb;

const duplicate: Command = {
  id: "duplicate",
  label: "Duplicate",
  group: "Arrange",
  key: "Mod+D",
  labelNow: named("Duplicate"),
  available: hasSelection,
  run: (editor) => makeCopies(editor, duplicateElements(selectedIds(editor))),
};

const copy: Command = {
  id: "copy",
  label: "Copy",
  group: "Arrange",
  key: "Mod+C",
  labelNow: named("Copy"),
  available: hasSelection,
  run(editor) {
    editor.clipboard.put(takeElements(present(editor), selectedIds(editor)));
    say(editor, `Copied ${selectionWords(editor)}. Paste on this sheet or another.`);
  },
};

const cut: Command = {
  id: "cut",
  label: "Cut",
  group: "Arrange",
  key: "Mod+X",
  labelNow: named("Cut"),
  available: hasSelection,
  run(editor) {
    const ids = selectedIds(editor);
    const taken = takeElements(present(editor), ids);
    const words = selectionWords(editor);
    const deleting = deleteElements(ids);
    const label = `Cut ${words}`;
    const apply = (site: Site) => {
      const result = deleting.apply(site);
      return result.ok ? { ...result, label } : result;
    };
    if (!makeEdit(editor, { label, apply })) return;
    editor.clipboard.put(taken);
    editor.view.getState().select([]);
    say(editor, `Cut ${words}.`);
  },
};

const paste: Command = {
  id: "paste",
  label: "Paste",
  group: "Arrange",
  key: "Mod+V",
  available: ({ clipboard }) => (clipboard.get() ? true : "Nothing was copied that could be pasted."),
  run(editor) {
    const taken = editor.clipboard.get();
    if (!taken) return;
    const { x, y } = editor.view.getState().camera;
    const isBeside = isFrom(present(editor), taken);
    const steps = isBeside ? editor.clipboard.nextPaste() : 0;
    const by = [steps * DUPLICATE_STEP, -steps * DUPLICATE_STEP] as const;
    if (!makeCopies(editor, pasteElements(taken, isBeside ? { by } : { middle: [x, y] }))) return;
    say(editor, `Pasted ${elementsWords(taken.elements)}.`);
  },
};

const onTop = orderCommand("over", "Lay on top", "}");
const underneath = orderCommand("under", "Lay underneath", "{");

const quarterTurn: Command = {
  id: "turn-quarter",
  label: "Turn a quarter to the left",
  group: "Arrange",
  key: "Shift+Q",
  repeats: true,
  available: hasSelection,
  run(editor) {
    const ids = selectedIds(editor);
    const box = boxRound(elementsOf(present(editor), ids));
    if (box) makeEdit(editor, turnElements(ids, 90, middleOf(box)));
  },
};

const lock: Command = {
  id: "lock",
  label: "Lock or unlock",
  group: "Arrange",
  key: "K",
  labelNow: (editor) => named(isAllLocked(editor) ? "Unlock" : "Lock")(editor),
  available: hasSelection,
  run(editor) {
    const words = selectionWords(editor);
    const isLocking = !isAllLocked(editor);
    if (!makeEdit(editor, setLocked(selectedIds(editor), isLocking))) return;
    const more = "still shown, but the pointer passes it over. Find it in the outline to unlock it.";
    say(editor, isLocking ? `Locked ${words}: ${more}` : `Unlocked ${words}.`);
  },
};

const hide: Command = {
  id: "hide",
  label: "Hide",
  group: "Arrange",
  key: "J",
  labelNow: named("Hide"),
  available: hasSelection,
  run(editor) {
    const words = selectionWords(editor);
    if (!makeEdit(editor, setHidden(selectedIds(editor), true))) return;
    editor.view.getState().select([]);
    say(editor, `Hidden: ${words}. Not drawn, but still judged: it counts in the findings.`);
  },
};

const show: Command = {
  id: "show",
  label: "Show again",
  group: "Arrange",
  labelNow: named("Show"),
  available(editor) {
    const hidden = hiddenIds(present(editor));
    return selectedIds(editor).some((id) => hidden.has(id)) ? true : "Nothing selected is hidden.";
  },
  run: (editor) => makeEdit(editor, setHidden(selectedIds(editor), false)),
};

const showAll: Command = {
  id: "show-all",
  label: "Show everything again",
  group: "Arrange",
  key: "Shift+J",
  available(editor) {
    const hasParts = editor.view.getState().hiddenParts.length > 0;
    return hasParts || thoseThere(editor, hiddenIds).length > 0 ? true : "Nothing is hidden.";
  },
  run(editor) {
    editor.view.getState().setHiddenParts([]);
    const ids = thoseThere(editor, hiddenIds);
    if (ids.length > 0 && !makeEdit(editor, setHidden(ids, false))) return;
    say(editor, "Everything is drawn again.");
  },
};

const unlockAll: Command = {
  id: "unlock-all",
  label: "Unlock everything",
  group: "Arrange",
  key: "Shift+K",
  available: (editor) => (thoseThere(editor, lockedIds).length > 0 ? true : "Nothing is locked."),
  run(editor) {
    const ids = thoseThere(editor, lockedIds);
    if (makeEdit(editor, setLocked(ids, false))) say(editor, `Unlocked ${wordsFor(present(editor), ids)}.`);
  },
};

const group: Command = {
  id: "group",
  label: "Group",
  group: "Arrange",
  key: "Mod+G",
  labelNow: named("Group"),
  available(editor) {
    const ids = selectedIds(editor);
    if (ids.length < 2) return "Select at least two elements to group.";
    return isOneGroup(present(editor), new Set(ids)) ? "This is one group already." : true;
  },
  run: (editor) => makeEdit(editor, groupElements(selectedIds(editor))),
};

const ungroup: Command = {
  id: "ungroup",
  label: "Take the group apart",
  group: "Arrange",
  key: "Mod+Shift+G",
  available(editor) {
    const ids = new Set(selectedIds(editor));
    const { groups = [] } = present(editor).arrangement ?? {};
    return groups.some(({ elements }) => elements.some((id) => ids.has(id))) ? true : "Nothing selected is in a group.";
  },
  run: (editor) => makeEdit(editor, ungroupElements(selectedIds(editor))),
};

export const arrangeCommands: readonly Command[] = [
  copy,
  cut,
  paste,
  duplicate,
  formCommand("move-by", "Move by a distance", "G"),
  formCommand("turn", "Turn by degrees", "Q"),
  quarterTurn,
  formCommand("mirror", "Mirror", "V"),
  formCommand("repeat", "Repeat along a line", "Shift+Y"),
  alignCommand("left", "Line up the left sides", "Mod+Shift+ArrowLeft"),
  alignCommand("right", "Line up the right sides", "Mod+Shift+ArrowRight"),
  alignCommand("top", "Line up the tops", "Mod+Shift+ArrowUp"),
  alignCommand("bottom", "Line up the bottoms", "Mod+Shift+ArrowDown"),
  alignCommand("middle", "Line up the middles, left to right", "6"),
  alignCommand("center", "Line up the middles, top to bottom", "7"),
  spaceCommand("across", "Space out across", "8"),
  spaceCommand("up", "Space out up and down", "9"),
  onTop,
  underneath,
  group,
  ungroup,
  lock,
  unlockAll,
  hide,
  show,
  showAll,
];

function thoseThere(editor: EditorPorts, of: typeof hiddenIds): string[] {
  const site = present(editor);
  const ids = of(site);
  return site.elements.flatMap(({ id }) => (ids.has(id) ? [id] : []));
}

/** Opens a form for typed figures beside the sheet. */
function formCommand(id: ArrangeForm, label: string, key: string): Command {
  return {
    id,
    label,
    group: "Arrange",
    key,
    available: hasSelection,
    run({ view }) {
      view.getState().setPanel("element");
      view.getState().showColumn("details");
      view.getState().setArranging(id);
    },
  };
}

function alignCommand(alignment: Alignment, label: string, key: string): Command {
  return {
    id: `align-${alignment}`,
    label,
    group: "Arrange",
    key,
    available: atLeast(2),
    run: (editor) => makeOrSay(editor, alignElements(selectedIds(editor), alignment), "They are lined up so already."),
  };
}

function spaceCommand(way: "across" | "up", label: string, key: string): Command {
  return {
    id: `space-${way}`,
    label,
    group: "Arrange",
    key,
    available: atLeast(3),
    run: (editor) => makeOrSay(editor, distributeElements(selectedIds(editor), way), "They are spaced evenly already."),
  };
}

function orderCommand(place: "over" | "under", label: string, key: string): Command {
  return {
    id: place === "over" ? "lay-on-top" : "lay-underneath",
    label,
    group: "Arrange",
    key,
    available: hasSelection,
    run: (editor) => makeOrSay(editor, setOrder(selectedIds(editor), place), "That is how it lies already."),
  };
}

/** Makes an edit; that it changes nothing is said, so that no press seems unheard. */
function makeOrSay(editor: EditorPorts, edit: Edit, already: string): void {
  const before = present(editor);
  if (makeEdit(editor, edit) && present(editor) === before) say(editor, already);
}

function atLeast(count: 2 | 3): Command["available"] {
  const words = count === 2 ? "two" : "three";
  return (editor) => (selectedIds(editor).length >= count ? true : `Select at least ${words} elements first.`);
}
