import type { WhatIf } from "@tidewright/advice";

/** Returns the moment to look at first: the highest level of the vessel that spills or comes nearest to its rim; where a pump draws air,
 *  when it does.
 *  result WhatIf   -> moment [s]
 *  Findings: none. Throws: never.
 *  Valid: any played scenario.
 *  Source: own construction. */
export function worstMoment(result: Pick<WhatIf, "verdict" | "timeToTrouble" | "vessels">): number {
  const { verdict, timeToTrouble, vessels } = result;
  const spilling = vessels.filter(({ spilled }) => spilled > 0);
  if (spilling.length > 0) return spilling.reduce((a, b) => (b.spilled > a.spilled ? b : a)).highestAt;
  if (verdict === "dry" && timeToTrouble !== undefined) return timeToTrouble;
  const rimmed = vessels.filter(({ margin }) => margin !== undefined);
  // A vessel that never stands higher than while running has no moment of its own.
  const rising = rimmed.filter(({ highest, start }) => highest > start + 5e-4);
  const choice = rising.length > 0 ? rising : rimmed;
  return choice.reduce((a, b) => ((b.margin ?? 0) < (a.margin ?? 0) ? b : a), choice[0]!)?.highestAt ?? 0;
}
