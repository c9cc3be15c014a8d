import type { PumpRow } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { circuitCurrent } from "@tidewright/engine";
import { toSI } from "@tidewright/units";
import { limits } from "../findings/limits.ts";
import type { Reason } from "../ranking.ts";
import type { CircuitLoad } from "./circuitLoad.ts";
import type { LoopWish } from "./loopWish.ts";
import type { Unmarked } from "./paretoFront.ts";

/** What a loop asks of its pumps. */
export interface Context {
  readonly design: Design;
  readonly loop: number;
  readonly purpose: "return" | "closed" | "side";
  readonly voltage: number;
  /** What may go over the weir before the box runs over [m3/s]. */
  readonly drainLimit: number;
  /** The first circuit without this loop's pumps, if any is described. */
  readonly circuit: CircuitLoad | undefined;
}

/** What is wished of the loop's own flow with a pump in it, and what other loops bring besides [m3/s]. */
export interface Wish {
  readonly low: number;
  readonly aim: number;
  readonly high: number;
  readonly others: number;
  /** Who wishes it: the design, or where it does not, as of `loopWish`. */
  readonly from: "wish" | LoopWish["from"];
}

/** Causes that rule a pump out before it is put into the system. */
export function rejectionsFor(row: PumpRow, context: Context): Reason[] {
  const causes: Reason[] = [];
  const placed = context.design.loops[context.loop]?.pumps[0]?.placed ?? "inSump";
  if (!row.placements.includes(placed))
    causes.push({ code: row.placements.every((place) => place === "inTank") ? "in-tank-pump" : "wrong-place" });
  if (row.voltage > 60 && Math.abs(row.voltage - context.voltage) > 0.15 * context.voltage)
    causes.push({ code: "wrong-voltage", value: row.voltage, limit: context.voltage, dimension: "voltage" });
  return causes;
}

/** What speaks for and against a candidate, what rules it out after all, and how many flaws it has. */
export function reasonsFor(
  candidate: Unmarked,
  row: PumpRow,
  wish: Wish,
  context: Context,
): { reasons: Reason[]; out: Reason[]; flaws: number } {
  const reasons: Reason[] = [];
  const out: Reason[] = [];
  let flaws = 0;
  const flaw = (reason: Reason) => {
    reasons.push(reason);
    flaws++;
  };
  const { design } = context;
  const flow = candidate.flowToDisplay;
  const reached = context.purpose === "return" ? flow : candidate.flow;
  // The allowance is of all the water that goes over the weir, as in an assessment.
  const { others } = wish;
  if (wish.from === "nobody") reasons.push({ code: "no-wish", value: reached, dimension: "flow" });
  else if (reached < wish.low - 0.001 * (wish.low + others)) out.push(flowReason("below-wish", reached, wish.low));
  else if (reached > wish.high + 0.001 * (wish.high + others)) out.push(flowReason("above-wish", reached, wish.high));
  else if (Math.abs(reached - wish.aim) <= 0.02 * wish.aim) reasons.push(flowReason("meets-aim", reached, wish.aim));
  else reasons.push(flowReason("within-wish", reached, wish.aim));
  if (wish.from === "movement") reasons.push({ code: "lacking-movement", value: wish.aim, dimension: "flow" });
  if (context.purpose === "return" && flow + others > context.drainLimit)
    out.push({ code: "drain-cannot-carry", value: flow, limit: context.drainLimit - others, dimension: "flow" });
  const { circuit } = context;
  if (circuit) {
    const current = circuit.others + circuitCurrent(candidate.watts, context.voltage, row.powerFactor);
    if (current > circuit.limit)
      out.push({ code: "circuit-overload", value: current, limit: circuit.limit, dimension: "current" });
  }
  const budget = design.wishes.budget;
  if (budget && budget.unit === "EUR" && candidate.price > toSI(budget, "money"))
    out.push({ code: "over-budget", value: candidate.price, limit: toSI(budget, "money"), dimension: "money" });
  if (candidate.placeOnCurve > 1 + 1e-9)
    flaw({ code: "beyond-curve", value: candidate.placeOnCurve, limit: 1, dimension: "ratio" });
  else if (candidate.placeOnCurve > limits.nearRunout.value)
    flaw({ code: "near-runout", value: candidate.placeOnCurve, limit: limits.nearRunout.value, dimension: "ratio" });
  if (candidate.placeOnCurve < limits.nearShutoff.value)
    flaw({ code: "near-shutoff", value: candidate.placeOnCurve, limit: limits.nearShutoff.value, dimension: "ratio" });
  const sound = design.wishes.sound ? toSI(design.wishes.sound, "soundLevel") : undefined;
  if (sound !== undefined && candidate.soundLevel > sound)
    flaw({ code: "over-sound", value: candidate.soundLevel, limit: sound, dimension: "soundLevel" });
  if (candidate.extras.length > 0)
    reasons.push({ code: "needs-controller", value: candidate.extras[0]?.price ?? 0, dimension: "money" });
  if (candidate.placeOnCurve > 0.35 && candidate.placeOnCurve < 0.8)
    reasons.push({ code: "efficient-point", value: candidate.efficiency, dimension: "ratio" });
  if (candidate.flowMargin > 0.1 && row.control === "controllable")
    reasons.push({ code: "spare-flow", value: candidate.flowMargin, dimension: "ratio" });
  if (candidate.arrangement === "parallel") reasons.push({ code: "two-pumps-redundant" });
  return { reasons, out, flaws };
}

function flowReason(code: Reason["code"], value: number, limit: number): Reason {
  return { code, value, dimension: "flow", limit };
}
