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

/** Tees in solver indices. */
export function compileTees(
  model: NetworkModel,
  linkIndex: ReadonlyMap<string, number>,
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

/** A leg that carries less than about this share of the combined flow has its tee loss faded out, so that the loss passes
 *  through zero with the flow: the published fits stop at a dead branch, where their values for the two directions do not meet. */
const fade = 0.01;

/** Works out the tees' losses [m] of every link into `extra` (zero elsewhere) and adds their own slopes to `slope`. A tee couples
 *  three flows, so its exact derivative is not symmetric; the legs' own rising share of it goes into `slope` and the rest is left
 *  to iteration, which costs a few steps and no accuracy. */
export function teeLosses(
  tees: readonly CompiledTee[],
  flow: Float64Array,
  extra: Float64Array,
  slope: Float64Array,
): void {
  extra.fill(0);
  for (const tee of tees) {
    const into0 = tee.inward[0] * flow[tee.legs[0]];
    const into1 = tee.inward[1] * flow[tee.legs[1]];
    const into2 = tee.inward[2] * flow[tee.legs[2]];
    const total = Math.max(Math.abs(into0), Math.abs(into1), Math.abs(into2));
    if (!(total > 1e-12)) continue;
    const velocity = total / tee.runArea;
    const unit = (velocity * velocity) / (2 * standardGravity);
    const add = (leg: 0 | 1 | 2, coefficient: number, derivative: number) => {
      const link = tee.legs[leg];
      const q = flow[link];
      const width = fade * total;
      const root = Math.hypot(q, width);
      extra[link] += (q / root) * coefficient * unit;
      const fading = (coefficient * width * width) / (root * root * root);
      slope[link] += unit * (Math.max(0, derivative) / total + Math.max(0, fading));
    };
    // With all flow turning the corner the fits are taken at their end, all flow through the branch.
    const turning = Math.abs(into2) >= total * (1 - 1e-12);
    const run: 0 | 1 = Math.abs(into0) >= Math.abs(into1) ? 1 : 0;
    const split = turning ? 1 : Math.min(1, Math.abs(into2) / total);
    const dividing = turning ? into2 < 0 : (run === 1 ? into0 : into1) > 0;
    const losses = dividing ? dividingTeeLoss(split, tee.areaRatio) : combiningTeeLoss(split, tee.areaRatio);
    add(2, losses.branch, losses.branchSlope);
    if (!turning) add(run, losses.run, -losses.runSlope);
  }
}
