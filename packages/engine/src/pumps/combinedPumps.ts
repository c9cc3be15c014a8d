import { lastFlowAtSpeed, type PumpAtSpeed, pumpHeadAtSpeed } from "./pumpAtSpeed.ts";

/** Returns the flow of pumps in parallel at a common head: the sum of each pump's flow, none from a pump whose
 *  shut-off head is below it (its check valve is shut).
 *  pumps PumpAtSpeed[]   head [m]   -> flow [m3/s]
 *  Findings: none. Throws: never.
 *  Valid: each pump with its own check valve.
 *  Source: flows add at equal head; I. J. Karassik et al., Pump Handbook, 4th ed., section 2.1 (series and parallel operation).
 *  Example: parallelFlow([0, 1].map(() => pumpAtSpeed([{ speedRatio: 1, curve: pumpCurve([{ flow: 0, head: 4 }, { flow: 0.002, head: 0 }]) }], 1)), 3)  ->  0.002 */
export function parallelFlow(pumps: readonly PumpAtSpeed[], head: number): number {
  let flow = 0;
  for (const pump of pumps) flow += flowAtHead(pump, head);
  return flow;
}

/** Returns the head of pumps in series at a common flow: the sum of the heads, H = H1(Q) + H2(Q) + ...
 *  pumps PumpAtSpeed[]   flow [m3/s]   -> head [m]
 *  Findings: none. Throws: never.
 *  Valid: flow within each curve.
 *  Source: heads add at equal flow; Karassik et al., Pump Handbook, 4th ed., section 2.1.
 *  Example: seriesHead([0, 1].map(() => pumpAtSpeed([{ speedRatio: 1, curve: pumpCurve([{ flow: 0, head: 4 }, { flow: 0.002, head: 0 }]) }], 1)), 0.001)  ->  6 */
export function seriesHead(pumps: readonly PumpAtSpeed[], flow: number): number {
  let head = 0;
  for (const pump of pumps) head += pumpHeadAtSpeed(pump, flow);
  return head;
}

/** Flow at which one pump gives a head; zero at or above its shut-off head. Bisection: curves fall, so it cannot fail. */
function flowAtHead(pump: PumpAtSpeed, head: number): number {
  if (head >= pumpHeadAtSpeed(pump, 0)) return 0;
  let low = 0;
  let high = lastFlowAtSpeed(pump);
  for (let doubling = 0; doubling < 40 && pumpHeadAtSpeed(pump, high) > head; doubling++) high *= 2;
  for (let step = 0; step < 200 && high - low > 1e-15 * high; step++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (pumpHeadAtSpeed(pump, middle) > head) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
