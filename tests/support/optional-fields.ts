/** Which facts of a site could be left out. */

import { ABSENT_MEANS, DEFAULT_WATER_LEVEL } from "../../rules/site/defaults.ts";
import { isKnownKind } from "../../rules/site/element-check.ts";
import { elementSchemas } from "../../rules/site/elements.ts";
import type { Site } from "../../rules/site/site.ts";

export interface OptionalField {
  readonly element: string;
  readonly index: number;
  readonly field: string;
}

/** What the absence of a field is defined to mean, where it does not mean unknown. */
const DEFAULTS: Readonly<Record<string, unknown>> = { ...ABSENT_MEANS, waterLevel: DEFAULT_WATER_LEVEL };

/** Every field of every element that is given and that the format allows to be absent, names and kind of geometry aside. */
export function optionalFieldsOf(site: Site): OptionalField[] {
  return site.elements.flatMap((element, index) => {
    if (!isKnownKind(element.kind)) return [];
    const { shape } = elementSchemas[element.kind];
    return Object.entries(shape)
      .filter(([field, schema]) => field in element && field !== "name" && schema.safeParse(undefined).success)
      .map(([field]) => ({ element: element.id, index, field }));
  });
}

/** The site without one field of one element. */
export function without(site: Site, { index, field }: OptionalField): Site {
  const elements = site.elements.map((element, i) => {
    if (i !== index) return element;
    const { [field]: _, ...rest } = element as Record<string, unknown>;
    return rest as unknown as typeof element;
  });
  return { ...site, elements };
}

/** The site with the field set to what its absence is defined to mean; null where absence means unknown. */
export function withDefault(site: Site, { index, field }: OptionalField): Site | null {
  if (!Object.hasOwn(DEFAULTS, field)) return null;
  const elements = site.elements.map((element, i) =>
    i === index ? ({ ...element, [field]: DEFAULTS[field] } as typeof element) : element,
  );
  return { ...site, elements };
}
