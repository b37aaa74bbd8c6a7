/** Every rule of the catalogue. Written by `npm run rules` from the folders beside it; not to be edited by hand. */
import { rule as conductorPlace } from "./conductor-place/rule.ts";
import { rule as conductorWire } from "./conductor-wire/rule.ts";
import { rule as cordLuminaire } from "./cord-luminaire/rule.ts";
import { rule as coverMotor } from "./cover-motor/rule.ts";
import { rule as disconnectDistance } from "./disconnect-distance/rule.ts";
import { rule as disconnectSight } from "./disconnect-sight/rule.ts";
import { rule as doubleInsulatedTail } from "./double-insulated-tail/rule.ts";
import { rule as editionInForce } from "./edition-in-force/rule.ts";
import { rule as equipment } from "./equipment/rule.ts";
import { rule as equipmentRoomReceptacle } from "./equipment-room-receptacle/rule.ts";
import { rule as fittings } from "./fittings/rule.ts";
import { rule as fixedMetal } from "./fixed-metal/rule.ts";
import { rule as gasPiping } from "./gas-piping/rule.ts";
import { rule as islandGround } from "./island-ground/rule.ts";
import { rule as junctionBox } from "./junction-box/rule.ts";
import { rule as lensDepth } from "./lens-depth/rule.ts";
import { rule as localAmendments } from "./local-amendments/rule.ts";
import { rule as luminaireHeight } from "./luminaire-height/rule.ts";
import { rule as namedPool } from "./named-pool/rule.ts";
import { rule as nicheInsideBond } from "./niche-inside-bond/rule.ts";
import { rule as otherEquipmentDistance } from "./other-equipment-distance/rule.ts";
import { rule as outletDistance } from "./outlet-distance/rule.ts";
import { rule as overheadClearance } from "./overhead-clearance/rule.ts";
import { rule as perimeterSurfaces } from "./perimeter-surfaces/rule.ts";
import { rule as pumpGfci } from "./pump-gfci/rule.ts";
import { rule as receptacleDistance } from "./receptacle-distance/rule.ts";
import { rule as receptacleGfci } from "./receptacle-gfci/rule.ts";
import { rule as requiredReceptacle } from "./required-receptacle/rule.ts";
import { rule as ringRoom } from "./ring-room/rule.ts";
import type { Rule } from "./rule.ts";
import { rule as shell } from "./shell/rule.ts";
import { rule as spaException } from "./spa-exception/rule.ts";
import { rule as storablePool } from "./storable-pool/rule.ts";
import { rule as structureMetal } from "./structure-metal/rule.ts";
import { rule as switchDistance } from "./switch-distance/rule.ts";
import { rule as tieHardware } from "./tie-hardware/rule.ts";
import { rule as tieSpacing } from "./tie-spacing/rule.ts";
import { rule as undergroundRun } from "./underground-run/rule.ts";
import { rule as underwaterLights } from "./underwater-lights/rule.ts";
import { rule as unknownKind } from "./unknown-kind/rule.ts";
import { rule as waterBondFitting } from "./water-bond-fitting/rule.ts";
import { rule as waterContact } from "./water-contact/rule.ts";
import { rule as waterDrawn } from "./water-drawn/rule.ts";

export const RULES: readonly Rule[] = [
  conductorPlace,
  conductorWire,
  cordLuminaire,
  coverMotor,
  disconnectDistance,
  disconnectSight,
  doubleInsulatedTail,
  editionInForce,
  equipment,
  equipmentRoomReceptacle,
  fittings,
  fixedMetal,
  gasPiping,
  islandGround,
  junctionBox,
  lensDepth,
  localAmendments,
  luminaireHeight,
  namedPool,
  nicheInsideBond,
  otherEquipmentDistance,
  outletDistance,
  overheadClearance,
  perimeterSurfaces,
  pumpGfci,
  receptacleDistance,
  receptacleGfci,
  requiredReceptacle,
  ringRoom,
  shell,
  spaException,
  storablePool,
  structureMetal,
  switchDistance,
  tieHardware,
  tieSpacing,
  undergroundRun,
  underwaterLights,
  unknownKind,
  waterBondFitting,
  waterContact,
  waterDrawn,
];
