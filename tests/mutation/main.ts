/**
 * The mutation check, `npm run mutate [PARAMETER]`: makes every number of every edition wrong, one at a time, and tries
 * the yards on it. A change that no yard notices has survived: that number is not under test. Not part of `npm test`.
 *
 * Stages. 1. Every yard has to hold before anything is changed, and tells which numbers it reads. 2. Each wrong number is
 * tried on the yards that read it, until one fails. 3. The score, the survivors, and the numbers that nothing reads.
 */
import { EDITIONS } from "../../rules/editions/in-force.ts";
import type { ParameterId } from "../../rules/editions/parameter-types.ts";
import { readsOf, withValue } from "../support/changed-editions.ts";
import { type Mutant, mutants } from "./mutants.ts";
import { type TriedYard, triedYards } from "./yards.ts";

const yards = await triedYards();
const reads = new Map<TriedYard, ReadonlySet<ParameterId>>();
const broken: string[] = [];
for (const yard of yards) {
  const read = readsOf(yard.edition, () => {
    if (!yard.holds()) broken.push(`${yard.name}, ${yard.edition}`);
  });
  reads.set(yard, read);
}
const only = process.argv[2];
const tried = mutants().filter(({ id }) => only === undefined || id.startsWith(only));
const survivors = broken.length > 0 ? [] : tried.filter((mutant) => !isNoticed(mutant));
const read = new Set([...reads.values()].flatMap((ids) => [...ids]));
const unread = Object.keys(EDITIONS["nec-2023"].parameters).filter((id) => !read.has(id as ParameterId));

if (broken.length > 0) print(["These yards fail before anything is changed:", ...broken]);
else print(scoreLines());
process.exitCode = broken.length + survivors.length === 0 ? 0 : 1;

/** Whether a yard fails once the number is wrong. A yard that never reads it cannot. */
function isNoticed({ edition, id, value }: Mutant): boolean {
  const here = yards.filter((yard) => yard.edition === edition && reads.get(yard)?.has(id));
  const near = (yard: TriedYard) => (yard.parameters.includes(id) ? 0 : 1);
  here.sort((a, b) => near(a) - near(b));
  return withValue(edition, id, value, () => here.some((yard) => !yard.holds()));
}

function scoreLines(): string[] {
  const killed = tried.length - survivors.length;
  const share = ((100 * killed) / tried.length).toFixed(1);
  const byChange = new Map<string, string[]>();
  for (const { edition, id, says } of survivors) {
    const change = `${id}: ${says}`;
    byChange.set(change, [...(byChange.get(change) ?? []), edition]);
  }
  return [
    `${yards.length} yards, ${tried.length} wrong numbers: ${killed} noticed, ${survivors.length} not (${share} %).`,
    ...[...byChange].map(([change, editions]) => `not noticed: ${change} (${editions.join(", ")})`),
    unread.length === 0 ? "Every number is read by some yard." : `Read by no yard: ${unread.join(", ")}.`,
  ];
}

function print(lines: readonly string[]): void {
  process.stdout.write(`${lines.join("\n")}\n`);
}
