/** Every rule of the catalogue. Written by `npm run rules` from the folders beside it; not to be edited by hand. */
import { rule as editionInForce } from "./edition-in-force/rule.ts";
import { rule as localAmendments } from "./local-amendments/rule.ts";
import { rule as perimeterSurfaces } from "./perimeter-surfaces/rule.ts";
import type { Rule } from "./rule.ts";
import { rule as shell } from "./shell/rule.ts";
import { rule as spaException } from "./spa-exception/rule.ts";
import { rule as storablePool } from "./storable-pool/rule.ts";
import { rule as unknownKind } from "./unknown-kind/rule.ts";

export const RULES: readonly Rule[] = [
  editionInForce,
  localAmendments,
  perimeterSurfaces,
  shell,
  spaException,
  storablePool,
  unknownKind,
];
