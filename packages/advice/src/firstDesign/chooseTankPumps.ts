import type { Catalogue, PumpRow } from "@tidewright/catalogue";
import { pumpHydraulics } from "@tidewright/design";
import { lastFlowAtSpeed, pumpAtSpeed } from "@tidewright/engine";
import { toSI } from "@tidewright/units";
import { soundAtSpeed } from "../states/pumpStates.ts";
import type { StartNote } from "./firstDesignResult.ts";
import type { Ground } from "./ground.ts";
import type { Plan } from "./plan.ts";

/** What stream pumps have to bring, and what they may cost and sound like. */
export interface StreamWish {
  /** Least, aimed and most flow of all stream pumps together [m3/s]. */
  readonly low: number;
  readonly aim: number;
  readonly high: number;
  /** Money that is left for them; Infinity where no budget is said [EUR]. */
  readonly money: number;
}

/** Returns stream pumps that bring the movement the animals are wont to, the cheapest that fit, alike and mostly in pairs; none where the
 *  return brings it already.
 *  ground Ground   catalogue   wish StreamWish, SI   -> stream pumps and notes
 *  Source: the maker's curve at no head; affinity Q ~ n. */
export function chooseTankPumps(
  ground: Ground,
  catalogue: Catalogue,
  wish: StreamWish,
): { readonly tankPumps: Plan["tankPumps"]; readonly notes: readonly StartNote[] } {
  if (wish.low <= 0) return { tankPumps: [], notes: [] };
  const voltage = toSI(ground.voltage, "voltage");
  const sound = ground.answers.wishes?.sound && toSI(ground.answers.wishes.sound, "soundLevel");
  const fits: { row: PumpRow; count: number; speed: number; cost: number; price: number }[] = [];
  for (const row of catalogue.pumps) {
    if (!row.placements.includes("inTank")) continue;
    if (row.voltage > 60 && Math.abs(row.voltage - voltage) > 0.15 * voltage) continue;
    const full = lastFlowAtSpeed(pumpAtSpeed(pumpHydraulics(row).head, 1));
    for (const count of [1, 2, 4, 6]) {
      const ratio = wish.aim / (count * full);
      const controllable = row.control === "controllable";
      const speed = controllable ? Math.min(1, Math.max(row.minimumSpeed, ratio)) : 1;
      const flow = count * full * speed;
      if (flow < wish.low || flow > wish.high) continue;
      const level = soundAtSpeed(row, speed) + 10 * Math.log10(count);
      const extra = row.controller && !row.controller.included ? (row.controller.price ?? 0) : 0;
      const price = count * (row.price + extra);
      // Water from one end alone leaves a still end behind it in all but a short tank.
      const lonely = count === 1 && ground.length > 0.7 ? 60 : 0;
      const loud = sound !== undefined && level > sound - 2 ? 300 : 0;
      fits.push({ row, count, speed, price, cost: price + lonely + loud + 20 * Math.max(0, count - 2) });
    }
  }
  const affordable = fits.filter((fit) => fit.price <= wish.money).sort((a, b) => a.cost - b.cost);
  const best = affordable[0];
  if (best !== undefined) {
    const speed = Number(best.speed.toFixed(2));
    return { tankPumps: Array.from({ length: best.count }, () => ({ ref: best.row.id, speed })), notes: [] };
  }
  const code = fits.length > 0 ? ("budgetLeavesNoStream" as const) : ("noStreamPump" as const);
  return {
    tankPumps: [],
    notes: [
      { code, weight: "unmet", at: "/wishes/totalTurnover", values: { flow: { si: wish.aim, dimension: "flow" } } },
    ],
  };
}
