// Who may import whom.
//
// Stages: 1. read every import of every file (static, re-export, dynamic, in a type); 2. check each import by itself
// (layers, packages, who may use the canvas and the clipping library); 3. follow imports: cycles inside geometry, inside
// rules and (types left out) inside app, and what the command line and the workers pull in.
//
// Terms. Sources: path in the repository -> text. An import is "erased" when it is for types only and so is gone at run time.
import { builtinModules } from "node:module";
import { posix } from "node:path";
import { parseSync } from "vite";

export type Sources = ReadonlyMap<string, string>;

export interface Import {
  from: string;
  /** As written. */
  specifier: string;
  /** Path in the repository when the specifier is relative, otherwise null. */
  file: string | null;
  erased: boolean;
  /** True for a default import or `* as name` or `export *`. */
  whole: boolean;
}

/** Folders that each folder may import from. */
const layers: Record<string, string[]> = {
  geometry: ["geometry"],
  rules: ["rules", "geometry"],
  app: ["app", "rules", "geometry", "demo-sites"],
};

/** The only packages that the two inner folders may import: nothing that needs a browser, a screen or a machine. */
const geometryPackages = ["@turf/turf", "clipper2-ts", "earcut", "flatbush", "geojson", "robust-predicates"];
const innerPackages: Record<string, string[]> = {
  geometry: geometryPackages,
  rules: [...geometryPackages, "zod"],
};

const canvasPackages = ["konva", "react-konva"];
/** What neither the command line nor a worker may load. Plain `zustand` loads react; `zustand/vanilla` does not. */
const screenPackages = ["react", "react-dom", "lucide-react", ...canvasPackages];
const screenSpecifiers = ["zustand"];

/** Every broken rule, one line each, or an empty list. */
export function importProblems(sources: Sources): string[] {
  const imports = new Map([...sources].map(([file, text]) => [file, importsOf(file, text)]));
  const problems = [...imports.values()].flat().flatMap((one) => problemsOf(one, sources));
  for (const layer of ["geometry", "rules"]) {
    for (const cycle of cyclesWithin(`${layer}/`, imports)) problems.push(`circular imports: ${cycle.join(" -> ")}`);
  }
  // What app tells the types of its parts may go round; what runs may not.
  const running = new Map([...imports].map(([file, ones]) => [file, ones.filter(({ erased }) => !erased)]));
  for (const cycle of cyclesWithin("app/", running)) problems.push(`circular imports: ${cycle.join(" -> ")}`);
  for (const folder of ["app/command-line/", "app/workers/"]) problems.push(...screenUse(folder, imports));
  return problems;
}

/** The imports of one file in the order written. Throws when the file does not parse or computes what it imports. */
export function importsOf(file: string, text: string): Import[] {
  const { program, errors } = parseSync(file, text);
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message}`);
  const found: Import[] = [];
  visit(program, (node) => {
    const source = node.source;
    if (!isNode(source)) return;
    if (typeof source.value !== "string")
      throw new Error(`${file}: an import whose target is computed cannot be checked`);
    const specifiers = Array.isArray(node.specifiers) ? node.specifiers.filter(isNode) : [];
    const kind = node.importKind ?? node.exportKind;
    found.push({
      from: file,
      specifier: source.value,
      file: targetOf(file, source.value),
      erased:
        node.type === "TSImportType" ||
        kind === "type" ||
        (specifiers.length > 0 && specifiers.every((one) => (one.importKind ?? one.exportKind) === "type")),
      whole:
        node.type === "ExportAllDeclaration" ||
        specifiers.some((one) => /^Import(Default|Namespace)Specifier$/.test(String(one.type))),
    });
  });
  return found;
}

type Node = Record<string, unknown>;

const isNode = (value: unknown): value is Node => typeof value === "object" && value !== null;

function visit(value: unknown, see: (node: Node) => void): void {
  if (Array.isArray(value)) for (const one of value) visit(one, see);
  else if (isNode(value)) {
    see(value);
    for (const child of Object.values(value)) visit(child, see);
  }
}

function targetOf(from: string, specifier: string): string | null {
  if (!specifier.startsWith(".")) return null;
  return posix.join(posix.dirname(from), specifier.replace(/\?.*$/, ""));
}

const folderOf = (file: string): string => file.slice(0, file.indexOf("/"));

const packageOf = (specifier: string): string =>
  specifier
    .split("/")
    .slice(0, specifier.startsWith("@") ? 2 : 1)
    .join("/");

function problemsOf(one: Import, sources: Sources): string[] {
  const problems: string[] = [];
  const say = (what: string) => problems.push(`${one.from} imports "${one.specifier}": ${what}`);
  const layer = folderOf(one.from);
  if (one.file !== null) {
    if (!layers[layer]?.includes(folderOf(one.file))) say(`${layer} may import only ${layers[layer]?.join(", ")}`);
    if (!/\.[a-z]+$/.test(one.file)) say("the file's extension is missing");
    else if (/\.tsx?$/.test(one.file) && !sources.has(one.file)) say("there is no such file");
    return problems;
  }
  const name = packageOf(one.specifier);
  const isBuiltin = one.specifier.startsWith("node:") || builtinModules.includes(one.specifier);
  const allowed = innerPackages[layer];
  if (allowed && (isBuiltin || !allowed.includes(name)))
    say(`${layer} may use only the packages ${allowed.join(", ")}`);
  if (canvasPackages.includes(name) && !one.from.startsWith("app/canvas/")) say("only app/canvas draws with it");
  if (name === "clipper2-ts" && !/^geometry\/(clipping|clip-[^/]+)\.ts$/.test(one.from)) {
    say("only geometry/clipping.ts and its clip-* files use it");
  }
  if (name === "@turf/turf" && one.whole) say("turf is imported by name");
  return problems;
}

/** Each circle of imports among the files under a folder, as the files passed, the first repeated at the end. */
function cyclesWithin(folder: string, imports: ReadonlyMap<string, Import[]>): string[][] {
  const cycles: string[][] = [];
  const done = new Set<string>();
  const trail: string[] = [];
  const walk = (file: string) => {
    const start = trail.indexOf(file);
    if (start >= 0) cycles.push([...trail.slice(start), file]);
    if (start >= 0 || done.has(file)) return;
    trail.push(file);
    for (const one of imports.get(file) ?? []) if (one.file?.startsWith(folder)) walk(one.file);
    trail.pop();
    done.add(file);
  };
  for (const file of imports.keys()) if (file.startsWith(folder)) walk(file);
  return cycles;
}

/** What the files under a folder load, directly or through others, that needs a screen; each with the way to it. */
function screenUse(folder: string, imports: ReadonlyMap<string, Import[]>): string[] {
  const problems: string[] = [];
  const ways = [...imports.keys()].filter((file) => file.startsWith(folder)).map((file) => [file]);
  const seen = new Set(ways.flat());
  for (const way of ways) {
    for (const one of imports.get(way.at(-1) ?? "") ?? []) {
      if (one.erased) continue;
      if (one.file === null) {
        if (screenPackages.includes(packageOf(one.specifier)) || screenSpecifiers.includes(one.specifier)) {
          problems.push(`${folder} must work without a screen: ${[...way, one.specifier].join(" -> ")}`);
        }
      } else if (!seen.has(one.file)) {
        seen.add(one.file);
        ways.push([...way, one.file]);
      }
    }
  }
  return problems;
}
