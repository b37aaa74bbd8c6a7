import type { Edition } from "./edition.ts";
import { parameter as p } from "./parameter.ts";
import type { ParameterTable } from "./parameter-types.ts";
import { sharedParameters } from "./shared-parameters.ts";

const parameters: ParameterTable = {
  ...sharedParameters,
  "perimeter.grid": p(
    true,
    "yes/no",
    "680.26(B)(2)",
    "P",
    "A copper grid over the perimeter surface is a further method.",
  ),
  "receptacle.equipmentRoom": p(true, "yes/no", "680.22(A)(5)", "P", "An equipment room needs a receptacle with GFCI."),
  "otherEquipment.distance": p<number | null>(
    60,
    "in",
    "680.22(E)",
    "O",
    "Other equipment above the low-voltage contact limit, unless a barrier stands between.",
  ),
};

/** National Electrical Code 2020, article 680. */
export const nec2020 = {
  id: "nec-2020",
  title: "NEC 2020",
  note: "National Electrical Code, 2020 edition, article 680.",
  parameters,
} as const satisfies Edition;
