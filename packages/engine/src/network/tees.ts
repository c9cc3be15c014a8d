import { combiningTeeTerms, dividingTeeTerms } from "../losses/teeTerms.ts";
import { standardGravity } from "../water/index.ts";
import type { NetworkModel } from "./model.ts";

/** The tees of a network in solver indices, three entries a tee in `legs` and `inward`. */
export interface CompiledTees {
  readonly count: number;
  /** Links of each tee: run, run, branch; and +1 where a leg's positive flow runs into the node. */
  readonly legs: Int32Array;
  readonly inward: Float64Array;
  /** 1/(2 g A^2) of the run [s2/m5], so that Q^2 times it is the velocity head; branch area over run area. */
  readonly velocityHead: Float64Array;
  readonly areaRatio: Float64Array;
  /** Every link that is a leg, once. */
  readonly links: Int32Array;
}

/** Tees in solver indices. */
export function compileTees(
  model: NetworkModel,
  linkIndex: ReadonlyMap<string, number>,
  to: Int32Array,
  nodeIndex: ReadonlyMap<string, number>,
): CompiledTees {
  const tees = model.tees ?? [];
  const legs = Int32Array.from(
    tees.flatMap((tee) => [...tee.run, tee.branch].map((id) => linkIndex.get(id) as number)),
  );
  const node = tees.map((tee) => nodeIndex.get(tee.node) as number);
  return {
    count: tees.length,
    legs,
    inward: Float64Array.from(legs, (leg, i) => (to[leg] === node[Math.floor(i / 3)] ? 1 : -1)),
    velocityHead: Float64Array.from(
      tees,
      ({ runDiameter }) => 8 / (standardGravity * (Math.PI * runDiameter ** 2) ** 2),
    ),
    areaRatio: Float64Array.from(tees, (tee) => (tee.branchDiameter / tee.runDiameter) ** 2),
    links: Int32Array.from(new Set(legs)),
  };
}

/** A leg that carries less than about this share of the combined flow has its tee loss faded out, so that the loss passes
 *  through zero with the flow: the published fits stop at a dead branch, where their values for the two directions do not meet. */
const fade = 0.01;

/** Branch and run K with their slopes over the flow ratio, written by the fits; kept so that nothing is allocated. */
const terms = new Float64Array(4);

/** Works out the tees' losses [m] at these flows into `extra`, and their own slopes [s/m2] into `slope`; legs only, other links are
 *  left as they are. A tee couples three flows, so its exact derivative is not symmetric; the legs' own rising share of it is the
 *  slope, and the rest is brought in by iteration within a step. */
export function teeLosses(tees: CompiledTees, flow: Float64Array, extra: Float64Array, slope: Float64Array): void {
  const { links, legs, inward } = tees;
  for (let i = 0; i < links.length; i++) {
    extra[links[i]] = 0;
    slope[links[i]] = 0;
  }
  for (let t = 0; t < tees.count; t++) {
    const k = 3 * t;
    const into0 = inward[k] * flow[legs[k]];
    const into1 = inward[k + 1] * flow[legs[k + 1]];
    const into2 = inward[k + 2] * flow[legs[k + 2]];
    const size0 = Math.abs(into0);
    const size1 = Math.abs(into1);
    const size2 = Math.abs(into2);
    const total = Math.max(size0, size1, size2);
    if (!(total > 1e-12)) continue;
    const unit = total * total * tees.velocityHead[t];
    // With all flow turning the corner the fits are taken at their end, all flow through the branch.
    const turning = size2 >= total * (1 - 1e-12);
    const run = size0 >= size1 ? k + 1 : k;
    const split = turning ? 1 : size2 / total;
    const dividing = turning ? into2 < 0 : (run === k + 1 ? into0 : into1) > 0;
    if (dividing) dividingTeeTerms(split, tees.areaRatio[t], terms);
    else combiningTeeTerms(split, tees.areaRatio[t], terms);
    addLoss(legs[k + 2], terms[0], terms[2], flow, total, unit, extra, slope);
    if (!turning) addLoss(legs[run], terms[1], -terms[3], flow, total, unit, extra, slope);
  }
}

function addLoss(
  link: number,
  coefficient: number,
  derivative: number,
  flow: Float64Array,
  total: number,
  unit: number,
  extra: Float64Array,
  slope: Float64Array,
): void {
  const q = flow[link];
  const width = fade * total;
  const root = 1 / Math.sqrt(q * q + width * width);
  extra[link] += q * root * coefficient * unit;
  const fading = coefficient * width * width * root * root * root;
  slope[link] += unit * (Math.max(0, derivative) / total + Math.max(0, fading));
}
