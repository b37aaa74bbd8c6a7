/**
 * Whether a recorded conductor is copper of a kind that may carry the bonding: size, solid, metal, covering, and (of
 * branches and tails) its joints. Rings and grids are bare: a covering breaks none of their connections, but keeps them
 * from the ground that they are laid for. Sources: NEC 680.26(B), 250.8; sizes in AWG as ASTM B258 numbers them.
 */
import { bodyOf } from "../catalogue/common/storable.ts";
import type { Yard } from "../measures/yard.ts";
import type { ConductorElement } from "../site/elements.ts";
import { awgOf, awgText } from "./awg.ts";
import { bad, type Fact, good, open, standingOfFacts } from "./fact.ts";
import type { Standing } from "./standing.ts";

export interface Wire {
  readonly facts: readonly Fact[];
  /** `no`: its faults break every connection it makes. The covering of a ring or grid has no part in it. */
  readonly standing: Standing;
  /** Whether a ring or grid is bare; of other conductors, which may be covered: sure. */
  readonly bare: Standing;
  /** A conduit that serves in place of the wire. */
  readonly conduit: boolean;
  /** AWG number (1/0 = 0, 2/0 = -1 ...), null when not given or not readable. */
  readonly awg: number | null;
}

/** The wire of a recorded conductor, worked out once per yard. */
export function wireOf(yard: Yard, conductor: ConductorElement): Wire {
  return yard.kept(`wire ${conductor.id}`, () => {
    const conduit =
      conductor.material !== undefined && yard.edition.value("conductor.insteadMaterials").includes(conductor.material);
    const laidBare = conductor.role === "ring" || conductor.role === "grid";
    const facts = conduit
      ? [good("material", ["conductor.insteadMaterials"])]
      : [sizeFact, solidFact, metalFact].map((fact) => fact(yard, conductor));
    if (!conduit && !laidBare) facts.push(coveringFact(yard, conductor));
    if (conductor.role === "branch" || conductor.role === "tail") facts.push(branchJointFact(yard, conductor));
    const bare = laidBare && !conduit ? [bareFact(yard, conductor)] : [];
    return {
      facts: [...facts, ...bare],
      standing: standingOfFacts(facts),
      bare: standingOfFacts(bare),
      conduit,
      awg: awgOf(conductor.awg),
    };
  }, [conductor]);
}

function ask(yard: Yard, conductor: ConductorElement, id: string, text: string) {
  return { yard, element: conductor.id, body: bodyOf(yard, conductor)?.id ?? null, id, text };
}

function sizeFact(yard: Yard, conductor: ConductorElement): Fact {
  const least = yard.edition.value("conductor.size");
  const awg = awgOf(conductor.awg);
  const remedy = `Lay solid copper of ${awgText(least)} or larger.`;
  if (awg === null) {
    const says =
      conductor.awg === undefined ? "Its size (`awg`) is not given." : `Its size "${conductor.awg}" says no gauge.`;
    const text = `Is this conductor ${awgText(least)} or larger?`;
    return open(
      "awg",
      says,
      "Read the size off the wire or its reel and record it.",
      ask(yard, conductor, "conductor-size", text),
      ["conductor.size"],
    );
  }
  if (awg > least)
    return bad("awg", `It is ${awgText(awg)}, smaller than ${awgText(least)}.`, remedy, ["conductor.size"]);
  return good("awg", ["conductor.size"]);
}

function solidFact(yard: Yard, conductor: ConductorElement): Fact {
  if (conductor.solid === true) return good("solid");
  if (conductor.solid === false) {
    return bad(
      "solid",
      "It is stranded; stranded wire never serves, because its strands corrode in the ground.",
      "Replace it by solid copper.",
      ["conductor.size"],
    );
  }
  const text = "Is this conductor solid, a single wire without strands?";
  return open(
    "solid",
    "Whether it is solid or stranded (`solid`) is not given.",
    "Look at a cut end and record whether it is solid.",
    ask(yard, conductor, "conductor-solid", text),
    ["conductor.size"],
  );
}

function metalFact(yard: Yard, conductor: ConductorElement): Fact {
  const limits = ["conductor.materials"] as const;
  const metals = yard.edition.value("conductor.materials");
  const { material } = conductor;
  if (material === undefined) {
    const text = `Is this conductor of ${metals.map(plain).join(" or ")}?`;
    return open(
      "material",
      "Its metal (`material`) is not given.",
      "Scrape a bright spot, look at the metal and record it.",
      ask(yard, conductor, "conductor-metal", text),
      limits,
    );
  }
  if (metals.includes(material)) return good("material", limits);
  return bad(
    "material",
    `It is ${plain(material)}; this edition takes ${metals.map(plain).join(" or ")}.`,
    "Replace it by solid copper.",
    limits,
  );
}

const COVERINGS = ["bare", "insulated", "covered"];

function coveringFact(yard: Yard, conductor: ConductorElement): Fact {
  const limits = ["conductor.coverings"] as const;
  const allowed = yard.edition.value("conductor.coverings");
  // Where every covering serves, its absence decides nothing.
  if (COVERINGS.every((word) => allowed.includes(word))) return good("covering", limits);
  const { covering } = conductor;
  if (covering !== undefined && allowed.includes(covering)) return good("covering", limits);
  const wanted = allowed.map(plain).join(" or ");
  if (covering !== undefined && COVERINGS.includes(covering)) {
    return bad("covering", `It is ${covering}; allowed is ${wanted}.`, `Replace it by ${wanted} copper.`, limits);
  }
  return open(
    "covering",
    "Its covering (`covering`) is not given.",
    "Look at it and record its covering.",
    ask(yard, conductor, "conductor-covering", `Is this conductor ${wanted}?`),
    limits,
  );
}

/** Of a ring or grid, whatever coverings serve elsewhere. */
function bareFact(yard: Yard, conductor: ConductorElement): Fact {
  const limits = ["conductor.coverings"] as const;
  const { covering } = conductor;
  if (covering === "bare") return good("covering", limits);
  if (covering === "insulated" || covering === "covered") {
    return bad(
      "covering",
      `It is ${covering}; copper of a ring or grid is bare, so that it meets the ground all along.`,
      "Replace it by bare solid copper.",
      limits,
    );
  }
  const says =
    covering === undefined
      ? "Whether it is bare (`covering`) is not given."
      : `Its covering "${covering}" says nothing that can be judged.`;
  return open(
    "covering",
    says,
    "Look whether it is bare and record it.",
    ask(yard, conductor, "conductor-bare", "Is this conductor bare?"),
    limits,
  );
}

function branchJointFact(yard: Yard, conductor: ConductorElement): Fact {
  const limits = ["connection.refusedHardware"] as const;
  const { joint } = conductor;
  const refused = yard.edition.value("connection.refusedHardware");
  if (joint !== undefined && refused.includes(joint)) {
    return bad(
      "joint",
      `It is joined by ${jointText(joint)} alone, which does not count as a connection.`,
      "Join it by a listed splice or an exothermic weld.",
      ["connection.refusedHardware"],
    );
  }
  if (joint !== undefined && yard.edition.value("ring.joints").includes(joint)) return good("joint", limits);
  const says =
    joint === undefined
      ? "Whether it has joints, and of what kind (`joint`), is not given."
      : `Its joint "${joint}" is of no kind that can be judged.`;
  const text = "Is this conductor without joints, or are they listed splices or exothermic welds?";
  return open(
    "joint",
    says,
    "Look along it and record its joints.",
    ask(yard, conductor, "conductor-joint", text),
    limits,
  );
}

export function jointText(joint: string): string {
  return joint === "twisted" ? "twisting" : joint === "solder" ? "solder" : joint.replaceAll("-", " ");
}

export function plain(word: string): string {
  return word.replaceAll("-", " ");
}
