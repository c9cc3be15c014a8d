import type { Curve } from "@tidewright/advice";

/** Returns the curve of several pumps as one.
 *  curves of the pumps [m3/s, m]   arrangement parallel or series   -> curve [m3/s, m]
 *  Findings: none. Throws: never.
 *  Valid: heads that fall with flow. In parallel a pump whose shut-off head is exceeded gives nothing.
 *  Source: analytic: flows add at equal head, heads add at equal flow.
 *  Example: combinedCurve([{ flow: [0, 1], head: [4, 0] }, { flow: [0, 1], head: [4, 0] }], "parallel").flow[1]  ->  2 */
export function combinedCurve(curves: readonly Curve[], arrangement: "parallel" | "series"): Curve {
  if (curves.length === 1) return curves[0]!;
  if (arrangement === "series") {
    const shortest = Math.min(...curves.map((curve) => curve.flow.at(-1) ?? 0));
    const flow = (curves[0]?.flow ?? []).filter((q) => q < shortest).concat(shortest);
    return { flow, head: flow.map((q) => curves.reduce((sum, curve) => sum + headAt(curve, q), 0)) };
  }
  const levels = [...new Set(curves.flatMap((curve) => [...curve.head]))].sort((a, b) => b - a);
  const lowest = Math.max(...curves.map((curve) => curve.head.at(-1) ?? 0));
  const head = levels.filter((level) => level >= lowest);
  return { flow: head.map((level) => curves.reduce((sum, curve) => sum + flowAt(curve, level), 0)), head };
}

/** Returns the head of a curve at a flow, straight between its points and held beyond its ends.
 *  curve [m3/s, m]   flow [m3/s]   -> head [m]
 *  Findings: none. Throws: never.
 *  Valid: flows that rise along the curve.
 *  Source: linear interpolation.
 *  Example: headAt({ flow: [0, 2], head: [4, 0] }, 0.5)  ->  3 */
export function headAt(curve: Curve, flow: number): number {
  return between(curve.flow, curve.head, flow);
}

function flowAt(curve: Curve, head: number): number {
  if (head > (curve.head[0] ?? 0)) return 0;
  return between([...curve.head].reverse(), [...curve.flow].reverse(), head);
}

function between(xs: readonly number[], ys: readonly number[], x: number): number {
  if (xs.length === 0) return 0;
  let i = 1;
  while (i < xs.length - 1 && x > xs[i]!) i++;
  const [a, b] = [xs[i - 1]!, xs[i] ?? xs[i - 1]!];
  const t = b > a ? Math.min(1, Math.max(0, (x - a) / (b - a))) : 0;
  return ys[i - 1]! + ((ys[i] ?? ys[i - 1]!) - ys[i - 1]!) * t;
}
