import { type Catalogue, findPump } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { toSI } from "@tidewright/units";
import { rank } from "../rank.ts";
import type { Candidate, Ranking } from "../ranking.ts";
import type { StartNote } from "./firstDesignResult.ts";
import type { Plan } from "./plan.ts";

/** Flow at full speed over the least that is wished: common practice, no source. */
const spare = 1.15;

/** The pump that was chosen, on a plan that may have a wider pipe or another place for it. */
export interface Choice {
  readonly plan: Plan;
  readonly notes: readonly StartNote[];
}

/** Returns the plan with the best ranked pump in it. What is asked for is given up in this order, each with a note: the pipe's size,
 *  one pump alone, its place in the sump, the budget.
 *  plan Plan without a pump   pipes ids of return pipe, preferred first   compose Plan -> Design   catalogue   -> Choice
 *  Source: `rank`. */
export function choosePump(
  plan: Plan,
  pipes: readonly string[],
  compose: (plan: Plan) => Design,
  catalogue: Catalogue,
): Choice {
  const bare: Plan = { ...plan, placed: "inSump" };
  const tries: { readonly pairs: boolean; readonly placed: Plan["placed"]; readonly budget: boolean }[] = [
    { pairs: false, placed: "inSump", budget: true },
    { pairs: true, placed: "inSump", budget: true },
    { pairs: false, placed: "external", budget: true },
    { pairs: false, placed: "inSump", budget: false },
    { pairs: true, placed: "inSump", budget: false },
    { pairs: true, placed: "external", budget: false },
  ];
  const budgeted = compose(bare).wishes.budget !== undefined;
  for (const { pairs, placed, budget } of tries) {
    if (!budget && !budgeted) continue;
    for (const series of pipes) {
      const tried: Plan = { ...bare, placed, line: { ...bare.line, series } };
      const design = compose(tried);
      const asked = budget ? design : withoutBudget(design);
      const best = bestOf(rank(asked, catalogue, { pairs }), asked);
      if (best === undefined) continue;
      const notes: StartNote[] = [];
      const count = best.pumpIds.length;
      if (count > 1) notes.push({ code: "pumpPair", weight: "care", at: "/loops/0/pumps", values: {} });
      if (placed === "external") notes.push({ code: "pumpOutside", weight: "care", at: "/loops/0/pumps", values: {} });
      if (!budget && design.wishes.budget)
        notes.push({
          code: "budgetShort",
          weight: "unmet",
          at: "/wishes/budget",
          values: {
            price: { si: best.price, dimension: "money" },
            budget: { si: toSI(design.wishes.budget, "money"), dimension: "money" },
          },
        });
      const ref = best.pumpIds[0] as string;
      const row = findPump(catalogue, ref);
      const controller = row?.control === "controllable" && row.controller !== undefined && !row.controller.included;
      return {
        plan: { ...tried, pump: { ref, speed: Number(best.speed.toFixed(4)), count, controller, placed } },
        notes,
      };
    }
  }
  return { plan: bare, notes: [{ code: "noPump", weight: "unmet", at: "/loops/0/pumps/0", values: {} }] };
}

/** The best ranked that keeps to the sound wished and has flow in hand for a furred pipe, else with less in hand, else the best ranked. */
function bestOf({ candidates, aim, wish: { low } }: Ranking, design: Design): Candidate | undefined {
  const sound = design.wishes.sound && toSI(design.wishes.sound, "soundLevel");
  const fine = candidates.filter(
    (candidate) =>
      candidate.placeOnCurve <= 0.95 &&
      candidate.placeOnCurve >= 0.1 &&
      (sound === undefined || candidate.soundLevel <= sound),
  );
  const inHand = (candidate: Candidate) => (1 + candidate.flowMargin) * aim >= spare * low;
  const flawless = fine.find(inHand) ?? fine[0];
  if (flawless !== undefined || sound === undefined) return flawless ?? candidates[0];
  return [...candidates].sort((a, b) => a.soundLevel - b.soundLevel)[0];
}

function withoutBudget(design: Design): Design {
  const { budget: _, ...wishes } = design.wishes;
  return { ...design, wishes };
}
