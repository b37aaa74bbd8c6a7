/** The empty sheet: nothing drawn, nothing claimed. */
import { SITE_FORMAT, SITE_VERSION, type Site } from "../../rules/site/site.ts";

/** A new site. Edition, name and north are not known yet; the report asks for what it needs. */
export function emptySite(): Site {
  return { format: SITE_FORMAT, version: SITE_VERSION, display: { units: "ft-in" }, elements: [] };
}
