import type { Design, Drain, Loop, Part } from "@tidewright/design";
import { fromSI, type Quantity, toSI } from "@tidewright/units";
import type { Ground } from "./ground.ts";
import { siphonOf } from "./laySiphon.ts";
import type { DrainPlan, Plan, TopOffPlan } from "./plan.ts";
import { practice } from "./practice.ts";

/** Returns the document of a plan: what was said stays as it was said, the rest in the customer's kind of units.
 *  ground Ground   plan Plan, SI   -> Design. Source: geometry. */
export function composeDesign(ground: Ground, plan: Plan): Design {
  const { answers, at, us } = ground;
  const { tank, wishes } = answers;
  const perHour = (value: number): Quantity => ({ value: Number(value.toPrecision(3)), unit: "1/h" });
  const { sump } = plan;
  const siphon = plan.siphon && siphonOf(ground, plan, plan.siphon);
  const floor = boxFloorOf(ground, plan);
  return {
    tidewright: 1,
    name: answers.name?.trim() || "First design",
    water: {
      salinity: { value: 35, unit: "ppt" },
      temperature: us ? { value: 78, unit: "F" } : { value: 25.5, unit: "C" },
    },
    display: {
      length: at(ground.length, tank.length),
      width: at(ground.width, tank.width),
      height: at(ground.height, tank.height),
      standHeight: at(ground.stand, answers.standHeight),
      rockShare: ground.rockShare,
      zones: ground.groups.map((animals) => ({
        name: ground.groups.length === 1 ? "whole tank" : animals,
        animals,
        share: Math.floor(1000 / ground.groups.length) / 1000,
      })),
    },
    overflow: {
      ...(siphon === undefined ? { kind: "internalBox" } : { kind: "hangOn", siphon }),
      weir: {
        length: at(plan.weir.length),
        crest: at(plan.weir.crest),
        toothOpenShare: practice.toothOpenShare,
        toothHeight: at(plan.weir.toothHeight),
      },
      box: {
        length: at(plan.box.length),
        width: at(plan.box.width),
        floor: at(floor),
        rim: siphon === undefined ? at(ground.height, tank.height) : at(ground.height + practice.boxOverRim),
        ...(siphon === undefined ? {} : { at: { wall: "back", along: at(0) } }),
      },
    },
    drains: plan.drains.map((drain) => composeDrain(ground, drain, drainLevel(plan), floor)),
    sump: {
      floor: at(practice.sumpFloor),
      height: at(sump.height, answers.sump?.height),
      chambers: chambersOf(ground, plan),
      operatingLevel: at(sump.operating),
    },
    ...(plan.topOff === undefined ? {} : { topOff: composeTopOff(ground, plan.topOff) }),
    loops: [composeReturn(ground, plan)],
    ...(plan.tankPumps.length === 0 ? {} : { tankPumps: composeTankPumps(ground, plan) }),
    power: {
      voltage: ground.voltage,
      frequency: ground.frequency,
      tariff: ground.tariff,
      circuits: plan.otherLoads.map((load, i) => ({
        name: i === 0 ? "pumps" : plan.otherLoads.length === 2 ? "heaters and light" : `heaters and light ${i}`,
        rating: ground.circuit,
        otherLoad: { value: Math.round(load / 5) * 5, unit: "W" },
      })),
    },
    wishes: {
      returnTurnover: [perHour(plan.returnTurnover[0]), perHour(plan.returnTurnover[1])],
      totalTurnover: [perHour(ground.totalTurnover[0]), perHour(ground.totalTurnover[1])],
      ...(wishes?.budget === undefined ? {} : { budget: wishes.budget }),
      ...(wishes?.sound === undefined ? {} : { sound: wishes.sound }),
      horizon: ground.horizon,
    },
  };
}

/** A reservoir as it was said, or in whole litres or gallons; the flow in those units an hour. */
function composeTopOff({ answers, us }: Ground, { reservoir, flow }: TopOffPlan): NonNullable<Design["topOff"]> {
  const unit = us ? "US gal" : "L";
  const whole = (si: number) => Math.round(fromSI(si, unit, "volume"));
  return {
    reservoir: answers.topOff?.reservoir ?? { value: whole(reservoir), unit },
    flow: { value: whole(flow * 3600), unit: `${unit}/h` },
  };
}

/** Heights of the two baffles above the sump's floor [m]: the last stands over the operating level, the first over the last. */
function bafflesOf({ sump }: Pick<Plan, "sump">): readonly [number, number] {
  const last = Math.min(sump.operating + 0.035, sump.height - 0.06);
  return [Math.min(last + 0.02, sump.height - 0.04), last];
}

/** Level of the drain chamber above the sump's floor, near enough for lengths of pipe [m]. */
function drainLevel(plan: Plan): number {
  return bafflesOf(plan)[0] + 0.02;
}

function chambersOf({ at, answers }: Ground, { sump }: Plan): Design["sump"]["chambers"] {
  const baffles = bafflesOf({ sump });
  const width = at(sump.width, answers.sump?.width);
  return [
    { id: "drain", name: "drain", length: at(sump.length * practice.chamberShares[0]), width, baffle: at(baffles[0]) },
    {
      id: "skimmer",
      name: "skimmer",
      length: at(sump.length * practice.chamberShares[1]),
      width,
      baffle: at(baffles[1]),
    },
    { id: "return", name: "return", length: at(sump.length * practice.chamberShares[2]), width },
  ];
}

/** Floor of the box above the display's [m]: on it where the box stands inside, under the ends of the tubes where it hangs outside. */
function boxFloorOf(ground: Ground, plan: Pick<Plan, "weir" | "drains" | "siphon">): number {
  if (plan.siphon === undefined) return 0;
  return toSI(siphonOf(ground, plan, plan.siphon).mouth, "length") - practice.underMouth;
}

/** Returns a drain of the plan as the document has it.
 *  ground Ground   drain DrainPlan   level of the drain chamber [m above the sump's floor]   floor of the box [m above the
 *  display's]   -> Drain. Source: geometry. */
export function composeDrain({ at, stand }: Ground, drain: DrainPlan, level: number, floor = 0): Drain {
  // Beside a tank that stands on the floor there is next to no fall below its floor.
  const fall = stand + floor - practice.sumpFloor - level;
  const { series } = drain;
  const open = drain.kind !== "throttledSiphon";
  const valve: Part[] = open ? [] : [{ kind: "valve", valve: "gate", opening: 0.5 }];
  const drop = Math.round(fall * 1000) / 1000;
  const run: Part[] = [
    { kind: "pipe", series, length: at(drain.inlet - floor), rise: negative(at(drain.inlet - floor)) },
    { kind: "fitting", fitting: "bulkhead" },
    { kind: "fitting", fitting: "union" },
    ...valve,
    { kind: "pipe", series, length: at(Math.abs(drop) + 0.15), rise: negative(at(drop)) },
    { kind: "fitting", fitting: "elbow45", count: 2 },
    // A siphon must end under water, or air comes back up; the dry pipe ends above it, where it is heard.
    { kind: "outlet", to: "sump.drain", depth: at(drain.role === "emergency" ? -0.02 : 0.025) },
  ];
  return {
    name: drain.name,
    role: drain.role,
    kind: drain.kind,
    inlet: { elevation: at(drain.inlet), ...(drain.rim === undefined ? {} : { diameter: at(drain.rim) }) },
    ...(drain.share === undefined ? {} : { share: drain.share }),
    run,
  };
}

const negative = ({ value, unit }: Quantity): Quantity => ({ value: value === 0 ? 0 : -value, unit });

function composeReturn(ground: Ground, plan: Plan): Loop {
  const { at } = ground;
  const { line, pump } = plan;
  const { series } = line;
  const rise = ground.stand + ground.height + 0.03 - practice.sumpFloor - 0.1;
  const count = pump?.count ?? 1;
  const placed = pump?.placed ?? plan.placed;
  const one: Loop["pumps"][number] = {
    ...(pump === undefined ? {} : { ref: pump.ref }),
    placed,
    speed: pump?.speed ?? 1,
    ...(pump?.controller ? { controller: true } : {}),
    ...(count > 1 ? { checkValve: true } : {}),
    ...(placed === "external" ? { elevation: at(practice.sumpFloor + 0.05) } : {}),
  };
  return {
    name: "return",
    purpose: "return",
    from: { place: "sump.return", depth: at(line.intake) },
    ...(placed === "external"
      ? {
          suction: [
            { kind: "fitting", fitting: "bulkhead" },
            { kind: "valve", valve: "ball", opening: 1 },
            { kind: "pipe", series, length: at(0.3) },
          ] satisfies Part[],
        }
      : {}),
    pumps: Array.from({ length: count }, () => ({ ...one })),
    run: [
      { kind: "pipe", series, length: at(rise + ground.horizontal), rise: at(rise) },
      { kind: "fitting", fitting: "union" },
      ...(ground.elbows > 0 ? ([{ kind: "fitting", fitting: "elbow90", count: ground.elbows }] satisfies Part[]) : []),
      { kind: "pipe", series, length: at(0.2), rise: negative(at(0.06)) },
      { kind: "outlet", to: "display", depth: at(line.nozzleDepth), siphonBreak: at(line.siphonBreak) },
    ],
  };
}

/** Stream pumps in pairs at both ends, a third of the height below the surface, towards each other. */
function composeTankPumps(
  { at, length, width, height, hangOn }: Ground,
  { tankPumps }: Plan,
): NonNullable<Design["tankPumps"]> {
  // Clear of a box inside, from whichever wall that is looked at.
  const near = hangOn ? Math.min(0.16, length / 4) : 0.05;
  return tankPumps.map(({ ref, speed }, i) => {
    const left = i % 2 === 0;
    const row = Math.floor(i / 2) + 1;
    const rows = Math.ceil(tankPumps.length / 2);
    return {
      ref,
      ...(speed < 1 ? { speed } : {}),
      at: [at(left ? near : length - 0.05), at((width * row) / (rows + 1)), at(height * 0.65)],
      aim: { yaw: { value: left ? 0 : 180, unit: "deg" }, pitch: { value: 0, unit: "deg" } },
    };
  });
}
