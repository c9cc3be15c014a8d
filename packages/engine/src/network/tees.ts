import { combiningTeeLoss, dividingTeeLoss } from "../losses/index.ts";
import { standardGravity } from "../water/index.ts";
import type { NetworkModel } from "./model.ts";

/** A tee in solver indices: its three legs (run, run, branch) and +1 where a leg's positive flow runs into the node. */
export interface CompiledTee {
  readonly legs: readonly [number, number, number];
  readonly inward: readonly [number, number, number];
  readonly runArea: number;
  /** Branch area over run area. */
  readonly areaRatio: number;
}

/** Where all flow turns the corner (branch to both runs, or both runs to branch) no split correlation applies: Crane's
 *  branch tee, 60 fT, at 1 in (fT 0.022); Crane TP-410, 2009, page A-30. */
const turningLoss = 60 * 0.022;

export function compileTees(
  model: NetworkModel,
  linkIndex: ReadonlyMap<string, number>,
  _from: Int32Array,
  to: Int32Array,
  nodeIndex: ReadonlyMap<string, number>,
): CompiledTee[] {
  return (model.tees ?? []).map((tee) => {
    const node = nodeIndex.get(tee.node) as number;
    const legs = [...tee.run, tee.branch].map((id) => linkIndex.get(id) as number) as [number, number, number];
    const inward = legs.map((leg) => (to[leg] === node ? 1 : -1)) as [number, number, number];
    const runArea = (Math.PI / 4) * tee.runDiameter ** 2;
    return { legs, inward, runArea, areaRatio: (tee.branchDiameter / tee.runDiameter) ** 2 };
  });
}

/** Adds the tees' losses to those of their legs. A tee couples three flows, so its exact derivative is not symmetric; the
 *  legs' own share of it goes into `slope` and the rest is left to iteration, which costs a few steps and no accuracy. */
export function addTeeLosses(
  tees: readonly CompiledTee[],
  flow: Float64Array,
  loss: Float64Array,
  slope: Float64Array,
): void {
  for (const tee of tees) {
    const into = [0, 1, 2].map((leg) => tee.inward[leg] * flow[tee.legs[leg]]);
    const ins = into.filter((q) => q > 0).length;
    if (ins === 0 || ins === 3) continue;
    const dividing = ins === 1;
    // The combined leg is the one alone on its side.
    const combined = into.findIndex((q) => (dividing ? q > 0 : q <= 0));
    const total = Math.abs(into[combined]);
    if (total < 1e-12) continue;
    const velocity = total / tee.runArea;
    const unit = (velocity * velocity) / (2 * standardGravity);
    const add = (leg: number, coefficient: number, derivative: number) => {
      const link = tee.legs[leg];
      loss[link] += Math.sign(flow[link]) * coefficient * unit;
      slope[link] += Math.max(0, derivative) * (unit / total);
    };
    if (combined === 2) {
      const branchUnit = 1 / tee.areaRatio ** 2;
      add(0, turningLoss * branchUnit, 0);
      add(1, turningLoss * branchUnit, 0);
      continue;
    }
    const run = combined === 0 ? 1 : 0;
    const split = Math.min(1, Math.abs(into[2]) / total);
    const losses = dividing ? dividingTeeLoss(split, tee.areaRatio) : combiningTeeLoss(split, tee.areaRatio);
    add(run, losses.run, -losses.runSlope);
    add(2, losses.branch, losses.branchSlope);
  }
}
