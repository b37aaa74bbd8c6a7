/**
 * Plain words for every field of every kind: what a form writes beside it and one line of help. `measure` says what a
 * number counts, `suggestions` what a free text usually holds. A key with a dot (`pool.depth`) is for one kind only and
 * comes before the plain name. A test holds this table to the schemas, both ways.
 */

/** What the number in a field counts. Lengths and levels are inches, a level from the site's datum. */
export type Measure = "length" | "level" | "area" | "count" | "amps" | "volts" | "gauge";

export interface FieldLabel {
  readonly label: string;
  readonly help: string;
  readonly measure?: Measure;
  readonly suggestions?: readonly string[];
  /** The text names another element. */
  readonly refersTo?: "element";
}

export const FIELD_LABELS: Readonly<Record<string, FieldLabel>> = {
  id: { label: "Id", help: "The element's own name in the file; no two elements share one." },
  name: { label: "Name", help: "What people call it; shown on the plan instead of the id." },
  outline: { label: "Outline", help: "The closed edge, straight or with arcs." },
  path: { label: "Path", help: "The line it follows, straight or with arcs." },
  shape: { label: "Shape", help: "A point, a line, or a closed outline of the whole part." },
  at: { label: "Position", help: "Where it stands in plan." },
  pool: { label: "Pool", help: "The pool, spa or basin it belongs to.", refersTo: "element" },
  top: { label: "Top", help: "Level of its highest edge.", measure: "level" },
  permanent: { label: "Permanent", help: "Built to stay, not to be moved or taken down." },
  existing: { label: "Already there", help: "It stood here before this work." },
  metalFrame: { label: "Metal frame", help: "Its frame is metal." },
  volts: { label: "Voltage", help: "Supply voltage.", measure: "volts" },
  gfci: { label: "GFCI protected", help: "A ground-fault circuit interrupter protects it." },
  cover: {
    label: "Cover",
    help: "How much lies over it, from its top to the surface.",
    measure: "length",
  },

  "pool.outline": {
    label: "Inside wall",
    help: "The inside wall at the water, with every step and ledge that holds water.",
  },
  "pool.islands": { label: "Islands", help: "Outlines of ground inside the water." },
  "pool.body": { label: "Body of water", help: "A pool, a spa, or a basin such as a fountain or wading pool." },
  "pool.shell": { label: "Shell", help: "How the shell is built. It decides whether it conducts." },
  "pool.steel": { label: "Shell steel", help: "The reinforcing in the shell: bare, encapsulated, or none." },
  "pool.wallFrame": { label: "Wall or frame", help: "What holds up the wall of a liner pool." },
  "pool.finish": {
    label: "Finish",
    help: "What coats the inside. Some coatings keep the water from touching the shell.",
    suggestions: ["plaster", "tile", "epoxy", "fiberglass", "membrane", "paint"],
  },
  "pool.waterLevel": { label: "Maximum water level", help: "The highest the water can stand.", measure: "level" },
  "pool.normalWaterLevel": { label: "Normal water level", help: "Where the water stands in use.", measure: "level" },
  "pool.depth": { label: "Depth", help: "Water depth at the deepest place.", measure: "length" },
  "pool.rim": { label: "Rim", help: "Level of the top edge of the shell.", measure: "level" },
  "pool.installation": { label: "Installed", help: "In the ground, on the ground, or indoors." },
  "pool.storable": { label: "Storable", help: "Meant to be taken down and stored." },
  "pool.listedSelfContained": {
    label: "Listed self-contained",
    help: "A factory-built spa listed as self-contained for use aboveground.",
  },
  "pool.indoorOnly": { label: "Indoor use only", help: "The listing allows indoor use only." },

  "inset.outline": { label: "Outline", help: "The edge of a step, bench or ledge inside the pool." },
  "inset.inset": { label: "What it is", help: "Steps, a bench to sit on, or a ledge to lie on." },
  "inset.depth": { label: "Depth", help: "Water depth over it.", measure: "length" },

  "surface.holes": { label: "Openings", help: "Outlines left out of the surface, as for a planter." },
  "surface.material": { label: "Material", help: "What people stand on. It decides how the perimeter is bonded." },
  "surface.steel": { label: "Steel", help: "The reinforcing in it. Fiber is not steel." },
  "surface.level": { label: "Level", help: "Height of its top.", measure: "level" },
  "surface.support": { label: "Rests on", help: "On the ground, or raised above it." },
  "surface.supports": { label: "Supports", help: "Whether what it is raised on conducts." },

  "building.metalCladding": { label: "Metal cladding", help: "Its outside is clad in metal." },

  "wall.path": { label: "Centerline", help: "The middle of the wall; half its thickness lies on each side." },
  "wall.thickness": { label: "Thickness", help: "From face to face.", measure: "length" },
  "wall.base": { label: "Base", help: "Level of its foot.", measure: "level" },
  "wall.reinforced": { label: "Reinforced", help: "It holds steel bars." },

  "fence.metal": { label: "Metal", help: "Any of its posts, rails, mesh or panels is metal." },
  "fence.solid": { label: "Solid", help: "Nothing can be reached through it." },
  "fence.isolatedSections": {
    label: "Separate sections",
    help: "How many pieces are not joined to each other by metal.",
    measure: "count",
  },
  "fence.gates": { label: "Gates", help: "How many gates are in it.", measure: "count" },

  "opening.path": { label: "Opening line", help: "The stretch of wall or building that opens." },
  "opening.opening": { label: "Opening", help: "A door, a window, or an open passage." },

  "structure.structure": { label: "Structure", help: "What people stand, slide or dive from." },
  "structure.top": { label: "Top", help: "Level of the highest place that people stand on.", measure: "level" },

  "metal.part": {
    label: "Part",
    help: "What it is.",
    suggestions: ["ladder", "handrail", "cup", "drain", "light pole", "awning", "piping", "window frame"],
  },
  "metal.z": { label: "Bottom and top", help: "Levels of its lowest and highest point.", measure: "level" },
  "metal.fixed": { label: "Fixed", help: "Fastened in place, not furniture." },
  "metal.inPoolStructure": { label: "In the pool structure", help: "It sits in or on the pool's shell or coping." },
  "metal.isolated": { label: "Isolated", help: "It touches no other metal and no reinforcing." },
  "metal.largestDimension": {
    label: "Largest dimension",
    help: "Its longest measure in any direction.",
    measure: "length",
  },
  "metal.penetration": { label: "Reaches in", help: "How far it reaches into the pool structure.", measure: "length" },
  "metal.wettedArea": { label: "Area in the water", help: "Bare metal that stays under water.", measure: "area" },
  "metal.removable": { label: "Removable", help: "It can be lifted out without tools." },
  "metal.anchors": { label: "Connections needed", help: "A ladder or rail has one for each cup.", measure: "count" },

  "equipment.unit": { label: "Equipment", help: "What it does." },
  "equipment.metalParts": {
    label: "Metal parts",
    help: "It has metal parts that can be touched or that carry current.",
  },
  "equipment.electric": { label: "Electric", help: "It is connected to electricity." },
  "equipment.doubleInsulated": { label: "Double insulated", help: "Its motor is listed as double insulated." },
  "equipment.ratedAmps": { label: "Rated current", help: "From its nameplate.", measure: "amps" },
  "equipment.bondingInstructions": {
    label: "Own bonding instructions",
    help: "Its maker marks which parts are to be bonded.",
  },
  "equipment.servesWater": { label: "Serves the water", help: "It circulates, heats or treats the pool's water." },
  "equipment.z": { label: "Level", help: "Its level, or the levels of its bottom and top.", measure: "level" },

  "underwater-light.formingShell": { label: "Forming shell", help: "The housing in the pool wall." },
  "underwater-light.metalBracket": { label: "Metal bracket", help: "It is held by a metal bracket." },
  "underwater-light.listedLowVoltage": {
    label: "Listed low voltage",
    help: "A listed low-voltage light that needs no grounding.",
  },
  "underwater-light.lensTopDepth": {
    label: "Depth of lens",
    help: "From the normal water level down to the top of the lens.",
    measure: "length",
  },
  "underwater-light.listedMinDepth": {
    label: "Listed least depth",
    help: "The least depth of lens that its listing allows.",
    measure: "length",
  },
  "underwater-light.conduit": { label: "Conduit", help: "What the conduit to the light is made of." },
  "underwater-light.insideBond": {
    label: "Bonding wire in conduit",
    help: "An insulated 8 AWG runs inside the nonmetallic conduit and ends in the housing.",
  },

  "device.device": { label: "Device", help: "What it is." },
  "device.z": { label: "Height", help: "Its level, or the levels of its bottom and top.", measure: "level" },
  "device.existing": { label: "Already there", help: "It was installed before the pool." },
  "device.indoor": { label: "Indoors", help: "It is inside a building." },
  "device.lowVoltage": { label: "Low voltage", help: "It works at or below the low-voltage contact limit." },
  "device.listedNearWater": { label: "Listed for nearer", help: "Its listing allows it nearer to the water." },
  "device.needsGrounding": { label: "Needs grounding", help: "Its listing or design asks for grounding." },
  "device.rigidlyAttached": { label: "Rigidly attached", help: "Fastened so that it cannot swing." },
  "device.totallyEnclosed": { label: "Totally enclosed", help: "A closed fitting." },
  "device.cordConnected": { label: "On a cord", help: "Connected by a cord and plug." },
  "device.gasFired": {
    label: "Gas-fired",
    help: "A fire bowl, torch or the like that burns gas and is lit by low voltage.",
  },
  "device.gasPiping": { label: "Gas piping", help: "What the piping to a gas-fired one is made of." },
  "device.generalPurpose": { label: "General purpose", help: "A receptacle for anyone's use, not for one machine." },
  "device.amps": { label: "Rated current", help: "Of the device.", measure: "amps" },
  "device.serves": { label: "Serves", help: "The elements it feeds, switches or belongs to.", refersTo: "element" },

  "overhead-line.path": { label: "Path and heights", help: "Where the wires run; the third number is their height." },
  "overhead-line.class": { label: "Kind of line", help: "Voltage and make-up of the line." },
  "overhead-line.sag": { label: "Sag", help: "How far it hangs below straight at mid-span.", measure: "length" },

  "underground-run.method": { label: "Wiring method", help: "The conduit or cable that is buried." },
  "underground-run.servesPool": { label: "Serves the pool", help: "It feeds something of the pool." },

  "water-bond.exposedArea": {
    label: "Area in the water",
    help: "Metal surface that touches the water.",
    measure: "area",
  },
  "water-bond.width": { label: "Width", help: "Of a plate: one side of the face that touches the water." },
  "water-bond.height": { label: "Height", help: "Of a plate: the other side of that face." },
  "water-bond.diameter": { label: "Diameter", help: "Of a tube or rod, inside where the water runs through it." },
  "water-bond.length": { label: "Length", help: "Of the tube or rod in the water." },
  "water-bond.material": {
    label: "Metal",
    help: "What the fitting is made of.",
    suggestions: ["brass", "bronze", "copper", "stainless steel"],
  },
  "water-bond.alwaysSubmerged": { label: "Always under water", help: "It stays wet, with the pump off too." },
  "water-bond.location": {
    label: "Place",
    help: "Where it sits.",
    suggestions: ["skimmer", "niche", "return fitting", "equipment pipe"],
  },

  "conductor.role": { label: "Role", help: "What this copper does." },
  "conductor.awg": {
    label: "Size",
    help: "American wire gauge; a smaller number is a thicker wire.",
    measure: "gauge",
  },
  "conductor.solid": { label: "Solid", help: "One solid wire, not stranded." },
  "conductor.material": {
    label: "Metal",
    help: "What the conductor is made of.",
    suggestions: ["copper", "aluminum", "copper-clad-steel", "brass-conduit"],
  },
  "conductor.covering": {
    label: "Covering",
    help: "What is on the wire.",
    suggestions: ["bare", "insulated", "covered"],
  },
  "conductor.cover": {
    label: "Depth",
    help: "From the level named under depth from, down to the wire.",
    measure: "length",
  },
  "conductor.coverFrom": {
    label: "Depth from",
    help: "Where the depth is measured from.",
    suggestions: ["subgrade", "grade"],
  },
  "conductor.joint": {
    label: "Joints",
    help: "How lengths of it are joined.",
    suggestions: ["none", "listed-splice", "exothermic", "twisted", "solder"],
  },

  "tie.joins": {
    label: "Joins",
    help: "The elements that it connects, or the perimeter bonding.",
    suggestions: ["perimeter"],
    refersTo: "element",
  },
  "tie.hardware": {
    label: "Hardware",
    help: "What makes the connection.",
    suggestions: ["listed-clamp", "exothermic", "pressure-connector", "lug", "tie-wire", "screw", "other"],
  },
  "tie.listedForBurial": { label: "Listed for burial", help: "Its listing allows direct burial." },
  "tie.conductorsInClamp": { label: "Wires in the clamp", help: "How many wires one clamp holds.", measure: "count" },
};

/** The fields of the site itself and of its settings. */
export const SITE_LABELS: Readonly<Record<string, FieldLabel>> = {
  name: { label: "Site", help: "Name of the site, printed on every sheet." },
  edition: { label: "Edition of the code", help: "The edition that the permit falls under." },
  grade: { label: "Grade", help: "Level of ground that no surface covers.", measure: "level" },
  accuracy: { label: "Accuracy", help: "How far the drawing may be off; 0 for a design.", measure: "length" },
  north: { label: "North", help: "Direction of north, degrees counter-clockwise from the right." },
  "settings.ringOffset": {
    label: "Ring offset",
    help: "How far the even ring lies from the inside wall.",
    measure: "length",
  },
  "settings.ringMargin": {
    label: "Ring margin",
    help: "How far a short ring stays inside both limits.",
    measure: "length",
  },
  "settings.ties": { label: "Ties", help: "How many ties the plan proposes.", measure: "count" },
  "settings.spareFraction": { label: "Spare", help: "Extra copper to buy, as a fraction of the total." },
  "settings.junctionAllowance": {
    label: "Joint allowance",
    help: "Extra copper for each buried joint.",
    measure: "length",
  },
  "settings.spools": { label: "Spools", help: "Lengths that can be bought.", measure: "length" },
  "settings.perimeterMethod": {
    label: "Perimeter method",
    help: "Laid wherever the edition allows it; elsewhere the allowed method with least copper.",
  },
  "settings.gridRolls": { label: "Grid rolls", help: "Lengths of roll that can be bought.", measure: "length" },
  "settings.ringStyle": { label: "Ring", help: "An even ring at the offset, or a short one within the limits." },
};
