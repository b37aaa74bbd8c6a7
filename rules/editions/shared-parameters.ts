/** The numbers that the editions from 2017 on have in common. */
import { bondingParameters } from "./bonding-parameters.ts";
import { clearanceParameters } from "./clearance-parameters.ts";
import type { ParameterTable } from "./parameter-types.ts";

export const sharedParameters: ParameterTable = { ...bondingParameters, ...clearanceParameters };
