/**
 * Brings pointer, keys and typed measurements to the tool in hand. Free of the canvas and of React: the sheet on the
 * screen gives it places in site inches and is told when there is something new to paint; a test does the same.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { Point } from "../../geometry/types.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { hiddenIds } from "../edits/arrangement.ts";
import { nextPlace } from "../snapping/candidates.ts";
import { toStep } from "../snapping/grid.ts";
import type { ToolId } from "../view/view-store.ts";
import { ARROWS, BIG_STEP, STEP } from "./arrows.ts";
import { createTool } from "./create-tool.ts";
import { followEditor } from "./follow-editor.ts";
import { GivenUp } from "./given-up.ts";
import { HeldBack, mayWait } from "./held-back.ts";
import { AT_FIRST, type HostPorts, type HostSheet, type HostState, NO_SHEET } from "./host-ports.ts";
import { crosshairWords } from "./spoken.ts";
import { TAKE_BACK } from "./take-back.ts";
import type { Desk, Key, OverlayShape, Pointer, Tool } from "./tool.ts";
import { deskOf } from "./tool-desk.ts";
import { beginsTyping, readEntry } from "./typed-entry.ts";

export class ToolHost {
  readonly state: StoreApi<HostState>;
  readonly #ports: HostPorts;
  readonly #desk: Desk;
  readonly #givenUp: GivenUp;
  readonly #held = new HeldBack();
  #sheet: HostSheet = NO_SHEET;
  #tool: Tool;
  #last: Pointer | null = null;
  #crosshair: Point | null = null;
  /** The pointer came down while something typed could not be read: it places nothing. */
  #isPassedOver = false;

  constructor(ports: HostPorts) {
    this.#ports = ports;
    this.#givenUp = new GivenUp(ports);
    this.state = createStore<HostState>(() => AT_FIRST);
    this.#desk = deskOf(ports, {
      state: this.state,
      sheet: () => this.#sheet,
      units: () => this.#units(),
      typed: () => this.#read().values,
      crosshairTo: (at) => {
        if (this.#crosshair !== null || this.#last === null) this.#setCrosshair(at);
        // The pointer stays where it is; what was placed by typing may lie far from it.
        else this.#sheet.reveal(at);
      },
      renew: () => {
        this.#refresh();
        if (!this.#isAwaited) this.#held.deliver();
      },
    });
    this.#tool = createTool(ports.view.getState().tool, this.#desk);
    followEditor(ports, {
      tool: () => this.#tool.id,
      take: (id) => this.#take(id),
      refresh: () => this.#refresh(),
      withdrawTie: () => this.withdrawTie(),
      hush: () => this.#desk.announce(""),
    });
    this.#refresh();
  }

  /** Connects the sheet on the screen. Returns what disconnects it. */
  connect(sheet: HostSheet): () => void {
    this.#sheet = sheet;
    return () => {
      this.#sheet = NO_SHEET;
    };
  }

  get tool(): Tool {
    return this.#tool;
  }

  pointerDown(pointer: Pointer): void {
    if (this.#holds(() => this.pointerDown(pointer), { pressedAt: pointer.at })) return;
    this.#crosshair = null;
    this.#last = pointer;
    this.#isPassedOver = this.#refusesText();
    if (this.#isPassedOver) this.#tool.pointerMove(pointer);
    else this.#tool.pointerDown(pointer);
    this.#refresh();
  }

  pointerMove(pointer: Pointer): void {
    if (this.#holds(() => this.pointerMove(pointer), { isMove: true })) return;
    this.#crosshair = null;
    this.#last = pointer;
    this.#tool.pointerMove(pointer);
    this.#refresh();
  }

  pointerUp(pointer: Pointer): void {
    if (this.#holds(() => this.pointerUp(pointer), { isRelease: true })) return;
    this.#last = pointer;
    if (this.#isPassedOver) this.#tool.pointerMove(pointer);
    else this.#tool.pointerUp(pointer);
    this.#isPassedOver = false;
    this.#refresh();
  }

  /** The pointer has left the sheet. */
  pointerLeave(): void {
    this.#ports.view.getState().hover(null);
    if (this.#holds(() => this.pointerLeave(), { isMove: true })) return;
    if (!this.#tool.pointerLeave) return;
    this.#tool.pointerLeave();
    this.#refresh();
  }

  /** The key that holds snapping off goes down or up while the pointer rests. */
  holdSnappingOff(isHeld: boolean): void {
    const last = this.#last;
    if (!last || last.isCrosshair || last.alt === isHeld) return;
    this.#last = { ...last, alt: isHeld, isDouble: false };
    this.#tool.pointerMove(this.#last);
    this.#refresh();
  }

  abandonPress(): void {
    if (this.#isAwaited) this.#held.abandonPress();
    else if (!this.#isPassedOver) this.#tool.abandonPress();
    this.#isPassedOver = false;
    this.#refresh();
  }

  /** Gives up what was begun; false when nothing was. */
  cancel(): boolean {
    const hadTexts = Object.keys(this.state.getState().texts).length > 0;
    this.state.setState({ texts: {}, problems: {}, refusal: null });
    const hadHeld = this.#held.clear();
    this.#givenUp.keep(this.#tool);
    const had = this.#tool.cancel();
    this.#refresh();
    return had || hadTexts || hadHeld;
  }

  /** A drawing was given up that can be taken up again. */
  get canTakeUp(): boolean {
    return this.#givenUp.isThere;
  }

  /** Goes on with the drawing that was given up last; one that is under way is given up for it. */
  takeUp(): void {
    const drawing = this.#givenUp.release();
    if (!drawing) return;
    if (this.#tool.id === drawing.id) this.cancel();
    else this.#ports.view.getState().setTool(drawing.id);
    this.#tool.takeUp?.(drawing.begun);
    this.#refresh();
  }

  /**
   * True when the key was used. One that has to wait for the tool counts as used; it comes back through `again`, which also
   * sees to it where the tool does not use it.
   */
  key(key: Key, again: () => void = () => this.key(key)): boolean {
    if (mayWait(key) && this.#holds(again)) return true;
    if (key.key === "Enter" && this.#refusesText()) return true;
    const used = this.#tool.key(key) || this.#moveCrosshair(key) || this.#enterAtCrosshair(key) || this.#type(key);
    if (used) this.#refresh();
    return used;
  }

  /** A text in the entry bar has changed. */
  type(field: string, text: string): void {
    const { [field]: _, ...others } = this.state.getState().texts;
    this.state.setState({ texts: text === "" ? others : { ...others, [field]: text }, refusal: null });
    this.#tool.retyped?.();
    this.#refresh();
  }

  /** Enter in the entry bar: places what is typed, or ends the drawing when nothing is. True when it was done. */
  enter(): boolean {
    const { entry, texts } = this.state.getState();
    if (!entry) return false;
    if (Object.keys(texts).length === 0) return this.key({ key: "Enter", shift: false });
    const { values, problems } = this.#read();
    const [problem] = Object.values(problems);
    const refusal = problem ?? this.#tool.typed(values);
    this.state.setState(refusal === null ? { texts: {}, problems: {}, refusal: null } : { problems, refusal });
    this.#refresh();
    return refusal === null;
  }

  /** A key that a button of the entry bar stands for. */
  press(key: string): void {
    this.#tool.key({ key, shift: false });
    this.#refresh();
  }

  /** Takes the last corner back, or whatever it is that was placed last. */
  takeBack(): void {
    if (this.#held.isWorth) this.#held.dropLast();
    else this.#tool.key({ key: "Backspace", shift: false });
    this.#refresh();
  }

  /** Ends the drawing, as the button of the entry bar says. */
  finish(): void {
    this.#crosshair = null;
    const last = this.#last;
    if (last) this.#tool.pointerMove({ ...last, alt: last.alt || last.isCrosshair, isCrosshair: false });
    this.press("Enter");
  }

  /** Takes the crosshair to the next place that way: a corner, an end, the middle of a side or a part. False without one. */
  jump([dx, dy]: Point): boolean {
    if (!this.#isDrawing()) return false;
    if (this.#holds(() => this.jump([dx, dy]))) return true;
    const from = this.#crosshair ?? this.#start();
    const { shown } = this.#ports.document.getState();
    const next = nextPlace(shown.elements, from, [dx, dy], hiddenIds(shown));
    if (!next) return false;
    this.#setCrosshair(next.at);
    this.#sayCrosshair(next.at, next.words);
    this.#refresh();
    return true;
  }

  /** Puts the keys into the first field of the entry bar. */
  askForText(): void {
    this.state.setState(({ focusRequests }) => ({ focusRequests: focusRequests + 1 }));
  }

  /** Goes on with what a tool of the same name had begun, and brings the place into view from where it goes on. */
  goOn(begun: unknown, from: Point): void {
    this.#tool.takeUp?.(begun);
    this.#sheet.reveal(from);
    this.#refresh();
  }

  overlay(): readonly OverlayShape[] {
    return [...this.#tool.overlay(), ...this.#held.overlay()];
  }

  withdrawTie(): void {
    if (this.state.getState().offeredTie) this.state.setState({ offeredTie: null });
  }

  #take(id: ToolId): void {
    this.#givenUp.keep(this.#tool);
    this.#tool.cancel();
    if (this.#held.clear()) this.#desk.complain("The tool was not there yet: what was done with it is given up.");
    this.#tool = createTool(id, this.#desk);
    this.#crosshair = null;
    this.#ports.view.getState().hover(null);
    this.state.setState({ texts: {}, problems: {}, refusal: null, offeredTie: null });
    this.#refresh();
  }

  #read() {
    const { entry, texts } = this.state.getState();
    const site = this.#ports.document.getState().shown;
    return entry ? readEntry(entry, texts, this.#units(), site.north) : { values: {}, problems: {} };
  }

  /** Works out anew what the entry bar shows, and has the overlay painted. */
  #refresh(): void {
    this.#givenUp.watch(this.#tool);
    const entry = this.#tool.entry();
    const { texts } = this.state.getState();
    const names = new Set(entry?.fields.map(({ name }) => name));
    const fitting = Object.fromEntries(Object.entries(texts).filter(([name]) => names.has(name)));
    const takesBack = this.#held.isWorth ? TAKE_BACK.press : (this.#tool.takesBack?.() ?? null);
    this.state.setState({ entry, takesBack, texts: fitting });
    this.state.setState({ problems: this.#read().problems });
    this.#sheet.changed();
  }

  /** What is typed goes before the pointer: while it cannot be read, nothing is placed, and why is said. */
  #refusesText(): boolean {
    const [problem] = this.#isDrawing() ? Object.values(this.#read().problems) : [];
    if (problem !== undefined) this.#desk.complain(problem);
    return problem !== undefined;
  }

  /** The tool in hand is still being fetched. */
  get #isAwaited(): boolean {
    return this.#tool.isReady?.() === false;
  }

  /** Keeps something for when the tool is there; false where it is. */
  #holds(...input: Parameters<HeldBack["hold"]>): boolean {
    if (!this.#isAwaited) return false;
    const hadNothing = !this.#held.isWorth;
    this.#held.hold(...input);
    if (hadNothing && this.#held.isWorth) this.#desk.announce("The tool is getting ready.");
    this.#refresh();
    return true;
  }

  #isDrawing(): boolean {
    return this.#tool.id !== "select" && this.#tool.id !== "pan";
  }

  #moveCrosshair({ key, shift }: Key): boolean {
    const way = ARROWS[key];
    if (!way || !this.#isDrawing()) return false;
    const from = this.#crosshair ?? this.#start();
    const size = shift ? BIG_STEP : STEP;
    // The first arrow only shows where it is.
    const to: Point = this.#crosshair === null ? from : [from[0] + way[0] * size, from[1] + way[1] * size];
    this.#setCrosshair(to);
    this.#sayCrosshair(to);
    return true;
  }

  #sayCrosshair(at: Point, what?: string): void {
    this.state.setState({ announcement: crosshairWords(at, this.#tool.overlay(), this.#units(), what) });
  }

  #enterAtCrosshair({ key }: Key): boolean {
    if (key !== "Enter" || !this.#isDrawing()) return false;
    this.#setCrosshair(this.#crosshair ?? this.#start());
    return this.#tool.key({ key, shift: false });
  }

  /** Where the crosshair comes to be first: the middle of the view, on whole inches. */
  #start(): Point {
    const [x, y] = this.#desk.middle();
    return [toStep(x, STEP), toStep(y, STEP)];
  }

  #setCrosshair(at: Point): void {
    this.#crosshair = at;
    this.#last = { at, shift: false, mod: false, alt: false, isTouch: false, isDouble: false, isCrosshair: true };
    this.#tool.pointerMove(this.#last);
    this.#sheet.reveal(at);
  }

  #type({ key }: Key): boolean {
    const { entry, texts, focusRequests } = this.state.getState();
    const field = entry?.fields[0];
    if (!entry || !field || !beginsTyping(key, entry)) return false;
    const text = (texts[field.name] ?? "") + key;
    this.state.setState({ texts: { ...texts, [field.name]: text }, refusal: null, focusRequests: focusRequests + 1 });
    this.#tool.retyped?.();
    return true;
  }

  #units(): Units {
    return this.#ports.document.getState().shown.display?.units ?? "ft-in";
  }
}
