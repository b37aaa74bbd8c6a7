/**
 * Brings pointer, keys and typed measurements to the tool in hand. Free of the canvas and of React: the sheet on the
 * screen gives it places in site inches and is told when there is something new to paint; a test does the same.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { Point } from "../../geometry/types.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { hiddenIds } from "../edits/arrangement.ts";
import { nextPlace } from "../snapping/candidates.ts";
import { gridStep, toStep } from "../snapping/grid.ts";
import type { ToolId } from "../view/view-store.ts";
import { ARROWS, BIG_STEP, STEP } from "./arrows.ts";
import { createTool } from "./create-tool.ts";
import { GivenUp } from "./given-up.ts";
import type { HostPorts, HostSheet, HostState } from "./host-ports.ts";
import { snapOn } from "./snap-on.ts";
import { crosshairWords } from "./spoken.ts";
import type { Desk, Key, OverlayShape, Pointer, Tool } from "./tool.ts";
import { beginsTyping, readEntry } from "./typed-entry.ts";

/** Screen pixels that count as on something: by mouse or pen, by finger. */
export const SLACK_PIXELS = 8;
export const TOUCH_SLACK_PIXELS = 22;

const NO_SHEET: HostSheet = { changed() {}, findingAt: () => null, reveal() {} };

export class ToolHost {
  readonly state: StoreApi<HostState>;
  readonly #ports: HostPorts;
  readonly #desk: Desk;
  readonly #givenUp: GivenUp;
  #sheet: HostSheet = NO_SHEET;
  #tool: Tool;
  #last: Pointer | null = null;
  #crosshair: Point | null = null;
  /** The pointer came down while something typed could not be read: it places nothing. */
  #isPassedOver = false;

  constructor(ports: HostPorts) {
    this.#ports = ports;
    this.#givenUp = new GivenUp(ports);
    this.state = createStore<HostState>(() => ({
      entry: null,
      texts: {},
      problems: {},
      refusal: null,
      focusRequests: 0,
      offeredTie: null,
      announcement: "",
    }));
    this.#desk = this.#makeDesk();
    this.#tool = createTool(ports.view.getState().tool, this.#desk);
    ports.view.subscribe((state, before) => {
      if (state.tool !== before.tool || state.reshaping !== before.reshaping) this.#take(state.tool);
      else if (state.shape !== before.shape) this.#refresh();
    });
    ports.document.subscribe((state, before) => {
      // What was pressed or begun was on the site before.
      if (state.opened !== before.opened) this.#take(ports.view.getState().tool);
      else if (state.shown !== before.shown && this.state.getState().offeredTie) this.withdrawTie();
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
    this.#crosshair = null;
    this.#last = pointer;
    this.#isPassedOver = this.#refusesText();
    if (this.#isPassedOver) this.#tool.pointerMove(pointer);
    else this.#tool.pointerDown(pointer);
    this.#refresh();
  }

  pointerMove(pointer: Pointer): void {
    this.#crosshair = null;
    this.#last = pointer;
    this.#tool.pointerMove(pointer);
    this.#refresh();
  }

  pointerUp(pointer: Pointer): void {
    this.#last = pointer;
    if (this.#isPassedOver) this.#tool.pointerMove(pointer);
    else this.#tool.pointerUp(pointer);
    this.#isPassedOver = false;
    this.#refresh();
  }

  /** The pointer has left the sheet. */
  pointerLeave(): void {
    this.#ports.view.getState().hover(null);
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
    if (!this.#isPassedOver) this.#tool.abandonPress();
    this.#isPassedOver = false;
    this.#refresh();
  }

  /** Gives up what was begun; false when nothing was. */
  cancel(): boolean {
    const hadTexts = Object.keys(this.state.getState().texts).length > 0;
    this.state.setState({ texts: {}, problems: {}, refusal: null });
    this.#givenUp.keep(this.#tool);
    const had = this.#tool.cancel();
    this.#refresh();
    return had || hadTexts;
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

  /** True when the key was used. */
  key(key: Key): boolean {
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

  overlay(): readonly OverlayShape[] {
    return this.#tool.overlay();
  }

  withdrawTie(): void {
    this.state.setState({ offeredTie: null });
  }

  #take(id: ToolId): void {
    this.#givenUp.keep(this.#tool);
    this.#tool.cancel();
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
    this.state.setState({ entry, texts: fitting });
    this.state.setState({ problems: this.#read().problems });
    this.#sheet.changed();
  }

  /** What is typed goes before the pointer: while it cannot be read, nothing is placed, and why is said. */
  #refusesText(): boolean {
    const [problem] = this.#isDrawing() ? Object.values(this.#read().problems) : [];
    if (problem !== undefined) this.#desk.complain(problem);
    return problem !== undefined;
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

  #pixel(): number {
    return 1 / this.#ports.view.getState().camera.scale;
  }

  #makeDesk(): Desk {
    const { document, view, live } = this.#ports;
    return {
      document,
      view,
      report: () => live.getState().report,
      pixel: () => this.#pixel(),
      slack: (pointer) => (pointer.isTouch ? TOUCH_SLACK_PIXELS : SLACK_PIXELS) * this.#pixel(),
      units: () => this.#units(),
      snap: (pointer, options) => snapOn(this.#ports, pointer, options),
      typed: () => this.#read().values,
      clearTyped: () => this.state.setState({ texts: {}, problems: {}, refusal: null }),
      middle: () => {
        const { x, y, scale } = view.getState().camera;
        const middle = this.#sheet.middle?.() ?? [x, y];
        const step = gridStep(scale, this.#units());
        return [toStep(middle[0], step), toStep(middle[1], step)];
      },
      crosshairTo: (at) => {
        if (this.#crosshair !== null || this.#last === null) this.#setCrosshair(at);
        // The pointer stays where it is; what was placed by typing may lie far from it.
        else this.#sheet.reveal(at);
      },
      findingAt: (at, slack) => this.#sheet.findingAt(at, slack),
      offerTie: (offeredTie) => {
        if (this.state.getState().offeredTie !== offeredTie) this.state.setState({ offeredTie });
      },
      finish: (id) => {
        view.getState().select([id]);
        view.getState().setTool("select");
        view.getState().setPanel("element");
      },
      renew: () => this.#refresh(),
      reveal: (at) => this.#sheet.reveal(at),
      complain: (reason) => view.getState().say(reason, "problem"),
      announce: (announcement) => this.state.setState({ announcement }),
    };
  }
}
