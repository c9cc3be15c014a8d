import { hangOnModel, usualSiphon } from "@tidewright/design";
import { hangOnSiphonHead, seaWater } from "@tidewright/engine";
import type { Ground } from "./ground.ts";
import type { DrainPlan, Plan } from "./plan.ts";
import { practice } from "./practice.ts";

const water = seaWater(35, 25.5);
const millimetres = (si: number) => ({ value: si * 1000, unit: "mm" });

/** Returns the siphon of a plan as the document has it: mouths below the lowest drain, a crest just over the rim.
 *  ground Ground   plan of weir, drains and siphon   -> OverflowSiphon. Source: `usualSiphon`. */
export function siphonOf(
  ground: Ground,
  { weir, drains }: Pick<Plan, "weir" | "drains">,
  { tubes, bore }: NonNullable<Plan["siphon"]>,
) {
  return usualSiphon(
    {
      display: { height: millimetres(ground.height) },
      overflow: { weir: { length: ground.at(weir.length), crest: millimetres(weir.crest) } },
      drains: drains.map(({ inlet }) => ({ inlet: { elevation: millimetres(inlet) } })),
    },
    tubes,
    bore,
  );
}

/** Returns tubes that carry a flow while the box inside stays below the crest: of those the narrowest, whose fast water takes bubbles
 *  along; two where two will do, one of them a spare of a sort. The widest and most where none is wide enough.
 *  ground Ground   weir, drains of the plan   flow the most that is wished [m3/s]   -> tubes and their bore [m]
 *  Source: engine `hangOnSiphonHead`. */
export function laySiphon(
  ground: Ground,
  weir: Plan["weir"],
  drains: readonly DrainPlan[],
  flow: number,
): NonNullable<Plan["siphon"]> {
  // The box outside runs up to the dry inlet; with one pipe alone as far above its rim as it takes to carry the flow.
  const spare = drains.find((drain) => drain.role === "emergency");
  const running = spare ? spare.inlet - practice.dryGap : weir.crest - 0.05;
  const allowed = weir.crest - running - practice.siphonFall;
  for (const tubes of practice.siphonTubes)
    for (const bore of practice.siphonBores) {
      const siphon = siphonOf(ground, { weir, drains }, { tubes, bore });
      const model = hangOnModel({ ...shell, siphon }, 0, "crane");
      if (model && hangOnSiphonHead(model.tubes, flow, water) <= allowed) return { tubes, bore };
    }
  return { tubes: practice.siphonTubes.at(-1) as number, bore: practice.siphonBores.at(-1) as number };
}

const none = millimetres(0);
/** What of an overflow its siphon does not ask about. */
const shell = {
  kind: "hangOn" as const,
  weir: { length: none, crest: none },
  box: { length: none, width: none, floor: none, rim: none },
};
