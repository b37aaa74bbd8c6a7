/** Plain words for the kinds of element and for the options of their choices. */
import type { Kind } from "./elements.ts";

export interface KindLabel {
  readonly label: string;
  readonly plural: string;
  readonly help: string;
}

export const KIND_LABELS: Readonly<Record<Kind, KindLabel>> = {
  pool: { label: "Pool or spa", plural: "Pools and spas", help: "A body of water, drawn along its inside wall." },
  inset: { label: "Step or ledge", plural: "Steps and ledges", help: "A step, bench or ledge inside a pool." },
  surface: { label: "Surface", plural: "Surfaces", help: "A deck, paving, lawn or other ground that people stand on." },
  building: { label: "Building", plural: "Buildings", help: "A house, shed or other building, by its outside." },
  wall: { label: "Wall", plural: "Walls", help: "A freestanding, retaining or garden wall." },
  fence: { label: "Fence", plural: "Fences", help: "A fence or railing with its gates." },
  opening: { label: "Door or window", plural: "Doors and windows", help: "An opening in a building or wall." },
  structure: {
    label: "Diving or play structure",
    plural: "Diving and play structures",
    help: "A board, platform, tower, stand, slide or raft.",
  },
  metal: {
    label: "Metal part",
    plural: "Metal parts",
    help: "Anything else of metal: ladder, rail, pole, pipe, awning.",
  },
  equipment: { label: "Equipment", plural: "Equipment", help: "A pump, heater or other machine." },
  "underwater-light": { label: "Underwater light", plural: "Underwater lights", help: "A light in the pool's wall." },
  device: {
    label: "Electrical device",
    plural: "Electrical devices",
    help: "A receptacle, switch, luminaire, fan, box or disconnect.",
  },
  "overhead-line": {
    label: "Overhead line",
    plural: "Overhead lines",
    help: "Wires above the ground, with their heights.",
  },
  "underground-run": { label: "Underground run", plural: "Underground runs", help: "Buried conduit or cable." },
  "water-bond": {
    label: "Water contact",
    plural: "Water contacts",
    help: "A fitting that puts bonded metal in the water.",
  },
  conductor: { label: "Conductor", plural: "Conductors", help: "Bonding copper, drawn or found on site." },
  tie: { label: "Connection", plural: "Connections", help: "A connection, drawn or found on site." },
  "keep-out": {
    label: "No-copper area",
    plural: "No-copper areas",
    help: "Where copper cannot run: a footing, a tree pit, a vault.",
  },
};

/** Options whose plain words are not just the option itself. A key with a dot is for one field only. */
const OPTION_LABELS: Readonly<Record<string, string>> = {
  "insulated-750": "Insulated, to 750 V, on a grounded messenger",
  "to-15kv": "Other, to 15 kV",
  "to-50kv": "Other, to 50 kV",
  communications: "Communications",
  broadband: "Network-powered broadband",
  rmc: "Rigid metal conduit (RMC)",
  imc: "Intermediate metal conduit (IMC)",
  pvc: "Rigid PVC conduit (PVC)",
  rtrc: "Fiberglass conduit (RTRC)",
  mc: "Metal-clad cable (MC)",
  "direct-burial": "Direct burial cable",
  "coated-block": "Block, painted or plastered",
  "cast-concrete": "Concrete, cast in place",
  "sprayed-concrete": "Concrete, sprayed",
  "surface.support.grade": "On the ground",
  "surface.supports.nonconductive": "Not conductive",
  none: "None",
  "in-ground": "In the ground",
  "on-ground": "On the ground",
  indoor: "Indoors",
  "settings.ringStyle.even": "Even, at the offset",
  "settings.ringStyle.short": "Short, within the limits",
  "settings.perimeterMethod.least-copper": "Least copper",
  "settings.perimeterMethod.ring": "Ring wherever allowed",
  "settings.perimeterMethod.grid": "Grid wherever allowed",
};

/** An option of a choice in plain words; `field` as in the table of labels (`surface.support`). */
export function optionLabel(option: string, field: string): string {
  const known = OPTION_LABELS[`${field}.${option}`] ?? OPTION_LABELS[option];
  if (known !== undefined) return known;
  const words = option.replaceAll("-", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}
