/** A site and its report as one SVG file of drawing sheets. */
import type { Report } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";
import { missingText, standingCountsText } from "../../rules/words/outcomes.ts";
import type { PaletteName } from "./palette.ts";
import { planSheets, type SheetOptions } from "./sheets.ts";
import { sheetsToSvg } from "./svg.ts";

export interface DrawingOptions extends SheetOptions {
  readonly palette?: PaletteName;
}

/** The text of an SVG file, true to scale. The same site and report give the same text. */
export function drawingSvg(site: Site, report: Report, options: DrawingOptions = {}): string {
  const { palette, ...layout } = options;
  return sheetsToSvg(planSheets(site, report, layout), {
    title: `${report.site === "" ? "Site without a name" : report.site}: bonding plan`,
    description: `${missingText(report)}: ${standingCountsText(report)}. ${report.cautions.join(" ")}`,
    ...(palette ? { palette } : {}),
  });
}
