import type { Edition } from "./edition.ts";
import { nec2020 } from "./nec-2020.ts";
import { parameter as p } from "./parameter.ts";
import type { ParameterTable } from "./parameter-types.ts";

const parameters: ParameterTable = {
  ...nec2020.parameters,
  "perimeter.above": p<number | null>(
    36,
    "in",
    "680.26(B)(2)",
    "O",
    "Surfaces up to this far above the maximum water level; beyond it a question, not a pass.",
  ),
  "perimeter.below": p<number | null>(
    24,
    "in",
    "680.26(B)(2)",
    "O",
    "Surfaces down to this far below the maximum water level; beyond it a question, not a pass.",
  ),
  "perimeter.nonconductiveExempt": p(
    true,
    "yes/no",
    "680.26(B)(2)",
    "P",
    "A nonconductive surface separated from earth or raised on nonconductive supports needs none.",
  ),
  "perimeter.ringUnderPaving": p(
    false,
    "yes/no",
    "680.26(B)(2)",
    "P",
    "A lone copper ring no longer serves under conductive paving.",
  ),
  "perimeter.meshCounts": p<boolean | null>(
    true,
    "yes/no",
    "680.26(B)(2)",
    "P",
    "Welded wire embedded in the paving is a method; from 2025 it is to be listed (one source).",
  ),
  "perimeter.pavedCoverMax": p<number | null>(
    6,
    "in",
    "680.26(B)(2)",
    "P",
    "Steel or grid of a paved portion at most this far below finished grade.",
  ),
  "ring.coverMin": p(4, "in", "680.26(B)(2)", "R", "Least depth of the ring below finished grade."),
  "ring.coverMax": p(6, "in", "680.26(B)(2)", "R", "Greatest depth of the ring below finished grade."),
  "ring.coverFrom": p("grade", "word", "680.26(B)(2)", "R", "What the ring's depth is measured from: finished grade."),
  "grid.coverMin": p<number | null>(
    null,
    "in",
    "680.26(B)(2)",
    "P",
    "No least depth is written for a grid in this edition.",
  ),
  "grid.coverMax": p(6, "in", "680.26(B)(2)", "P", "Greatest depth of the perimeter grid below finished grade."),
  "fittings.coverAnchorsExempt": p(true, "yes/no", "680.26(B)(5)", "R", "Small cover anchors are freed by name."),
  "receptacle.gfciVolts": p(250, "V", "680.22(A)(4)", "R", "Up to this voltage."),
  "receptacle.gfciAmps": p<readonly string[] | null>(null, "list", "680.22(A)(4)", "R", "Any rating."),
};

/** National Electrical Code 2023 as changed by interim amendment 23-9, article 680. */
export const nec2023 = {
  id: "nec-2023",
  title: "NEC 2023",
  note: "National Electrical Code, 2023 edition as changed by interim amendment 23-9, in force from 2023-04-10.",
  parameters,
} as const satisfies Edition;
