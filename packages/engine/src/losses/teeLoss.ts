/** Losses of a tee by how the flow splits, both K [-] on the velocity head of the combined leg, with their slopes. */
export interface TeeLosses {
  /** K between the combined leg and the branch [-]; negative where the main stream draws the branch along. */
  readonly branch: number;
  /** K between the combined leg and the straight way [-]. */
  readonly run: number;
  /** d branch / d flowRatio [-]. */
  readonly branchSlope: number;
  /** d run / d flowRatio [-]. */
  readonly runSlope: number;
}

function withinUnit(share: number): number {
  return Math.min(1, Math.max(0, share));
}

/** Losses of a 90 degree tee that divides a flow, y = Qbranch/Qcombined, a = Abranch/Acombined:
 *  branch K = G (1 + H (y/a)^2) with G = 1 + 0.3 y^2 where a > 2/3, else 1, and H = 0.3 where sqrt(a) > 2/3, else 1;
 *  run K = M y^2 with M = 0.4 where a <= 0.4, else 2 (2y - 1) up to y 0.5 and 0.3 (2y - 1) beyond.
 *  flowRatio y [-], held within 0 to 1   areaRatioBranch a [-], above 0 to 1   -> TeeLosses
 *  Findings: none. Throws: never.
 *  Valid: turbulent flow, run of one bore. Handbooks differ by 20 % and more; a branch that takes all the flow reads high (K 1.69 at a = 1).
 *  Source: Crane TP-410 (2009) chapter 2, tees and wyes, with its errata, as in fluids 1.0.22 K_branch_diverging_Crane, K_run_diverging_Crane.
 *  Example: dividingTeeLoss(0.25, 1).branch  ->  1.03785
 *  Example: dividingTeeLoss(0.25, 1).run  ->  -0.0625 */
export function dividingTeeLoss(flowRatio: number, areaRatioBranch: number): TeeLosses {
  const y = withinUnit(flowRatio);
  const a = areaRatioBranch;
  const g = a > 2 / 3 ? 1 + 0.3 * y * y : 1;
  const gSlope = a > 2 / 3 ? 0.6 * y : 0;
  const h = (a > 4 / 9 ? 0.3 : 1) / (a * a);
  let m = 0.4;
  let mSlope = 0;
  if (a > 0.4) {
    const factor = y <= 0.5 ? 2 : 0.3;
    m = factor * (2 * y - 1);
    mSlope = 2 * factor;
  }
  return {
    branch: g * (1 + h * y * y),
    run: m * y * y,
    branchSlope: gSlope * (1 + h * y * y) + g * 2 * h * y,
    runSlope: mSlope * y * y + 2 * m * y,
  };
}

/** Losses of a 90 degree tee that joins two flows, y = Qbranch/Qcombined, a = Abranch/Acombined:
 *  branch K = C (1 + (y/a)^2 - 2 (1 - y)^2) with C = 1 where a <= 0.35, else 0.9 (1 - y) but at least 0.55;
 *  run K = 1.55 y - y^2.
 *  flowRatio y [-], held within 0 to 1   areaRatioBranch a [-], above 0 to 1   -> TeeLosses
 *  Findings: none. Throws: never.
 *  Valid: turbulent flow, run of one bore; handbooks differ by 20 % and more. Crane lets C jump from 0.54 to 0.55 at y = 0.4;
 *  here 0.55 holds from y = 0.389 on, so that K is continuous (at most 1.8 % from Crane, only in that gap).
 *  Source: Crane TP-410 (2009) chapter 2, tees and wyes, with its errata, as in fluids 1.0.22 K_branch_converging_Crane, K_run_converging_Crane.
 *  Example: combiningTeeLoss(0.25, 1).branch  ->  -0.0421875
 *  Example: combiningTeeLoss(0.25, 1).run  ->  0.325 */
export function combiningTeeLoss(flowRatio: number, areaRatioBranch: number): TeeLosses {
  const y = withinUnit(flowRatio);
  const a = areaRatioBranch;
  const falling = 0.9 * (1 - y);
  const isFalling = a > 0.35 && falling > 0.55;
  const c = a <= 0.35 ? 1 : isFalling ? falling : 0.55;
  const inner = 1 + (y * y) / (a * a) - 2 * (1 - y) ** 2;
  const innerSlope = (2 * y) / (a * a) + 4 * (1 - y);
  return {
    branch: c * inner,
    run: 1.55 * y - y * y,
    branchSlope: c * innerSlope + (isFalling ? -0.9 * inner : 0),
    runSlope: 1.55 - 2 * y,
  };
}
