import { standardGravity } from "../water/index.ts";

/** Returns the flow over a thin-plate weir as wide as its channel:
 *  Q = (2/3) sqrt(2 g) (0.602 + 0.083 h/p) b (h + 0.0012)^1.5.
 *  head h [m] above the crest   width b [m]   crestHeight p [m] above the floor   -> flow [m3/s]; 0 at or below the crest
 *  Findings: none. Throws: never.
 *  Valid: head 0.03-0.75 m, width above 0.3 m, crest above 0.1 m, h/p below 1; about 1 % there. Below 30 mm head surface
 *  tension decides and the 1.2 mm head term, a step at h = 0, has no meaning: use overflowWeirFlow for aquarium overflows.
 *  Source: Th. Rehbock 1929, in ISO 1438:2017 (thin-plate weirs), full-width form; 0.083 for the older 0.0832 and 1.2 for 1.25 mm.
 *  Example: rehbockWeirFlow(0.05, 0.4, 0.3)  ->  0.008426 */
export function rehbockWeirFlow(head: number, width: number, crestHeight: number): number {
  if (!(head > 0) || !(width > 0)) return 0;
  const coefficient = 0.602 + (0.083 * head) / crestHeight;
  return (2 / 3) * Math.sqrt(2 * standardGravity) * coefficient * width * (head + 0.0012) ** 1.5;
}
