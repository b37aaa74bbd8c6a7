/** What is known of a body's shell, the site's answers included. */
import type { Body, Yard } from "../../measures/yard.ts";
import type { Question } from "../../report.ts";
import { type Settled, settle, yesNo } from "./verdicts.ts";

export const SHELL_KIND_QUESTION: Question = {
  id: "shell-kind",
  text: "What is the shell made of?",
  options: ["concrete, or block with paint or plaster", "liner or fiberglass", "metal"],
};

export const SHELL_STEEL_QUESTION: Question = {
  id: "shell-steel",
  text: "What steel does the shell hold?",
  options: ["bare, tied together", "encapsulated", "none"],
};

export const POOL_WALL_FRAME_QUESTION: Question = {
  id: "pool-wall-frame",
  text: "What are the walls or the frame behind the liner made of?",
  options: ["metal", "no metal"],
};

export const WALL_FRAME_CONDUCTIVE_QUESTION = yesNo(
  "wall-frame-conductive",
  "Does the authority having jurisdiction count the metal wall or frame as a conductive shell, tied at four points?",
);

/**
 * `conductive`: has to hold bonded steel or a copper grid, and is tied to the perimeter bonding.
 * `frame`: does not conduct itself, but a metal wall or frame stands behind it: argued.
 * `open`: it is not known what it is.
 */
export type ShellClass = "conductive" | "nonconductive" | "frame" | "open";

export interface ShellFacts {
  readonly class: ShellClass;
  readonly steel: "bare" | "encapsulated" | "none" | "unknown";
  /** Metal walls or frame: a part of the structure to be bonded. */
  readonly wallFrame: "metal" | "nonmetal" | "unknown";
  /** The four ties: `yes` and `no` are sure, `argued` waits for the authority's word. */
  readonly ties: "yes" | "no" | "argued";
  readonly question: Question | null;
  readonly settled: Settled;
}

export function shellFacts(yard: Yard, body: Body): ShellFacts {
  return yard.kept(`shell facts ${body.id}`, () => factsOf(yard, body));
}

function factsOf(yard: Yard, body: Body): ShellFacts {
  const { shell, steel, wallFrame } = body.element;
  const ask = (question: Question) => settle(yard, question, body.id, body.id);
  const none: Settled = { choice: null, trace: {}, note: "" };
  let kind: ShellClass | "metal" = "open";
  let settled = none;
  if (yard.edition.value("shell.conductive").includes(shell)) kind = "conductive";
  else if (yard.edition.value("shell.nonconductive").includes(shell)) kind = "nonconductive";
  else if (shell === "metal") kind = "metal";
  else {
    settled = ask(SHELL_KIND_QUESTION);
    const [concrete, liner, metal] = SHELL_KIND_QUESTION.options;
    if (settled.choice === concrete) kind = "conductive";
    else if (settled.choice === liner) kind = "nonconductive";
    else if (settled.choice === metal) kind = "metal";
  }
  if (kind === "open") {
    const frame = wallFrame ?? "unknown";
    return {
      class: "open",
      steel: steel ?? "unknown",
      wallFrame: frame,
      ties: "argued",
      question: SHELL_KIND_QUESTION,
      settled,
    };
  }
  if (kind === "conductive") {
    const frame = wallFrame ?? "nonmetal";
    if (steel !== undefined) return { class: kind, steel, wallFrame: frame, ties: "yes", question: null, settled };
    const answer = ask(SHELL_STEEL_QUESTION);
    const [bare, encapsulated, without] = SHELL_STEEL_QUESTION.options;
    const found =
      answer.choice === bare
        ? "bare"
        : answer.choice === encapsulated
          ? "encapsulated"
          : answer.choice === without
            ? "none"
            : "unknown";
    const question = found === "unknown" ? SHELL_STEEL_QUESTION : null;
    return { class: kind, steel: found, wallFrame: frame, ties: "yes", question, settled: answer };
  }
  let frame: ShellFacts["wallFrame"] = kind === "metal" ? "metal" : (wallFrame ?? "unknown");
  if (frame === "unknown") {
    // Fiberglass shells carry themselves: a frame behind one is drawn where there is one.
    if (shell === "fiberglass") frame = "nonmetal";
    else {
      settled = ask(POOL_WALL_FRAME_QUESTION);
      if (settled.choice === "metal") frame = "metal";
      else if (settled.choice === "no metal") frame = "nonmetal";
      else
        return {
          class: "frame",
          steel: "none",
          wallFrame: frame,
          ties: "argued",
          question: POOL_WALL_FRAME_QUESTION,
          settled,
        };
    }
  }
  if (frame === "nonmetal")
    return { class: "nonconductive", steel: "none", wallFrame: frame, ties: "no", question: null, settled };
  const conductive = ask(WALL_FRAME_CONDUCTIVE_QUESTION);
  const ties = conductive.choice === "yes" ? "yes" : conductive.choice === "no" ? "no" : "argued";
  const question = ties === "argued" ? WALL_FRAME_CONDUCTIVE_QUESTION : null;
  return { class: "frame", steel: "none", wallFrame: "metal", ties, question, settled: conductive };
}
