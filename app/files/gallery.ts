/** The demo sites that ship with the program, all invented. */
import { readSite } from "../../rules/site/reader.ts";
import { stemOf } from "./file-name.ts";

/** A demo site as a list shows it. */
export interface Demo {
  /** The file's name without its ending; stable. */
  readonly id: string;
  readonly file: string;
  readonly title: string;
  /** What it shows, a sentence or two; empty when the file says nothing. */
  readonly note: string;
  readonly text: string;
}

const files = import.meta.glob<string>("../../demo-sites/*.site.json", { query: "?raw", import: "default" });

/** The demo that opens when nothing was kept. */
export const FIRST_DEMO = "rectangle";

/** The ids of the demos, the first one first. */
export function demoIds(): string[] {
  const ids = Object.keys(files).map(idOf).sort();
  return ids.includes(FIRST_DEMO) ? [FIRST_DEMO, ...ids.filter((id) => id !== FIRST_DEMO)] : ids;
}

/** One demo, loaded; null when there is none of that id. */
export async function loadDemo(id: string): Promise<Demo | null> {
  const entry = Object.entries(files).find(([path]) => idOf(path) === id);
  if (!entry) return null;
  const text = await entry[1]();
  const read = readSite(text);
  const head = read.ok ? (read.site as { readonly name?: string; readonly note?: unknown }) : {};
  return {
    id,
    file: `${id}.site.json`,
    title: head.name ?? titleOf(id),
    note: typeof head.note === "string" ? head.note : "",
    text,
  };
}

/** Every demo, loaded. */
export async function loadDemos(): Promise<Demo[]> {
  const demos = await Promise.all(demoIds().map(loadDemo));
  return demos.filter((demo) => demo !== null);
}

function idOf(path: string): string {
  return stemOf(path.slice(path.lastIndexOf("/") + 1));
}

function titleOf(id: string): string {
  const words = id.replaceAll("-", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}
