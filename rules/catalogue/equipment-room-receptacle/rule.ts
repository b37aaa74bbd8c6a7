import { contains } from "../../../geometry/outline.ts";
import { type BuildingModel, waterInside } from "../../measures/barriers.ts";
import type { Yard } from "../../measures/yard.ts";
import type { DeviceElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { clearanceVerdict } from "../common/clearance-verdict.ts";
import { ON_DEVICES } from "../common/rests-on.ts";
import { bondedBodies } from "../common/storable.ts";
import { any, flag, notGiven, open, type Truth } from "../common/truth.ts";
import { BARE, subjectName } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "equipment-room-receptacle",
  title: "Receptacle of an equipment room",
  part: "receptacles",
  sections: { ...everyEdition("680.22(A)(5)"), "nec-2017": "680.22(A)" },
  subjects:
    "Each building in which equipment of the water stands, unless the pool is in it too. Asked for from 2020 on.",
  measure: "Whether a receptacle with GFCI is in it.",
  parameters: ["receptacle.equipmentRoom"],
  protects: "Work on pumps is done in wet rooms, with tools that are plugged in there.",
  judge(yard) {
    const amended = yard.edition.amended("receptacle.equipmentRoom") !== undefined;
    if (!(yard.edition.value("receptacle.equipmentRoom") || amended) || bondedBodies(yard).length === 0) return [];
    return yard.buildings.flatMap((building) => judgeRoom(yard, building));
  },
};

function judgeRoom(yard: Yard, building: BuildingModel): Verdict[] {
  if (bondedBodies(yard).some((body) => waterInside(body.water, building.area))) return [];
  const units = yard
    .all("equipment")
    .filter((unit) => yard.fact(unit, "servesWater") !== false && contains(building.area, unit.at));
  const first = units[0];
  if (first === undefined) return [];
  const inside = yard
    .all("device")
    .filter(({ device, at, indoor }) => device === "receptacle" && indoor !== false && contains(building.area, at));
  const name = subjectName(building.element);
  const there = `${name} holds ${units.map(elementName).join(", ")}`;
  const about = {
    element: building.element.id,
    body: yard.nearestBody(first, bondedBodies(yard))?.id ?? null,
    measured: { receptacleCount: inside.length },
    required: { receptacleCount: 1 },
    margin: null,
    witness: [first.at],
    limits: rule.parameters,
  };
  if (!yard.edition.value("receptacle.equipmentRoom")) {
    const why = `${there}; a local amendment asks for no receptacle there.`;
    return [{ ...BARE, ...about, required: {}, outcome: "exempt", why }];
  }
  const truth = inside.length === 0 ? open(NONE_DRAWN) : any(...inside.map(protectedBy));
  return [
    clearanceVerdict(yard, about, truth, {
      question: "equipment-room-receptacle",
      restsOn: ON_DEVICES,
      is: there,
      wanted: "a receptacle with GFCI is in an equipment room",
      breaks: "the receptacles in it have no GFCI",
      remedy: "Give the equipment room a receptacle with GFCI.",
    }),
  ];
}

const NONE_DRAWN = {
  says: "No receptacle is drawn in it, and an equipment room has one with GFCI.",
  asks: "Is there a receptacle with GFCI in it, or is this no equipment room?",
  remedy: "Draw the receptacle, or add one with GFCI",
};

function protectedBy(receptacle: DeviceElement): Truth {
  const fact = notGiven(
    "gfci",
    `Whether GFCI protects ${elementName(receptacle)}`,
    `Does GFCI protect ${elementName(receptacle)}?`,
  );
  return flag(receptacle.gfci, fact);
}
