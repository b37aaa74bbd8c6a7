import type { Yard } from "../../measures/yard.ts";
import { shellOfGrid } from "../../recorded/bearers.ts";
import { verdictOfFacts } from "../../recorded/fact.ts";
import { gridDepth, ringDepth } from "../../recorded/laying.ts";
import { type Place, placeOf } from "../../recorded/place.ts";
import type { Measured } from "../../report.ts";
import type { ConductorElement } from "../../site/elements.ts";
import { bodyOf } from "../common/storable.ts";
import { storableOnly } from "../common/storable-only.ts";
import { BARE, marginOfConflict, speakerOf, subjectName } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "conductor-place",
  title: "Place of perimeter copper",
  part: "copper",
  sections: everyEdition("680.26(B)(2)"),
  subjects: "Each recorded ring and grid.",
  measure:
    "How far a ring lies from the inside walls all along, how deep it or a grid lies, and whether it is well joined.",
  parameters: [
    "ring.min",
    "ring.max",
    "ring.coverMin",
    "ring.coverMax",
    "ring.coverFrom",
    "ring.joints",
    "grid.coverMin",
    "grid.coverMax",
    "perimeter.ringUnderPaving",
  ],
  protects:
    "A ring too far out, too deep or in the bond beam leaves bare feet at the pool's edge on ground of another voltage.",
  judge: (yard) =>
    yard.each(rule.id, "conductor", (conductor) => {
      const place = placeOf(yard, conductor);
      return place === null ? [] : [judgePlace(yard, conductor, place)];
    }),
};

function judgePlace(yard: Yard, conductor: ConductorElement, place: Place): Verdict {
  const name = subjectName(conductor);
  const shell = shellOfGrid(yard, conductor);
  const base = {
    ...BARE,
    element: conductor.id,
    body: shell ?? bodyOf(yard, conductor)?.id ?? null,
    ...(shell === null ? {} : { section: "680.26(B)(1)" }),
  };
  const free = storableOnly(yard);
  if (free !== null) return { ...base, outcome: "exempt", why: `${name}: ${free}` };
  const facts = [...place.course, ...place.laying];
  const numbers = numbersOf(yard, conductor, place, shell !== null);
  const limits = [...new Set(facts.flatMap((fact) => fact.limits))];
  const told = verdictOfFacts(facts, `${name}:`, fine(yard, place, shell !== null));
  const margin = told.outcome === "conflict" ? marginOfConflict(numbers.margin) : numbers.margin;
  return { ...base, ...numbers, margin, limits, ...told };
}

function fine(yard: Yard, { range }: Place, inShell: boolean): string {
  if (inShell) return "It lies in the shell, with joints that count.";
  const subgrade =
    yard.edition.value("ring.coverFrom") === "subgrade"
      ? " What counts as the subgrade, the top of the base or the soil under it, is argued: the authority settles it."
      : "";
  if (range === null) return `It lies at the right depth, with joints that count.${subgrade}`;
  const { length } = speakerOf(yard);
  const [min, max] = [yard.edition.value("ring.min"), yard.edition.value("ring.max")];
  const [near, far] = [length(range.min.length, min), length(range.max.length, max)];
  const from = near === far ? near : `${near} to ${far}`;
  return `It lies ${from} from the inside walls, at the right depth, with joints that count.${subgrade}`;
}

function numbersOf(yard: Yard, conductor: ConductorElement, { range }: Place, inShell: boolean) {
  const measured: Record<string, Measured[string]> = {};
  const required: Record<string, Measured[string]> = {};
  const margins: number[] = [];
  if (range !== null) {
    const [min, max] = [yard.edition.value("ring.min"), yard.edition.value("ring.max")];
    measured.offsetMin = range.min.length;
    measured.offsetMax = range.max.length;
    required.offsetMin = min;
    required.offsetMax = max;
    margins.push(range.min.length - min, max - range.max.length);
  }
  if (!inShell) {
    const { min, max } = conductor.role === "ring" ? ringDepth(yard) : gridDepth(yard);
    if (min !== null) required.depthMin = min;
    required.depthMax = max;
    if (conductor.cover !== undefined) measured.depth = conductor.cover;
    if (conductor.cover !== undefined && conductor.coverFrom === yard.edition.value("ring.coverFrom")) {
      if (min !== null) margins.push(conductor.cover - min);
      margins.push(max - conductor.cover);
    }
  }
  const worst =
    range === null
      ? null
      : range.min.length - (required.offsetMin as number) <= (required.offsetMax as number) - range.max.length
        ? range.min
        : range.max;
  return {
    measured,
    required,
    margin: margins.length === 0 ? null : Math.min(...margins),
    witness: worst === null ? [] : [worst.from, worst.to],
  };
}
