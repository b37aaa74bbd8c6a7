import type { Edition } from "./edition.ts";
import { sharedParameters } from "./shared-parameters.ts";

/** National Electrical Code 2017, article 680. */
export const nec2017 = {
  id: "nec-2017",
  title: "NEC 2017",
  note: "National Electrical Code, 2017 edition, article 680.",
  parameters: sharedParameters,
} as const satisfies Edition;
