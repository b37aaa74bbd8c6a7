// Yards of one fact each through `check --json`. Sources stand with the yards.
import { describe, expect, it } from "vitest";
import { run } from "../../../app/command-line/run.ts";
import type { Report } from "../../../rules/report.ts";
import { fakeTerminal } from "./fake-terminal.ts";
import { ONE_FACT_YARDS, type OneFact } from "./one-fact-yards.ts";

async function findingOf({ rule, elements }: OneFact, edition: string): Promise<{ outcome: string; section?: string }> {
  const text = JSON.stringify({ format: "copperband-site", version: 1, edition, elements });
  const terminal = fakeTerminal({ files: { "yard.site.json": text } });
  await run(["check", "yard.site.json", "--json"], terminal);
  const { findings } = JSON.parse(terminal.out()) as Report;
  const ofRule = findings.filter((finding) => finding.rule === rule);
  const found = ofRule.find(({ element }) => element === "it") ?? ofRule.find(({ element }) => element === null);
  return found ?? { outcome: "none" };
}

describe.each([...new Set(ONE_FACT_YARDS.map(({ section }) => section))])("%s", (section) => {
  const yards = ONE_FACT_YARDS.filter((yard) => yard.section === section);
  it.each(
    yards.flatMap((yard) =>
      yard.editions.map((edition) => [yard.rule, yard.fact, yard.outcome, edition, yard] as const),
    ),
  )("%s, %s: %s under %s", async (_rule, _fact, outcome, edition, yard) => {
    expect(await findingOf(yard, edition)).toMatchObject(outcome === "none" ? { outcome } : { outcome, section });
  });
});
