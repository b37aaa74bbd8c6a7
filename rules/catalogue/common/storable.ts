/** Storable pools are outside of 680.26: which bodies the bonding rules look at. */
import type { Body, Yard } from "../../measures/yard.ts";
import { type Settled, settle, yesNo } from "./verdicts.ts";

export const STORABLE_QUESTION = yesNo(
  "pool-storable",
  "Does this pool stand on or above the ground, and is it meant to be taken down and stored?",
);

export interface Storable {
  /** `yes`: 680.26 does not apply. `doubtful`: judged as permanent until it is settled. */
  readonly is: "yes" | "no" | "doubtful";
  /** Why it is doubtful. */
  readonly doubt: "none" | "not-given" | "contradicted";
  readonly settled: Settled;
}

/** Whether a body of water is a storable pool, as far as the site says. */
export function storableOf(yard: Yard, body: Body): Storable {
  return yard.keptOf(body.element, "storable", () => {
    const { storable, installation, shell } = body.element;
    const settled = settle(yard, STORABLE_QUESTION, body.id, body.id);
    const built = installation === "in-ground" || yard.edition.value("shell.conductive").includes(shell);
    const doubt =
      storable === true && built
        ? "contradicted"
        : storable === undefined && mayStand(body, built)
          ? "not-given"
          : "none";
    if (doubt === "none") return { is: storable === true ? "yes" : "no", doubt, settled: UNASKED };
    const is = settled.choice === "yes" ? "yes" : settled.choice === "no" ? "no" : "doubtful";
    return { is, doubt, settled };
  });
}

const UNASKED: Settled = { choice: null, trace: {}, note: "" };

/** A pool that is not built in and not indoors may stand on the ground; spas have their own exception. */
function mayStand(body: Body, built: boolean): boolean {
  return body.element.body === "pool" && !built && body.element.installation !== "indoor";
}

/** The bodies of water that 680.26 applies to, in file order. */
export function bondedBodies(yard: Yard): readonly Body[] {
  return yard.kept("bonded bodies", () => yard.bodies.filter((body) => storableOf(yard, body).is !== "yes"));
}

/**
 * The bonded body that an element names, or else the nearest one. Null where the site has none, or where the element
 * names a storable pool.
 */
export function bodyOf(
  yard: Yard,
  element: Parameters<Yard["nearestBody"]>[0] & { readonly pool?: string },
): Body | null {
  const bodies = bondedBodies(yard);
  if (element.pool !== undefined && yard.body(element.pool)) {
    return bodies.find((body) => body.id === element.pool) ?? null;
  }
  return yard.nearestBody(element, bodies);
}
