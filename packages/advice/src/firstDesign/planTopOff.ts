import type { Catalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { fromSI, toSI } from "@tidewright/units";
import { tightMargin } from "../overTime/playScenario.ts";
import { transientModelOf } from "../overTime/transientModelOf.ts";
import { prepareSystem } from "../system/prepare.ts";
import { solveSystem } from "../system/solveSystem.ts";
import type { Ground } from "./ground.ts";
import type { Plan, TopOffPlan } from "./plan.ts";
import { practice } from "./practice.ts";

/** Share of the sump's room that is counted on: a fuller sump asks less of the return pump, and the display then holds a little less. */
const countedRoom = 0.95;

/** Returns what the air takes from a design in a day [m3].
 *  design Design   catalogue   -> m3. Source: engine `evaporationRate`, over display and sump as open water. */
export function evaporationPerDay(design: Design, catalogue: Catalogue): number {
  const system = prepareSystem(design, catalogue);
  const { evaporation } = transientModelOf(system, solveSystem(system), true).model;
  return evaporation.reduce((sum, { flow }) => sum + flow, 0) * 86400;
}

/** Returns the top-off for a plan: a reservoir for the days in hand, no larger than the running sump can take should it stick open, and
 *  a flow that makes good a day's loss in the time that is usual. A reservoir that was said stays as it is.
 *  ground Ground   plan Plan   compose Plan -> Design   catalogue   -> TopOffPlan; undefined where water is made good by hand
 *  Source: engine `evaporationRate`; days and time common practice, no source. */
export function planTopOff(
  ground: Ground,
  plan: Plan,
  compose: (plan: Plan) => Design,
  catalogue: Catalogue,
): TopOffPlan | undefined {
  if (!ground.topOff) return undefined;
  const { topOff: _, ...bare } = plan;
  const system = prepareSystem(compose(bare), catalogue);
  const { evaporation, vessels } = transientModelOf(system, solveSystem(system), true).model;
  const perDay = evaporation.reduce((sum, { flow }) => sum + flow, 0) * 86400;
  const room = vessels
    .filter(({ id }) => id.startsWith("sump."))
    .reduce((sum, { area, rim, startLevel }) => sum + area * Math.max(0, rim - tightMargin - startLevel), 0);
  const step = ground.us ? toSI({ value: 1, unit: "US gal" }, "volume") : 0.001;
  // Canisters and tanks come in fives once they are more than one can carry in a hand.
  const wished = inSteps(
    practice.reservoirDays * perDay,
    perDay * practice.reservoirDays > 20 * step ? 5 * step : step,
  );
  const holds = Math.max(step, Math.floor((countedRoom * room) / step) * step);
  const said = ground.answers.topOff?.reservoir;
  const flowStep = fromSI(perDay, "L", "volume") > 10 ? 5 * step : step;
  const reservoir = said ? toSI(said, "volume") : Math.min(wished, holds);
  return {
    reservoir,
    flow: inSteps((perDay / practice.topOffTime) * 3600, flowStep) / 3600,
    evaporationPerDay: perDay,
    boundBySump: said === undefined && holds < wished,
    fits: reservoir <= countedRoom * room,
  };
}

const inSteps = (value: number, step: number) => Math.max(1, Math.round(value / step)) * step;
