/** How sure it is that something recorded conducts or joins: facts that the site does not give make it doubtful. */
export type Standing = "sure" | "doubtful" | "no";

const ORDER: readonly Standing[] = ["no", "doubtful", "sure"];

/** The least sure of all; of none: sure. */
export function leastOf(standings: readonly Standing[]): Standing {
  let least = 2;
  for (const standing of standings) least = Math.min(least, ORDER.indexOf(standing));
  return ORDER[least] ?? "no";
}

/** The surest of all; of none: no. */
export function mostOf(standings: readonly Standing[]): Standing {
  let most = 0;
  for (const standing of standings) most = Math.max(most, ORDER.indexOf(standing));
  return ORDER[most] ?? "no";
}
