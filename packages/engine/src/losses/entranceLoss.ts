/** Shapes of a pipe entrance. */
export type EntranceKind = "sharp" | "rounded" | "projecting";

const radii = [0, 0.02, 0.04, 0.06, 0.1, 0.15];
const losses = [0.5, 0.28, 0.24, 0.15, 0.09, 0.04];

/** Loss of a pipe entrance on the velocity head of the pipe: sharp 0.5, projecting 0.78, rounded by lip radius (straight
 *  between the table's radii, 0.04 from r/D 0.15 on).
 *  kind EntranceKind   radiusRatio r/D of a rounded lip [-], 0.15 if left out   -> K [-]
 *  Findings: none. Throws: never.
 *  Valid: turbulent flow, large tank. Other handbooks give sharp 0.57 (Rennels), projecting up to 1 (Idelchik, thin edge).
 *  Source: Crane TP-410 (2009) appendix A.
 *  Example: entranceLoss("sharp")  ->  0.5
 *  Example: entranceLoss("rounded", 0.1)  ->  0.09 */
export function entranceLoss(kind: EntranceKind, radiusRatio = 0.15): number {
  if (kind === "sharp") return 0.5;
  if (kind === "projecting") return 0.78;
  const last = radii.length - 1;
  if (!(radiusRatio > 0)) return losses[0];
  if (radiusRatio >= radii[last]) return losses[last];
  let i = 1;
  while (radii[i] < radiusRatio) i++;
  const share = (radiusRatio - radii[i - 1]) / (radii[i] - radii[i - 1]);
  return losses[i - 1] + share * (losses[i] - losses[i - 1]);
}

/** Loss of an outlet into still water on the velocity head of the pipe: all of it, whatever the shape.
 *  Result: K [-].
 *  Findings: none. Throws: never.
 *  Valid: turbulent flow into a tank much wider than the pipe.
 *  Source: Borda-Carnot with an infinite second area; Crane TP-410 (2009) appendix A.
 *  Example: exitLoss  ->  1 */
export const exitLoss = 1;
