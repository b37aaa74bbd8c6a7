/** Title and part of every rule, without the rules. Written by `npm run rules`; not to be edited by hand. */
import type { PartId } from "./rule.ts";

export interface RuleHeading {
  readonly title: string;
  readonly part: PartId;
}

export const RULE_HEADINGS: ReadonlyMap<string, RuleHeading> = new Map<string, RuleHeading>([
  ["conductor-place", { title: "Place of perimeter copper", part: "copper" }],
  ["conductor-wire", { title: "Kind of wire", part: "copper" }],
  ["cord-luminaire", { title: "Luminaires on a cord", part: "luminaires" }],
  ["cover-motor", { title: "Place of a cover motor", part: "equipment" }],
  ["disconnect-distance", { title: "Disconnects and the water", part: "disconnect" }],
  ["disconnect-sight", { title: "A disconnect within sight", part: "disconnect" }],
  ["double-insulated-tail", { title: "Tail at a double-insulated pump", part: "equipment" }],
  ["edition-in-force", { title: "Edition named", part: "site" }],
  ["equipment", { title: "Pool equipment", part: "equipment" }],
  ["equipment-room-receptacle", { title: "Receptacle of an equipment room", part: "receptacles" }],
  ["fittings", { title: "Metal fittings", part: "fittings" }],
  ["fixed-metal", { title: "Fixed metal", part: "fixed-metal" }],
  ["gas-piping", { title: "Piping of gas-fired features", part: "luminaires" }],
  ["island-ground", { title: "Ground of small islands", part: "perimeter" }],
  ["junction-box", { title: "Junction boxes of underwater lights", part: "junction-boxes" }],
  ["lens-depth", { title: "Depth of underwater lenses", part: "lenses" }],
  ["local-amendments", { title: "Local amendments that act", part: "site" }],
  ["luminaire-height", { title: "Luminaires, fans and lighting outlets", part: "luminaires" }],
  ["named-pool", { title: "Things whose pool is not sure", part: "site" }],
  ["niche-inside-bond", { title: "Bond inside a light's conduit", part: "lights" }],
  ["other-equipment-distance", { title: "Other equipment and the water", part: "other-equipment" }],
  ["outlet-distance", { title: "Other outlets and the water", part: "outlets" }],
  ["overhead-clearance", { title: "Overhead lines", part: "overhead" }],
  ["perimeter-surfaces", { title: "Perimeter surfaces", part: "perimeter" }],
  ["pump-gfci", { title: "Protection of pump motors", part: "equipment" }],
  ["receptacle-distance", { title: "Receptacles and the water", part: "receptacles" }],
  ["receptacle-gfci", { title: "Protection of receptacles", part: "receptacles" }],
  ["required-receptacle", { title: "The receptacle every pool has", part: "receptacles" }],
  ["ring-room", { title: "Room for the ring", part: "perimeter" }],
  ["shell", { title: "Pool shell", part: "shell" }],
  ["spa-exception", { title: "Outdoor spas", part: "site" }],
  ["storable-pool", { title: "Storable pools", part: "site" }],
  ["structure-metal", { title: "Metal of the pool's structure", part: "structure" }],
  ["switch-distance", { title: "Switches and the water", part: "switches" }],
  ["tie-hardware", { title: "Connections", part: "copper" }],
  ["tie-spacing", { title: "Ties to the shell", part: "ties" }],
  ["underground-run", { title: "Underground runs", part: "underground" }],
  ["underwater-lights", { title: "Underwater lights", part: "lights" }],
  ["unknown-kind", { title: "Things of an unknown kind", part: "site" }],
  ["water-bond-fitting", { title: "Fittings for the water's bond", part: "water" }],
  ["water-contact", { title: "Bonded metal in the water", part: "water" }],
  ["water-drawn", { title: "Water drawn", part: "site" }],
]);
