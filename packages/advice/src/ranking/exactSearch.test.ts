import { readdirSync, readFileSync } from "node:fs";
import { demoCatalogue, type PumpRow } from "@tidewright/catalogue";
import { type Design, pumpHydraulics, readDesign } from "@tidewright/design";
import { annualCost, lastFlowAtSpeed, secondsPerYear } from "@tidewright/engine";
import { fromSI, toSI } from "@tidewright/units";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import type { Assessment } from "../assessment.ts";
import { rank } from "../rank.ts";
import type { ReasonCode } from "../ranking.ts";

const root = new URL("../../../../examples/", import.meta.url);
const files = ["", "golden/"].flatMap((folder) =>
  readdirSync(new URL(folder || ".", root)).flatMap((name) => (name.endsWith(".json") ? [folder + name] : [])),
);

function read(file: string): Design {
  const reading = readDesign(readFileSync(new URL(file, root), "utf8"), demoCatalogue);
  if (!reading.ok) throw new Error(`${file} cannot be read`);
  return reading.design;
}

/** The whole design assessed with pumps put in at a speed: no curve, no table, nothing held. */
function withPumps(design: Design, loop: number, row: PumpRow, count: number, speed: number): Assessment {
  const copy = structuredClone(design);
  const changed = copy.loops[loop];
  const first = changed?.pumps[0];
  if (!changed || !first) throw new Error("no pump to replace");
  changed.arrangement = "parallel";
  changed.pumps = Array.from({ length: count }, () => ({ ...first, ref: row.id, speed }));
  return assess(copy, demoCatalogue, { curves: false });
}

interface Found {
  readonly speed: number;
  readonly state: Assessment;
}

/** The best speed by solving the whole design for every speed tried. */
function bestByAssessing(design: Design, loop: number, row: PumpRow, count: number): Found {
  const at = (speed: number): Found => ({ speed, state: withPumps(design, loop, row, count, speed) });
  const missing = ({ state }: Found) => state.overflow.flow - (state.turnover.returnFlowWish?.aim ?? Number.NaN);
  let high = at(1);
  if (row.control !== "controllable" || missing(high) < 0) return high;
  let low = at(row.minimumSpeed);
  if (missing(low) > 0) return low;
  let found = high;
  for (let step = 0; step < 80; step++) {
    const [a, b] = [missing(low), missing(high)];
    const speed = step % 3 === 2 ? (low.speed + high.speed) / 2 : high.speed - (b * (high.speed - low.speed)) / (b - a);
    found = at(speed);
    const error = missing(found);
    if (Math.abs(error) < 1e-12 * high.state.overflow.flow || high.speed - low.speed < 1e-13) break;
    if (error > 0) high = found;
    else low = found;
  }
  // Beyond the last point its maker gives, nothing is known of slower speeds.
  const { full } = pumpHydraulics(row);
  return (found.state.loops[loop]?.flow ?? 0) / count > lastFlowAtSpeed(full) ? at(1) : found;
}

const judged: readonly (readonly [ReasonCode, string])[] = [
  ["below-wish", "flow/below-wish"],
  ["above-wish", "flow/above-wish"],
  ["drain-cannot-carry", "overflow/box-over-rim"],
  ["circuit-overload", "power/circuit-overload"],
];

// Self-consistency: the ranking reads a curve of the system without its pumps; here each pump and each pair is in the design, which is solved
// as a whole for every speed tried.
describe("the ranking beside an all-exact search", () => {
  it.each(files)("has the same candidates, order, codes and numbers for %s", (file) => {
    const design = read(file);
    const ranking = rank(design, demoCatalogue);
    const { loop } = ranking;
    const price = fromSI(toSI(design.power.tariff, "tariff"), design.power.tariff.unit, "tariff");
    const years = design.wishes.horizon ? toSI(design.wishes.horizon, "time") / secondsPerYear : 5;
    const pumpOf = (ids: readonly string[]) => demoCatalogue.pumps.find(({ id }) => id === ids[0]) as PumpRow;
    const close = (ours: number, exact: number, scale: number, what: string) =>
      expect(Math.abs(ours - exact) / scale, what).toBeLessThan(1e-6);

    const scores = ranking.candidates.map((candidate) => {
      const { label, pumpIds } = candidate;
      const { speed, state } = bestByAssessing(design, loop, pumpOf(pumpIds), pumpIds.length);
      const codes = new Set(state.findings.map(({ code }) => code));
      for (const [, finding] of judged) expect([...codes], label).not.toContain(finding);
      const exact = state.loops[loop];
      const pumps = state.pumps.filter((pump) => pump.loop === loop);
      const flow = exact?.flow ?? 0;
      const watts = pumps.reduce((sum, pump) => sum + pump.electricalPower, 0);
      close(candidate.speed, speed, 1, `${label} speed`);
      close(candidate.flow, flow, flow, `${label} flow`);
      close(candidate.flowToDisplay, exact?.flowToDisplay ?? 0, flow, `${label} flow to display`);
      close(candidate.head, pumps[0]?.head ?? 0, pumps[0]?.head ?? 1, `${label} head`);
      close(candidate.watts, watts, watts, `${label} power`);
      const atFull = speed < 1 ? withPumps(design, loop, pumpOf(pumpIds), pumpIds.length, 1).loops[loop]?.flow : flow;
      close(candidate.flowMargin, (atFull ?? 0) / ranking.aim - 1, 1, `${label} margin`);
      // The score again from the exact numbers; `rank` tells its terms.
      const wish = state.turnover.returnFlowWish ?? { low: 0, aim: 1, high: 2 };
      const half = Math.max(0.05 * wish.aim, (wish.high - wish.low) / 2);
      const cost = candidate.price + years * annualCost(watts, price);
      const sound = (pumps[0]?.soundLevel ?? 0) + 10 * Math.log10(pumps.length);
      const flaws = candidate.reasons.filter(({ code }) =>
        ["near-shutoff", "near-runout", "beyond-curve", "over-sound"].includes(code),
      ).length;
      const miss = Math.abs(state.overflow.flow - wish.aim) / half;
      return cost / 100 + 0.4 * Math.max(0, sound - 30) + 3 * miss + 20 * flaws;
    });
    expect(scores).toEqual([...scores].sort((a, b) => a - b));

    for (const { label, pumpIds, causes } of ranking.rejections) {
      if (causes.some(({ code }) => ["wrong-place", "in-tank-pump", "wrong-voltage"].includes(code))) continue;
      const { state } = bestByAssessing(design, loop, pumpOf(pumpIds), pumpIds.length);
      const codes = state.findings.map(({ code }) => code);
      if (causes[0]?.code === "too-weak-to-lift") {
        expect(codes, label).toContain("flow/no-lift");
        continue;
      }
      for (const [reason, finding] of judged) {
        const cause = causes.find(({ code }) => code === reason);
        expect(cause !== undefined, `${label} ${reason}`).toBe(codes.some((code) => code === finding));
        const exact = state.loops[loop];
        if (cause?.dimension !== "flow" || !exact) continue;
        // Where branches are about to turn, losses at eight tees leave several steady splits, each within the network's tolerance: which is
        // found hangs on the way there. Only pumps far below the wish get there.
        const turning = file.includes("eight-branches") && Math.abs(exact.flowToDisplay) < 0.1 * exact.flow;
        const told = Math.abs((cause.value ?? 0) - exact.flowToDisplay) / exact.flow;
        expect(told, `${label} ${reason}`).toBeLessThan(turning ? 1e-2 : 1e-6);
      }
    }
  });
});
