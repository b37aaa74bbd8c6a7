/** Commands on a headless editor. Expectations are arithmetic, keys are our own choice. */
import { describe, expect, it, vi } from "vitest";
import { type Command, runCommand } from "../../../app/commands/command.ts";
import { COMMANDS } from "../../../app/commands/commands.ts";
import { TOOLS } from "../../../app/commands/tool-commands.ts";
import { addDimension, removeDimension } from "../../../app/edits/dimension-edits.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { emptySite } from "../../../app/files/empty-site.ts";
import type { Site } from "../../../rules/site/site.ts";
import { field, sampleYard } from "../edits/yard.ts";
import { headlessEditor } from "./headless-editor.ts";

const run = (editor: ReturnType<typeof headlessEditor>, id: string) => runCommand(editor, COMMANDS.get(id));

describe("a command that fails on its way", () => {
  it("says so: nothing is swallowed", async () => {
    const editor = headlessEditor(emptySite());
    const told = vi.spyOn(console, "error").mockImplementation(() => undefined);
    const walk: Command = {
      ...COMMANDS.get("walk"),
      run: async () => {
        throw new Error("no network");
      },
    };
    expect(runCommand(editor, walk)).toBe(true);
    await expect.poll(() => editor.said()).toBe("“Walk round the program” could not be done: no network");
    expect(told).toHaveBeenCalledTimes(1);
    told.mockRestore();
  });

  it("changes no pool's dimensions where another site was opened before its code had come", async () => {
    const editor = headlessEditor(sampleYard());
    editor.view.getState().select(["pool-1"]);
    expect(run(editor, "pool-dimensions")).toBe(true);
    editor.document.getState().open(sampleYard(), { name: "", saved: null });
    editor.view.getState().select([]);
    await import("../../../app/pool-shapes/recognize.ts");
    await vi.dynamicImportSettled();
    expect(editor.view.getState()).toMatchObject({ reshaping: null, tool: "select", notice: null });
  });
});

describe("the list of commands", () => {
  it("has one command an id, in groups that hold them all", () => {
    const ids = COMMANDS.all.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(COMMANDS.groups.flatMap(({ commands }) => commands)).toHaveLength(ids.length);
    expect(COMMANDS.groups.every(({ commands }) => commands.length > 0)).toBe(true);
    expect(() => COMMANDS.get("none")).toThrow(RangeError);
  });

  it("gives no key to two commands, save arrow keys, which look around when nothing is selected", () => {
    const owners = new Map<string, string[]>();
    for (const { id, key, otherKeys = [] } of COMMANDS.all) {
      for (const each of key ? [key, ...otherKeys] : otherKeys) owners.set(each, [...(owners.get(each) ?? []), id]);
    }
    for (const [key, ids] of owners) {
      if (ids.length > 1)
        expect([key, ids.map((id) => id.split("-")[0])]).toEqual([expect.stringMatching(/Arrow/), ["move", "pan"]]);
    }
  });

  it("says a label and a reason in plain words for every command, on the empty sheet too", () => {
    const editor = headlessEditor(emptySite());
    editor.canvas = null;
    for (const command of COMMANDS.all) {
      expect(command.label).toMatch(/^[A-Z]/);
      expect(command.labelNow?.(editor) ?? command.label).toMatch(/^[A-Z]/);
      const available = command.available(editor);
      if (available !== true) expect(available).toMatch(/^[A-Z].*\.$/);
    }
  });

  it("has a tool for every kind of drawing", () => {
    expect(new Set(TOOLS.map(({ tool }) => tool)).size).toBe(30);
    const editor = headlessEditor(emptySite());
    for (const { tool } of TOOLS) {
      run(editor, `tool-${tool}`);
      expect(editor.view.getState().tool).toBe(tool);
    }
  });
});

describe("panels, parts of the page and elements", () => {
  it("are reached one after the other by keys", () => {
    const editor = headlessEditor(sampleYard());
    run(editor, "panel-copper");
    expect(editor.view.getState()).toMatchObject({ panel: "copper", column: "details" });
    run(editor, "next-part");
    expect(editor.asked).toEqual(["focus details", "focus next"]);
    const ids = editor.document.getState().shown.elements.map(({ id }) => id);
    const selectedAfter = (id: string) => {
      run(editor, id);
      return editor.view.getState().selection;
    };
    expect(selectedAfter("next-element")).toEqual([ids[0]]);
    expect(selectedAfter("next-element")).toEqual([ids[1]]);
    expect(selectedAfter("previous-element")).toEqual([ids[0]]);
    expect(selectedAfter("previous-element")).toEqual([ids.at(-1)]);
    expect(run(headlessEditor(emptySite()), "next-element")).toBe(false);
  });
});

describe("undo and redo", () => {
  it("name the step, say it, and drop what is gone from the selection", () => {
    const editor = headlessEditor(sampleYard());
    expect(run(editor, "undo")).toBe(false);
    expect(editor.said()).toBe("There is nothing to undo.");
    // It does not stay until it is put away: nothing is wrong.
    expect(editor.view.getState().notice?.kind).toBe("plain");
    editor.document.getState().lock("It is only looked at here.");
    run(editor, "undo");
    expect(editor.view.getState().notice).toMatchObject({ text: "It is only looked at here.", kind: "problem" });
    editor.document.getState().open(sampleYard(), { name: "", saved: null });
    editor.view.getState().select(["fence-1"]);
    run(editor, "duplicate");
    const copy = editor.view.getState().selection;
    expect(copy).toEqual(["fence-2"]);
    expect(COMMANDS.get("undo").labelNow?.(editor)).toBe("Undo: Duplicate fence 1");
    run(editor, "undo");
    expect(editor.said()).toBe("Undone: Duplicate fence 1.");
    expect(editor.view.getState().selection).toEqual([]);
    expect(COMMANDS.get("redo").labelNow?.(editor)).toBe("Redo: Duplicate fence 1");
    run(editor, "redo");
    expect(editor.document.getState().shown.elements.at(-1)?.id).toBe("fence-2");
  });
});

describe("undo", () => {
  it("in the middle of a drawing takes back its last corner, of a move the move, and no step behind them", () => {
    const editor = headlessEditor(sampleYard());
    const past = () => editor.document.getState().history.past.map(({ label }) => label);
    const undo = COMMANDS.get("undo");
    editor.corners = 2;
    expect([undo.available(editor), undo.labelNow?.(editor)]).toEqual([true, "Take back the last corner"]);
    editor.document.getState().edit(moveElements(["pump-1"], 5, 0));
    run(editor, "undo");
    run(editor, "undo");
    expect([editor.corners, past()]).toEqual([0, ["Move pump 1"]]);
    editor.document.getState().beginGesture("Move");
    editor.document.getState().preview(moveElements(["pole-1"], 0, 5));
    expect(undo.labelNow?.(editor)).toBe("Undo: Move light pole 1");
    run(editor, "undo");
    expect([editor.document.getState().gesture, past()]).toEqual([null, ["Move pump 1"]]);
    run(editor, "undo");
    expect(past()).toEqual([]);
    // The first move of all can be taken back, too.
    editor.document.getState().beginGesture("Move");
    editor.document.getState().preview(moveElements(["pole-1"], 0, 5));
    expect(run(editor, "undo")).toBe(true);
    expect(editor.document.getState().gesture).toBeNull();
  });
});

describe("dimensions without a pointer", () => {
  it("are picked one after the other, round and round, and then are what Delete takes away", () => {
    const ends = { from: { at: [0, 0] }, to: { at: [120, 0] } };
    const dimensions = [12, 24].map((offset) => ({ id: `dimension-${offset}`, ...ends, offset }));
    const editor = headlessEditor({ ...sampleYard(), dimensions } as Site);
    editor.view.getState().select(["fence-1"]);
    const picked = () => {
      run(editor, "next-dimension");
      return editor.view.getState().dimension;
    };
    expect([picked(), picked(), picked()]).toEqual(["dimension-12", "dimension-24", "dimension-12"]);
    expect(editor.view.getState().selection).toEqual([]);
    expect(editor.view.getState().notice?.text).toBe(`Dimension 10' 0" is picked: Delete takes it away.`);
    expect(run(editor, "delete")).toBe(true);
    expect(editor.document.getState().shown.dimensions?.map(({ id }) => id)).toEqual(["dimension-24"]);
    expect(run(headlessEditor(sampleYard()), "next-dimension")).toBe(false);
  });
});

describe("a dimension that is picked", () => {
  it("is what Delete takes away and Escape lets go of, until it is gone", () => {
    const ends = { from: { at: [0, 0] }, to: { at: [120, 0] }, offset: 24 };
    const editor = headlessEditor({ ...sampleYard(), dimensions: [{ id: "dimension-9", ...ends }] } as Site);
    editor.view.getState().select(["fence-1"]);
    editor.view.getState().pickDimension("dimension-9");
    expect(editor.view.getState().selection).toEqual([]);
    run(editor, "escape");
    expect(editor.view.getState().dimension).toBeNull();
    editor.view.getState().pickDimension("dimension-9");
    expect(COMMANDS.get("delete").labelNow?.(editor)).toBe("Take the dimension away");
    expect(run(editor, "delete")).toBe(true);
    expect(editor.document.getState().shown.dimensions).toBeUndefined();
    expect(run(editor, "delete")).toBe(false);
    run(editor, "undo");
    expect(editor.document.getState().shown.dimensions).toHaveLength(1);
    // Gone by another way, it does not cost an Escape.
    editor.view.getState().pickDimension("dimension-9");
    editor.document.getState().edit(removeDimension("dimension-9"));
    editor.view.getState().choosePart("water");
    run(editor, "escape");
    expect(editor.view.getState().part).toBeNull();
    // Nor does undo leave picked what it takes from the sheet.
    run(editor, "undo");
    editor.document.getState().edit(addDimension({ ...ends, offset: 36 }));
    editor.view.getState().pickDimension(editor.document.getState().shown.dimensions?.at(-1)?.id ?? "");
    run(editor, "undo");
    expect(editor.view.getState().dimension).toBeNull();
  });
});

describe("the selection", () => {
  it("is deleted, copied, moved; all of it can be selected", () => {
    const editor = headlessEditor(sampleYard());
    expect(run(editor, "delete")).toBe(false);
    expect(editor.said()).toBe("Select something first.");
    editor.view.getState().select(["pole-1", "gone"]);
    run(editor, "move-up-far");
    expect(field(editor.document.getState().shown, "pole-1", "shape")).toEqual({ point: [200, 262] });
    run(editor, "move-left");
    expect(field(editor.document.getState().shown, "pole-1", "shape")).toEqual({ point: [199, 262] });
    run(editor, "delete");
    expect(editor.said()).toBe("Deleted light pole 1.");
    expect(editor.view.getState().selection).toEqual([]);
    run(editor, "select-all");
    expect(editor.view.getState().selection).toHaveLength(editor.document.getState().shown.elements.length);
  });

  it("keeps what a refused command could not do, and says why", () => {
    const editor = headlessEditor(sampleYard());
    editor.view.getState().select(["statue-1"]);
    run(editor, "duplicate");
    expect(editor.said()).toMatch(/cannot copy/);
    expect(editor.view.getState().selection).toEqual(["statue-1"]);
    expect(editor.document.getState().history.past).toEqual([]);
  });

  it("is laid over or under, several in the order that they have", () => {
    const editor = headlessEditor(sampleYard());
    const ids = () => editor.document.getState().shown.elements.map(({ id }) => id);
    expect(run(editor, "lay-on-top")).toBe(false);
    const [first, second] = [ids()[0] as string, ids()[1] as string];
    editor.view.getState().select([second, first]);
    run(editor, "lay-on-top");
    expect(ids().slice(-2)).toEqual([first, second]);
    run(editor, "lay-underneath");
    expect(ids().slice(0, 2)).toEqual([first, second]);
  });
});

describe("letting go", () => {
  it("gives up one thing at a time, the nearest first", () => {
    const editor = headlessEditor(sampleYard());
    const view = () => editor.view.getState();
    view().choosePart("shell");
    view().select(["pool-1"]);
    view().chooseFinding("shell/pool-1/pool-1");
    view().setTool("fence");
    editor.document.getState().beginGesture("Move");
    editor.document.getState().preview(moveElements(["pool-1"], 5, 5));
    editor.begun = true;
    run(editor, "escape");
    expect(editor.document.getState().gesture).not.toBeNull();
    run(editor, "escape");
    expect(editor.document.getState()).toMatchObject({ gesture: null, history: { past: [] } });
    expect(view().tool).toBe("fence");
    run(editor, "escape");
    expect(view()).toMatchObject({ tool: "select", finding: "shell/pool-1/pool-1" });
    run(editor, "escape");
    expect(view()).toMatchObject({ finding: null, selection: ["pool-1"] });
    run(editor, "escape");
    expect(view()).toMatchObject({ selection: [], part: "shell" });
    run(editor, "escape");
    expect(view().part).toBeNull();
  });

  it("ends adding before it lets go of what was added", () => {
    const editor = headlessEditor(sampleYard());
    const view = () => editor.view.getState();
    run(editor, "select-more");
    view().select(["pool-1", "pump-1"]);
    run(editor, "escape");
    expect(view()).toMatchObject({ adding: false, selection: ["pool-1", "pump-1"] });
    run(editor, "escape");
    expect(view().selection).toEqual([]);
  });
});

describe("the view, files and help", () => {
  it("are passed on", async () => {
    const editor = headlessEditor(emptySite());
    for (const id of ["fit", "zoom-in", "zoom-out", "pan-up", "pan-right-far", "print", "help", "commands", "gallery"])
      run(editor, id);
    for (const id of ["new", "open", "save", "save-as"]) run(editor, id);
    expect(editor.asked).toEqual([
      "fit",
      "zoom 1.25",
      "zoom 0.8",
      "pan 0 -64",
      "pan 256 0",
      "print",
      "dialog help",
      "dialog commands",
      "dialog gallery",
      "files.newSite",
      "files.openByPicker",
      "files.save",
      "files.saveAs",
    ]);
  });

  it("toggle colors and snapping, and say so", () => {
    const editor = headlessEditor(emptySite());
    run(editor, "palette");
    expect(editor.view.getState().palette).toBe("projector");
    expect(COMMANDS.get("palette").labelNow?.(editor)).toBe("Paper colors");
    run(editor, "snapping");
    expect(editor.view.getState().snapping).toBe(false);
    expect(editor.said()).toBe("Snapping is off.");
  });
});
