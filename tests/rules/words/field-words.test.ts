import { describe, expect, it } from "vitest";
import { recompute } from "../../../rules/recompute.ts";
import type { Site } from "../../../rules/site/site.ts";
import { reportWithLabels, textsWithLabels, withLabels } from "../../../rules/words/field-words.ts";

// No published source: these are this program's own words.
describe("fields that a text names", () => {
  it("bear the label that they have in the kind it is about", () => {
    expect(withLabels("Give `z`.", "device")).toBe("Give \u201cHeight\u201d.");
    expect(withLabels("Give `z`.", "equipment")).toBe("Give \u201cLevel\u201d.");
    expect(withLabels("whose light it serves (`serves`)", "equipment")).toBe(
      "whose light it serves (\u201cServes\u201d)",
    );
  });

  it("stay as they are where there is no such field, and so does a text that names none", () => {
    expect(withLabels("Give `nothing like it`, `noSuchField`.", "device")).toBe(
      "Give `nothing like it`, `noSuchField`.",
    );
    const said = { why: "Far off.", remedy: "" };
    expect(textsWithLabels(said, "device")).toBe(said);
  });

  it("have the words that all kinds share where the kind is not known or there is none", () => {
    for (const kind of ["fountain", undefined]) {
      expect(withLabels("Give `name`.", kind)).toBe("Give \u201cName\u201d.");
      expect(withLabels("Give `serves`.", kind)).toBe("Give \u201cServes\u201d.");
    }
  });

  it("are changed in every finding that is shown, which is the same object each time", () => {
    const site = {
      format: "copperband-site",
      version: 1,
      edition: "nec-2020",
      elements: [
        {
          id: "pool",
          kind: "pool",
          body: "pool",
          shell: "sprayed-concrete",
          steel: "bare",
          outline: {
            closed: true,
            vertices: [
              [0, 0],
              [240, 0],
              [240, 120],
              [0, 120],
            ],
          },
        },
        { id: "outlet", kind: "device", device: "receptacle", at: [120, 240], z: 24 },
      ],
    } as unknown as Site;
    const report = recompute(site);
    const named = (text: string) => /`/.test(text);
    const texts = (found: typeof report) =>
      found.findings.flatMap(({ why, remedy, question }) => [why, remedy, question?.text ?? ""]);
    expect(texts(report).some(named)).toBe(true);
    const shown = reportWithLabels(report, site);
    expect(texts(shown).some(named)).toBe(false);
    expect(texts(shown).join()).toContain("\u201cGFCI protected\u201d");
    expect(reportWithLabels(report, site).findings.every((finding, i) => finding === shown.findings[i])).toBe(true);
  });
});
