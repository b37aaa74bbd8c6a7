import { type Underlay, underlaySchema } from "../../rules/site/site.ts";
import { type Edit, refused } from "./edit.ts";

/** Lays a picture under the sheet in the place of the one before; null takes it away. */
export function setUnderlay(underlay: Underlay | null, label?: string): Edit {
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
      return { ok: true, site: { ...site, underlay } };
    },
  };
}
