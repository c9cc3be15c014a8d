import { overflowWeirFlow, overflowWeirHead } from "@tidewright/engine";
import type { Ground } from "./ground.ts";
import type { Plan } from "./plan.ts";
import { practice } from "./practice.ts";

/** A crest that carries a flow, and the head on it [m]. */
export interface CrestPlan {
  readonly weir: Plan["weir"];
  readonly head: number;
}

/** Returns the crest for a flow: as long as the lowest head asks for while it leaves most of the back wall free, else shorter under
 *  more head; its height leaves the freeboard over the water.
 *  ground Ground   flow [m3/s] the most that is wished   freeboard [m]   -> CrestPlan, SI. Source: engine `overflowWeirFlow`. */
export function layOverflow(ground: Ground, flow: number, freeboard: number): CrestPlan {
  const { weirHeads, toothOpenShare, boxShare, mostBoxShare } = practice;
  const per = (head: number) =>
    overflowWeirFlow({ length: 1, toothOpenShare, toothHeight: head, crestHeight: Number.POSITIVE_INFINITY }, head);
  const most = mostBoxShare * ground.length;
  const fitting = weirHeads.find((head) => flow / per(head) <= boxShare * ground.length);
  const length = fitting === undefined ? most : Math.max(0.1, flow / per(fitting));
  const rounded = Math.min(most, Math.ceil(length / 0.01) * 0.01);
  const plain = {
    length: rounded,
    toothOpenShare,
    toothHeight: 1,
    crestHeight: Number.POSITIVE_INFINITY,
  };
  const head = overflowWeirHead(plain, flow);
  const crest = Math.floor((ground.height - freeboard - head) * 1000) / 1000;
  // Water that tops the teeth takes fish and snails along.
  return { weir: { length: rounded, crest, toothHeight: Math.min(head + 0.006, ground.height - crest) }, head };
}
