import { combiningTeeTerms, dividingTeeTerms } from "./teeTerms.ts";

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

/** Branch, run and their slopes, on the way to an object. */
const scratch = new Float64Array(4);

function teeLossesOf([branch = 0, run = 0, branchSlope = 0, runSlope = 0]: Float64Array): TeeLosses {
  return { branch, run, branchSlope, runSlope };
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
  dividingTeeTerms(flowRatio, areaRatioBranch, scratch);
  return teeLossesOf(scratch);
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
  combiningTeeTerms(flowRatio, areaRatioBranch, scratch);
  return teeLossesOf(scratch);
}
