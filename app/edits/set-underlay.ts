import { type Underlay, underlaySchema } from "../../rules/site/site.ts";
import { type Edit, refused } from "./edit.ts";
import { checkedHead } from "./set-site-field.ts";

/**
 * Lays a picture under the sheet in the place of the one before; null takes it away. `accuracy`: what the site's accuracy
 * becomes, inches; null leaves it.
 */
export function setUnderlay(underlay: Underlay | null, label?: string, accuracy: number | null = null): Edit {
  const words = label ?? (underlay === null ? "Take the picture underneath away" : "Lay a picture underneath");
  return {
    label: words,
    apply(site) {
      if (underlay === null) {
        const { underlay: _, ...rest } = site;
        return { ok: true, site: rest as typeof site };
      }
      const checked = underlaySchema.safeParse(underlay);
      if (!checked.success) return refused("This picture cannot be kept in a site file.", null, "underlay");
      if (accuracy === null) return { ok: true, site: { ...site, underlay } };
      return checkedHead({ ...site, underlay, accuracy }, "accuracy", "Accuracy");
    },
  };
}
