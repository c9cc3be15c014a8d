import type { WhatIf } from "./whatIfResult.ts";

/** What the sump holds more at the end than at the start, spilled water included [m3]. */
export function sumpGain(result: WhatIf): number {
  return result.vessels
    .filter(({ place }) => place.startsWith("sump."))
    .reduce((sum, vessel) => sum + vessel.area * (vessel.end - vessel.start) + vessel.spilled, 0);
}
