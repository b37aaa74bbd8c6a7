/** Writes one parameter of an edition. */
import type { Basis, Parameter, ParameterValue } from "./edition.ts";

/** A number, list or switch of the code with its unit, section, basis and meaning in our own words. */
export function parameter<V extends ParameterValue>(
  value: V,
  unit: string,
  section: string,
  basis: Basis,
  says: string,
): Parameter<V> {
  return { value, unit, section, basis, says };
}
