/** Everything that is timed, ratios to the naive pipeline first. */
import { benchCrowds } from "./crowds.ts";
import { benchDemos } from "./demos.ts";

export function benchAll(demoSites: URL): void {
  benchCrowds();
  console.log();
  benchDemos(demoSites);
}
