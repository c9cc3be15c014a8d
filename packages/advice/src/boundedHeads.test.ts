import { readdirSync, readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { type Design, readDesign } from "@tidewright/design";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { prepareSystem } from "./system/prepare.ts";
import { solveSystem } from "./system/solveSystem.ts";

const root = new URL("../../../examples/", import.meta.url);
const texts = ["", "golden/"].flatMap((folder) =>
  readdirSync(new URL(folder || ".", root))
    .filter((name) => name.endsWith(".json"))
    .map((name) => readFileSync(new URL(folder + name, root), "utf8")),
);

/** Scales lengths, turns valves and sets speeds, some of them to nothing at all. */
function change(value: unknown, next: () => number): void {
  if (typeof value !== "object" || value === null) return;
  const part = value as { value?: number; unit?: string; opening?: number; speed?: number };
  const pick = () => {
    const x = next();
    return Math.abs(x) < 0.94 ? undefined : (Math.abs(x) - 0.94) / 0.06;
  };
  const some = pick();
  if (some !== undefined) {
    if (typeof part.value === "number" && /^(mm|in|cm|m)$/.test(part.unit ?? "")) part.value *= 10 ** (2 * some - 1);
    if (typeof part.opening === "number") part.opening = some < 0.3 ? 0 : some;
    if (typeof part.speed === "number") part.speed = some < 0.3 ? 0 : some;
  }
  for (const inner of Object.values(value)) change(inner, next);
}

// Analytic: the maximum principle of networks. What resists flow cannot raise a head above all that feed it or lower it below all it
// feeds, and pumps add no more than their heads at rest; tees may give back a part of a velocity head.
describe("heads in a loop", () => {
  it("lie between the lowest surface and the highest with all pumps' heads at rest on top of it", () => {
    let solved = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...texts),
        fc.infiniteStream(fc.double({ min: -1, max: 1, noNaN: true })),
        (text, stream) => {
          const design = JSON.parse(text) as Design;
          for (const loop of design.loops) for (const pump of loop.pumps) pump.speed ??= 1;
          change(design, () => stream.next().value as number);
          const reading = readDesign(JSON.stringify(design), demoCatalogue);
          if (!reading.ok) return;
          solved++;
          const system = prepareSystem(reading.design, demoCatalogue);
          const answer = solveSystem(system);
          for (const { loop, net, state } of system.loops) {
            const fixed = [loop.sourcePlace, ...loop.outlets.map((outlet) => outlet.place)].map(
              (place) => answer.levels.get(place) ?? Number.NaN,
            );
            const over = Math.max(0, ...loop.outlets.map((outlet) => -outlet.depth));
            const lift = loop.pumps.reduce((sum, pump) => sum + (pump.row?.curves[0]?.points[0]?.head ?? 0), 0);
            const slack = 1;
            for (const [id, i] of net.nodeIndex) {
              const head = state.head[i] ?? Number.NaN;
              expect([id, head <= Math.max(...fixed) + over + lift + slack]).toEqual([id, true]);
              expect([id, head >= Math.min(...fixed) - slack]).toEqual([id, true]);
            }
          }
        },
      ),
      { numRuns: 200, seed: 9 },
    );
    expect(solved).toBeGreaterThan(60);
  });
});
