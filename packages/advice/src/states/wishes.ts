import type { Design } from "@tidewright/design";
import { toSI } from "@tidewright/units";

/** Wished return flow [m3/s]: a stated flow with 10 % either way, or the turnover range on the display's volume. */
export function returnFlowWish(
  design: Design,
  displayVolume: number,
): { low: number; aim: number; high: number } | undefined {
  const { returnFlow, returnTurnover } = design.wishes;
  if (returnFlow) {
    const aim = toSI(returnFlow, "flow");
    return { low: 0.9 * aim, aim, high: 1.1 * aim };
  }
  if (!returnTurnover) return undefined;
  const low = (toSI(returnTurnover[0], "turnover") * displayVolume) / 3600;
  const high = (toSI(returnTurnover[1], "turnover") * displayVolume) / 3600;
  return { low, aim: (low + high) / 2, high };
}
