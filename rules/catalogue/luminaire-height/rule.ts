import { exceeds } from "../../measures/compare.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { Measured } from "../../report.ts";
import type { DeviceElement } from "../../site/elements.ts";
import { clearanceVerdict, worstOver } from "../common/clearance-verdict.ts";
import { lowestOf } from "../common/heights.ts";
import { servesLighting } from "../common/serves.ts";
import { any, eitherWay, notGiven, open, type Truth, withinAccuracy, YES } from "../common/truth.ts";
import { BARE, draftOf, type Speaker, settledAs, speakerOf, subjectName, witnessLine } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";
import { type Asked, askedNear, askedOuter, freeByLowVoltage } from "./asked.ts";

export const rule: Rule = {
  id: "luminaire-height",
  title: "Luminaires, fans and lighting outlets",
  part: "luminaires",
  sections: everyEdition("680.22(B)(1)"),
  alsoSections: everyEdition(["680.22(B)(2)", "680.22(B)(3)", "680.22(B)(4)", "680.22(B)(6)", "680.22(B)(7)"]),
  subjects: "Each luminaire, each ceiling fan, and each outlet that feeds one or may.",
  measure:
    "Its straight distance to the inside wall, its height above the maximum water level, GFCI, how it is fastened, whether it was there before, and for a low-voltage one its listing.",
  parameters: [
    "luminaire.near",
    "luminaire.newHeight",
    "luminaire.indoorHeight",
    "luminaire.existingHeight",
    "luminaire.outerTo",
    "luminaire.outerHeight",
    "contactLimit.volts",
  ],
  protects:
    "A lamp that hangs low over the water is reached with a pole, a net or a wet hand, and falls in when it breaks.",
  judge: (yard) => yard.each(rule.id, "device", (device) => judgeDevice(yard, device)),
};

function judgeDevice(yard: Yard, device: DeviceElement): Verdict[] {
  const kind = device.device;
  if (kind === "luminaire" || kind === "fan")
    return worstOver(yard, device, (body) => judgeAt(yard, body, device, YES));
  if (kind !== "outlet") return [];
  const lighting = servesLighting(yard, device);
  if (lighting === "no") return [];
  const unknown = open(notGiven("serves", "What it feeds", "Does it feed something other than a luminaire or a fan?"));
  return worstOver(yard, device, (body) => judgeAt(yard, body, device, lighting === "yes" ? YES : unknown));
}

const OUTER = ["luminaire.outerTo"] as const;

/** `lighting`: open for an outlet of which nobody says what it feeds. */
function judgeAt(yard: Yard, body: Body, device: DeviceElement, lighting: Truth): Verdict {
  const straight = yard.straight(device, body);
  const distance = straight.length;
  const outer = yard.edition.value("luminaire.outerTo");
  const beyond = exceeds(distance, outer, yard.accuracy);
  if (beyond !== "yes") return judgeWithin(yard, body, device, lighting, beyond);
  const say = speakerOf(yard);
  const far = draftOf({
    element: device.id,
    body: body.id,
    measured: { horizontal: distance, vertical: heightAbove(body, device) },
    required: { horizontal: outer },
    margin: distance - outer,
    witness: witnessLine(straight),
    limits: OUTER,
  });
  far.section = "680.22(B)(4)";
  const why = `${subjectName(device)} is ${say.length(distance, outer)} from the inside wall, more than ${say.length(outer)}.`;
  return settledAs(far, "exempt", why);
}

/** How far the lowest point lies above the maximum water level, inches; null where its height is not given. */
function heightAbove(body: Body, device: DeviceElement): number | null {
  const lowest = lowestOf(device.z);
  return lowest === undefined ? null : lowest - body.waterLevel;
}

/** Where it is, or may be, within the distance from which on nothing is asked. */
function judgeWithin(
  yard: Yard,
  body: Body,
  device: DeviceElement,
  lighting: Truth,
  beyond: "no" | "doubtful",
): Verdict {
  const say = speakerOf(yard);
  const { edition, accuracy } = yard;
  const straight = yard.straight(device, body);
  const distance = straight.length;
  const [near, outer] = [edition.value("luminaire.near"), edition.value("luminaire.outerTo")];
  const vertical = heightAbove(body, device);
  const measured: Measured = { horizontal: distance, vertical };
  const where =
    distance === 0
      ? "is over the water"
      : `is ${say.length(distance, distance > near ? outer : near)} from the inside wall`;
  const name = subjectName(device);
  const base = {
    ...BARE,
    element: device.id,
    body: body.id,
    measured,
    witness: witnessLine(straight),
  };
  const asked = askedAt();
  const free = freeByLowVoltage(yard, device);
  if (free.state === "yes" && asked.truth.state !== "yes") {
    const why = `${name} ${where}; it is a ${freeWords(yard, device)}, on the supply that its listing names.`;
    return { ...base, section: freeSection(yard, device), outcome: "meets", limits: ["contactLimit.volts"], why };
  }
  let truth = any(asked.truth, free);
  if (beyond === "doubtful")
    truth = eitherWay(truth, YES, withinAccuracy(yard, outer, "its distance to the inside wall", "more than"));
  if (lighting.state === "open") truth = any(truth, lighting);
  const high = vertical === null ? "" : `, ${heightWords(vertical)}`;
  return clearanceVerdict(
    yard,
    {
      ...base,
      section: free.state === "open" && asked.truth.state === "no" ? freeSection(yard, device) : asked.section,
      required: { horizontal: asked.wanted === "outer" ? outer : near, vertical: asked.height },
      margin: vertical === null || asked.height === null ? null : vertical - asked.height,
      limits: limitsOf(asked),
    },
    truth,
    {
      question: "luminaire-place",
      is: `${name} ${where}${high}`,
      wanted: `${wantedWords(yard, say, asked)}${free.state === "open" ? `, or it is a ${freeWords(yard, device)}` : ""}`,
      breaks: `what is asked for there is this: ${wantedWords(yard, say, asked)}`,
      remedy: remedyWords(yard, say, asked),
    },
  );

  function askedAt(): Asked {
    const nearer = exceeds(distance, near, accuracy);
    if (nearer === "no") return askedNear(yard, body, device);
    const out = askedOuter(yard, body, device);
    if (nearer === "yes") return out;
    const inner = askedNear(yard, body, device);
    const fact = withinAccuracy(yard, near, "its distance to the inside wall", "more than");
    return { ...inner, truth: eitherWay(inner.truth, out.truth, fact) };
  }

  function heightWords(up: number): string {
    const limit = asked.height ?? undefined;
    return up < 0
      ? `${say.length(-up)} below the maximum water level`
      : `${say.length(up, limit)} above the maximum water level`;
  }
}

/** Where low voltage may free it: a luminaire, or a feature that burns gas. */
function freeSection(yard: Yard, device: DeviceElement): string {
  return yard.fact(device, "gasFired") === true ? "680.22(B)(7)" : "680.22(B)(6)";
}

function freeWords(yard: Yard, device: DeviceElement): string {
  const what =
    yard.fact(device, "gasFired") === true ? "low-voltage feature that burns gas and" : "low-voltage luminaire that";
  return `listed ${what} needs no grounding`;
}

function limitsOf(asked: Asked): Verdict["limits"] {
  switch (asked.wanted) {
    case "high":
      return ["luminaire.near", "luminaire.newHeight"];
    case "indoors":
      return ["luminaire.near", "luminaire.indoorHeight"];
    case "existing":
      return ["luminaire.near", "luminaire.existingHeight"];
    case "outer":
      return ["luminaire.outerTo", "luminaire.outerHeight"];
  }
}

function wantedWords(yard: Yard, say: Speaker, { wanted, height }: Asked): string {
  const full = say.length(yard.edition.value("luminaire.newHeight"));
  const up = say.length(height ?? 0);
  switch (wanted) {
    case "high":
      return `it hangs at least ${full} above the maximum water level`;
    case "indoors":
      return `it hangs at least ${full} above the maximum water level, or at least ${up} with GFCI and totally enclosed, or as a suitable fan`;
    case "existing":
      return `it hangs at least ${up} above the maximum water level, rigidly attached and with GFCI`;
    case "outer":
      return `GFCI protects it, or it hangs at least ${up} above the maximum water level, rigidly attached`;
  }
}

function remedyWords(yard: Yard, say: Speaker, asked: Asked): string {
  if (asked.wanted === "outer") return "Protect it by GFCI.";
  const far = say.length(yard.edition.value("luminaire.near"));
  return `Move it beyond ${far} from the inside wall, or see to it that ${wantedWords(yard, say, asked)}.`;
}
