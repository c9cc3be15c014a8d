import { type Catalogue, findPipeSeries, type PipeSeries } from "@tidewright/catalogue";
import { drainModel } from "@tidewright/design";
import {
  type DrainLine,
  drainPractice,
  froudeFlow,
  quietFroude,
  seaWater,
  siphonFlow,
  standpipeFlow,
  ventedStackFlow,
} from "@tidewright/engine";
import { limits } from "../findings/limits.ts";
import { composeDrain } from "./composeDesign.ts";
import type { Assumed, Ground } from "./ground.ts";
import type { DrainPlan } from "./plan.ts";
import { holeOfPipe, ownReckoning, pipeOfHole, practice } from "./practice.ts";

/** Drains as laid out, and what they can take [m3/s]. */
export interface DrainLayout {
  readonly drains: readonly DrainPlan[];
  /** Without noise; at least the aimed flow where a size for it was found. */
  readonly quiet: number;
  /** At all, as the trade reckons. */
  readonly carries: number;
  /** What the dry spare takes below the crest; the flow where there is none. */
  readonly spare: number;
  readonly assumed: readonly Assumed[];
}

const water = seaWater(35, 25.5);
const viscosity = { kinematicViscosity: water.kinematicViscosity };
const quietOf = (bore: number) => Math.min(froudeFlow(quietFroude, bore), ventedStackFlow(bore));
const { quietFroude: quietLimit, siphon: siphonLimit } = limits;
const shaftSource = "rim weir and drowned throat of a standpipe: USBR, Design of Small Dams";

/** Returns the drains for a flow, each sized by its own rating on this very line: siphon with reserve, open channel and vented pipe
 *  within their quiet capacity, a dry spare that takes everything below the crest.
 *  ground Ground   catalogue Catalogue   crest [m above the display's floor]   flow aim and most that is wished [m3/s]   sump level of
 *  the drain chamber [m above the sump's floor]   -> DrainLayout. Source: engine overflow, each function with its own. */
export function layDrains(
  ground: Ground,
  catalogue: Catalogue,
  crest: number,
  flow: { readonly aim: number; readonly high: number },
  sumpLevel: number,
): DrainLayout {
  const sizes = sizesOf(ground, catalogue);
  const assumed: Assumed[] = [];
  /** The line as the engine rates it; heights above the display's floor become heights above the room's floor. */
  const line = (plan: DrainPlan): DrainLine => ({
    ...drainModel(composeDrain(ground, plan, sumpLevel), 0, catalogue, "crane", ground.stand).line,
    outletElevation: practice.sumpFloor + sumpLevel,
  });
  const standing = (plan: DrainPlan, level: number) => standpipeFlow(line(plan), ground.stand + level, viscosity).flow;
  const sized = (i: number, key: Assumed["key"], series: PipeSeries, values: Assumed["values"], source: string) => {
    const fixed = ground.hole !== undefined;
    assumed.push({
      path: `/drains/${i}/run/0/series`,
      key: fixed ? "holePipe" : key,
      values: { ...values, hole: { si: ground.hole ?? holeOfPipe(series.outerDiameter), dimension: "length" } },
      ...(fixed ? {} : { source }),
    });
  };
  const asFlow = (si: number) => ({ si, dimension: "flow" }) as const;

  // The dry spare first: it decides how deep all the others lie.
  const spare = ground.layout === "one" ? undefined : spareOf(sizes, crest, flow.high, standing);
  const running = spare ? spare.plan.inlet - practice.dryGap : crest - 0.05;
  /** Height of a rim over which a flow runs with the water at the running level. */
  const under = (plan: DrainPlan, wanted: number): number => {
    let low = Math.max(0.01, running - 0.25);
    let high = running;
    if (standing({ ...plan, inlet: low }, running) < wanted) return low;
    for (let i = 0; i < 30; i++) {
      const middle = (low + high) / 2;
      if (standing({ ...plan, inlet: middle }, running) >= wanted) low = middle;
      else high = middle;
    }
    return low;
  };

  if (ground.layout !== "three") {
    const series = sizes.find((size) => quietOf(size.innerDiameter) >= flow.aim) ?? (sizes.at(-1) as PipeSeries);
    const quiet = quietOf(series.innerDiameter);
    const carries = 0.95 * drainPractice(series.innerDiameter).flow;
    const plan: DrainPlan = {
      name: "drain",
      role: "main",
      kind: "ventedStandpipe",
      series: series.id,
      inlet: running,
    };
    const inlet = under(plan, Math.min(flow.high, carries));
    sized(0, "ventedSize", series, { flow: asFlow(flow.aim), quiet: asFlow(quiet) }, quietLimit.source);
    assumed.push({ path: "/drains/0/inlet/elevation", key: "ventedInlet", source: shaftSource });
    if (spare) sayDry(1, spare);
    return {
      drains: [{ ...plan, inlet }, ...(spare ? [spare.plan] : [])],
      quiet,
      carries,
      spare: spare?.flow ?? flow.high,
      assumed,
    };
  }

  const siphonAt = (series: PipeSeries) =>
    siphonFlow(
      {
        ...line({ name: "", role: "main", kind: "throttledSiphon", series: series.id, inlet: running - 0.1 }),
        valveLoss: 0,
      },
      ground.stand + running,
      viscosity,
    );
  const siphon =
    sizes.find((size) => siphonAt(size) >= practice.siphonReserve * flow.high) ?? (sizes.at(-1) as PipeSeries);
  const capacity = siphonAt(siphon);
  // The open channel no wider than the siphon if a larger share through the siphon allows it.
  const reach = sizes.indexOf(siphon);
  let share: number = practice.siphonShares[0];
  let open = sizes.at(-1) as PipeSeries;
  search: for (const wider of [0, 1, 2, sizes.length])
    for (const each of practice.siphonShares) {
      const found = sizes.find(
        (size, i) => i <= reach + wider && quietOf(size.innerDiameter) >= (1 - each) * flow.high,
      );
      share = each;
      if (found === undefined) continue;
      open = found;
      break search;
    }
  const channel: DrainPlan = {
    name: "open channel",
    role: "secondary",
    kind: "openChannel",
    series: open.id,
    inlet: running,
  };
  const channelInlet = under(channel, (1 - share) * flow.high);
  const cover = Math.max(practice.siphonCover, 1.5 * siphon.innerDiameter);
  const siphonInlet = Math.max(0.02, Math.min(channelInlet - 0.02, running - cover));
  sized(
    0,
    "siphonSize",
    siphon,
    { flow: asFlow(flow.high), capacity: asFlow(capacity), reserve: practice.siphonReserve },
    siphonLimit.source,
  );
  assumed.push({ path: "/drains/0/share", key: "siphonShare" });
  assumed.push({ path: "/drains/0/inlet/elevation", key: "siphonInlet" });
  sized(
    1,
    "openChannelSize",
    open,
    { flow: asFlow((1 - share) * flow.high), quiet: asFlow(quietOf(open.innerDiameter)) },
    quietLimit.source,
  );
  assumed.push({ path: "/drains/1/inlet/elevation", key: "openChannelInlet", source: shaftSource });
  if (spare) sayDry(2, spare);
  return {
    drains: [
      {
        name: "siphon",
        role: "main",
        kind: "throttledSiphon",
        series: siphon.id,
        inlet: siphonInlet,
        share,
      },
      { ...channel, inlet: channelInlet },
      ...(spare ? [spare.plan] : []),
    ],
    quiet: Math.min(capacity / 1.1, quietOf(open.innerDiameter) / (1 - share)),
    carries: capacity / 1.1,
    spare: spare?.flow ?? flow.high,
    assumed,
  };

  function sayDry(i: number, dry: { readonly series: PipeSeries; readonly flow: number }): void {
    sized(i, "emergencySize", dry.series, { flow: asFlow(flow.high), capacity: asFlow(dry.flow) }, shaftSource);
    assumed.push({
      path: `/drains/${i}/inlet/elevation`,
      key: "emergencyInlet",
      values: { gap: { si: practice.dryGap, dimension: "length" } },
      source: ownReckoning,
    });
  }
}

/** The dry spare that takes a flow with the box no higher than the crest: small pipe before long fall before wide rim. */
function spareOf(
  sizes: readonly PipeSeries[],
  crest: number,
  flow: number,
  standing: (plan: DrainPlan, level: number) => number,
): { readonly plan: DrainPlan; readonly flow: number; readonly series: PipeSeries } {
  let best: { plan: DrainPlan; flow: number; series: PipeSeries; cost: number } | undefined;
  for (const fall of practice.dryFalls) {
    if (crest - fall < 0.1) break;
    for (const [i, series] of sizes.entries())
      for (const wide of [false, true]) {
        const plan: DrainPlan = {
          name: "emergency",
          role: "emergency",
          kind: "dryStandpipe",
          series: series.id,
          inlet: crest - fall,
          ...(wide ? { rim: 1.4 * series.innerDiameter } : {}),
        };
        const takes = standing(plan, crest);
        // What cannot take the flow counts by what it lacks.
        const lacks = takes >= flow ? 0 : 100 * (1 - takes / flow) + 100;
        const cost = lacks + i + fall / 0.025 + (wide ? 0.5 : 0);
        if (best === undefined || cost < best.cost) best = { plan, flow: takes, series, cost };
      }
  }
  return best as { plan: DrainPlan; flow: number; series: PipeSeries };
}

/** Pipe sizes of the customer's kind, small to large: the one that a hole takes, or all that are usual for a drain of such a tank. */
function sizesOf(ground: Ground, catalogue: Catalogue): PipeSeries[] {
  const family = ground.us ? "sch40" : "pn16";
  const all = catalogue.pipeSeries.filter((series) => series.family === family);
  if (ground.hole !== undefined) {
    const outer = pipeOfHole(ground.hole) + 0.001;
    const fitting = all.filter((series) => series.outerDiameter <= outer).at(-1) ?? all[0];
    return [fitting as PipeSeries];
  }
  const volume = ground.length * ground.width * ground.height;
  const widest = volume < 0.25 ? 0.051 : volume < 0.7 ? 0.064 : volume < 1.5 ? 0.09 : 0.115;
  return all.filter((series) => series.outerDiameter >= 0.0249 && series.outerDiameter <= widest);
}

/** Returns the box that a crest and its drains ask for [m]: as long as the crest, and room for bulkheads side by side.
 *  drains DrainPlan[]   crest length [m]   tank length and width [m]   -> length and width of the box */
export function boxFor(
  drains: readonly DrainPlan[],
  crestLength: number,
  tank: { readonly length: number; readonly width: number },
): { readonly length: number; readonly width: number } {
  const outer = drains.map((drain) => findPipeSeries(drain.series)?.outerDiameter ?? 0.05);
  const widest = Math.max(...outer);
  const row = outer.reduce((sum, each) => sum + 1.9 * each, 0.03);
  return {
    length: Math.min(0.9 * tank.length, Math.max(crestLength, Math.ceil(row / 0.01) * 0.01)),
    width: Math.min(0.4 * tank.width, Math.max(0.1, Math.ceil((1.7 * widest + 0.03) / 0.01) * 0.01)),
  };
}
