/** What an element is called on screen, on the sheet and in the list: its own name, else its kind or trade name and number. */
import type { Finding } from "../report.ts";
import type { KnownElement, UnknownElement } from "../site/elements.ts";

type AnyElement = KnownElement | UnknownElement;

const KIND_WORDS: Readonly<Record<string, string>> = {
  inset: "step or ledge",
  building: "building",
  wall: "wall",
  fence: "fence",
  metal: "metal part",
  "underwater-light": "underwater light",
  "overhead-line": "overhead line",
  "underground-run": "underground run",
  "water-bond": "water contact",
  tie: "tie",
  "keep-out": "keep-out",
};

/** The field that says what sort of its kind an element is. */
const TYPE_FIELD: Readonly<Record<string, string>> = {
  pool: "body",
  inset: "inset",
  surface: "material",
  opening: "opening",
  structure: "structure",
  metal: "part",
  equipment: "unit",
  device: "device",
};

const TYPE_ENDING: Readonly<Record<string, string>> = { surface: "surface" };

/** The given name of an element, or null. */
export function givenName(element: AnyElement): string | null {
  return typeof element.name === "string" && element.name.trim() !== "" ? element.name.trim() : null;
}

/** What sort of thing the element is, in words: `ladder`, `concrete surface`, `recorded ring copper`. */
export function sortOf(element: AnyElement): string {
  const fields = element as Readonly<Record<string, unknown>>;
  const field = TYPE_FIELD[element.kind];
  const type = field === undefined ? undefined : fields[field];
  const word = typeof type === "string" ? plainWord(type) : null;
  if (element.kind === "conductor") return `recorded ${String(fields.role ?? "")} copper`.replace("  ", " ");
  if (word !== null) {
    const ending = TYPE_ENDING[element.kind];
    return ending === undefined || word === "lawn" || word === "artificial turf" ? word : `${word} ${ending}`;
  }
  return KIND_WORDS[element.kind] ?? element.kind.replaceAll("-", " ");
}

/** A type as a word, null where it is empty. A yard has few of them, and each is asked about again and again. */
function plainWord(type: string): string | null {
  let word = plainWords.get(type);
  if (word === undefined) {
    word = type.trim().replaceAll("-", " ") || null;
    if (plainWords.size >= MANY_WORDS) plainWords.clear();
    plainWords.set(type, word);
  }
  return word;
}

const plainWords = new Map<string, string | null>();
const MANY_WORDS = 1000;

/** The element in words: its given name, else what it is with its number: `fence 2`. */
export function elementName(element: AnyElement): string {
  return givenName(element) ?? `${sortOf(element)} ${numberOf(element)}`.trim();
}

/** What tells an element without a name from its like: the number its id ends with, else the id. */
function numberOf(element: AnyElement): string {
  const { id } = element;
  let start = id.length;
  while (start > 0 && isDigit(id.charCodeAt(start - 1))) start -= 1;
  const digits = id.length - start;
  return digits > 0 && digits <= 9 ? id.slice(start) : id;
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

/** Names by id, for whoever writes about many elements: two that have no name and the same number are told by their ids. */
export function namesOf(elements: readonly AnyElement[]): Map<string, string> {
  const names = elements.map(elementName);
  const times = new Map<string, number>();
  for (const name of names) times.set(name, (times.get(name) ?? 0) + 1);
  return new Map(
    elements.map((element, i) => {
      const name = names[i] ?? element.id;
      const isAlone = times.get(name) === 1 || givenName(element) !== null;
      return [element.id, isAlone ? name : `${sortOf(element)} ${element.id}`];
    }),
  );
}

/** What a finding is about, in words: its element, the ground beside its body, its body, or the site. */
export function aboutName(
  { rule, element, body }: Pick<Finding, "rule" | "element" | "body">,
  nameOf: (id: string) => string,
): string {
  if (element !== null) return nameOf(element);
  if (body === null) return "the site";
  return rule === "perimeter-surfaces" ? `bare ground by ${nameOf(body)}` : nameOf(body);
}

/** First letter large, for headings and list entries. */
export function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
