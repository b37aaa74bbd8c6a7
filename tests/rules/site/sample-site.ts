/** An invented yard that holds every kind of element, with fields and a kind that no version knows. */
export const SAMPLE_TEXT = `{
  "format": "copperband-site", "version": 1, "name": "Sample Yard (invented)", "edition": "nec-2020",
  "display": { "units": "ft-in" }, "grade": 0, "accuracy": 0.5, "north": 90, "position": { "lon": 0, "lat": 0 },
  "settings": { "ringOffset": 21, "ringMargin": 1, "ties": 4, "spareFraction": 0.1, "junctionAllowance": 12, "spools": [3780, 6000] },
  "amendments": [{ "parameter": "perimeter.ringUnderPaving", "value": true, "reason": "local ordinance 12-4" }],
  "answers": [{ "question": "barrier", "element": "wall-1", "answer": "yes", "on": "2026-05-01", "by": "initials" }],
  "notes": [{ "at": [10, 20], "text": "kept, and read by no rule" }],
  "elements": [
    { "id": "pool-1", "kind": "pool", "outline": { "vertices": [[0, 0], [384, 0, 0.25], [384, 192], [0, 192]], "closed": true },
      "islands": [{ "vertices": [[100, 80, 1], [140, 80, 1]], "closed": true }], "body": "pool", "shell": "sprayed-concrete", "steel": "bare", "depth": 60 },
    { "id": "step-1", "kind": "inset", "outline": { "vertices": [[0, 0], [48, 0], [48, 48]], "closed": true }, "pool": "pool-1", "depth": 12 },
    { "id": "deck-1", "kind": "surface", "outline": { "vertices": [[-60, -60], [500, -60], [500, 252], [-60, 252]], "closed": true },
      "holes": [{ "vertices": [[-50, -50], [-40, -50], [-40, -40]], "closed": true }], "material": "concrete", "steel": "rebar" },
    { "id": "house-1", "kind": "building", "outline": { "vertices": [[600, 0], [900, 0], [900, 300], [600, 300]], "closed": true }, "top": 240 },
    { "id": "wall-1", "kind": "wall", "path": { "vertices": [[0, 400], [100, 400], [100, 500], [0, 500]], "closed": true }, "thickness": 8, "top": 72 },
    { "id": "fence-1", "kind": "fence", "path": { "vertices": [[-100, -100], [500, 500], [500, -100], [-100, 500]], "closed": false }, "metal": true },
    { "id": "door-1", "kind": "opening", "path": { "vertices": [[600, 100], [600, 136]], "closed": false }, "opening": "hinged-door" },
    { "id": "board-1", "kind": "structure", "outline": { "vertices": [[380, 80], [420, 80], [420, 100], [380, 100]], "closed": true }, "structure": "diving-board", "top": 20 },
    { "id": "pole-1", "kind": "metal", "shape": { "point": [200, 250] }, "part": "light pole", "z": [0, 120], "fixed": true },
    { "id": "rail-1", "kind": "metal", "shape": { "vertices": [[0, 0], [10, 10], [10, 0], [0, 10]], "closed": true, "line": true }, "part": "rail" },
    { "id": "pump-1", "kind": "equipment", "at": [520, 220], "unit": "pump", "doubleInsulated": true, "z": 4, "maker's note": { "kept": [1, 2.5, null] } },
    { "id": "light-1", "kind": "underwater-light", "at": [0, 96], "pool": "pool-1", "formingShell": "metal", "lensTopDepth": 18 },
    { "id": "outlet-1", "kind": "device", "at": [520, 100], "device": "receptacle", "z": 18, "gfci": true, "serves": ["pump-1"] },
    { "id": "wires-1", "kind": "overhead-line", "path": { "vertices": [[-200, 300, 330], [600, 300, 300], [600, 300, 12]], "closed": false }, "class": "insulated-750", "sag": 6 },
    { "id": "run-1", "kind": "underground-run", "path": { "vertices": [[520, 220], [600, 220]], "closed": false }, "method": "pvc", "cover": 18 },
    { "id": "contact-1", "kind": "water-bond", "at": [0, 60], "pool": "not drawn yet", "exposedArea": 9 },
    { "id": "ring-1", "kind": "conductor", "path": { "vertices": [[-21, -21], [405, -21], [405, 213], [-21, 213]], "closed": true }, "role": "ring", "awg": 10, "solid": false, "material": "aluminum" },
    { "id": "tie-1", "kind": "tie", "at": [0, 0], "joins": ["pool-1", "perimeter"], "hardware": "something odd" },
    { "id": "tree-1", "kind": "keep-out", "outline": { "vertices": [[300, 300], [340, 300], [320, 340]], "closed": true } },
    { "id": "statue-1", "kind": "statue", "pose": { "arms": 2 }, "outline": "anything" }
  ]
}`;

interface SampleDocument {
  [field: string]: unknown;
  elements: Record<string, unknown>[];
}

/** A fresh copy of the sample, to be spoiled. */
export function sample(): SampleDocument {
  return JSON.parse(SAMPLE_TEXT) as SampleDocument;
}

/** The sample with one element changed. */
export function sampleWith(id: string, change: Record<string, unknown>): SampleDocument {
  const document = sample();
  const element = document.elements.find((candidate) => candidate.id === id);
  if (element === undefined) throw new Error(`The sample has no "${id}".`);
  Object.assign(element, change);
  return document;
}
