/** Loss of a sudden expansion on the velocity head of the small bore: K = (1 - b^2)^2, b = d1/d2 (Borda-Carnot).
 *  d1 bore before [m]   d2 bore after, at least d1 [m]   -> K [-]; 0 where d2 is not larger
 *  Findings: none. Throws: never.
 *  Valid: turbulent flow; a few per cent.
 *  Source: Borda-Carnot from the momentum balance; Crane TP-410 (2009) chapter 2.
 *  Example: suddenExpansionLoss(0.0266, 0.0409)  ->  0.33296 */
export function suddenExpansionLoss(d1: number, d2: number): number {
  if (!(d2 > d1)) return 0;
  const area = (d1 * d1) / (d2 * d2);
  return (1 - area) ** 2;
}

/** Published forms of the sudden contraction. */
export type ContractionMethod = "crane" | "rennels";

/** Loss of a sudden contraction on the velocity head of the small bore, b = d2/d1. Crane: K = 0.5 (1 - b^2). Rennels:
 *  K = 0.0696 (1 - b^5) l^2 + (l - 1)^2 with jet contraction l = 1 + 0.622 (1 - 0.215 b^2 - 0.785 b^5).
 *  d1 bore before [m]   d2 bore after, at most d1 [m]   method, "crane" if left out   -> K [-]; 0 where d2 is not smaller
 *  Findings: none. Throws: never.
 *  Valid: sharp edge, turbulent flow. The two differ by up to 40 %.
 *  Source: Crane TP-410 (2009) chapter 2; D. C. Rennels and H. M. Hudson, Pipe Flow (2012) chapter 10, as in fluids 1.0.22.
 *  Example: suddenContractionLoss(0.0409, 0.0266)  ->  0.28851
 *  Example: suddenContractionLoss(0.0409, 0.0266, "rennels")  ->  0.39867 */
export function suddenContractionLoss(d1: number, d2: number, method: ContractionMethod = "crane"): number {
  if (!(d2 < d1)) return 0;
  const ratio = d2 / d1;
  const area = ratio * ratio;
  if (method === "crane") return 0.5 * (1 - area);
  const fifth = area * area * ratio;
  const jet = 1 + 0.622 * (1 - 0.215 * area - 0.785 * fifth);
  return 0.0696 * (1 - fifth) * jet * jet + (jet - 1) ** 2;
}
