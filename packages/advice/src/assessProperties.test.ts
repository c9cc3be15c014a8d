import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { type Design, readDesign } from "@tidewright/design";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assess } from "./assess.ts";
import { example, exampleFiles } from "./testing/examples.ts";

const pinned = new URL("../../../examples/expected/", import.meta.url);

function flowWith(change: (design: Design) => void): number {
  const design = example("first-tank-110.json");
  change(design);
  return assess(design, demoCatalogue, { curves: false }).loops[0]?.flow ?? 0;
}

// Analytic: more loss or lift at a falling pump curve never gives more flow.
describe("the return flow", () => {
  it("never rises with a longer pipe or a higher stand", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 3, noNaN: true }), (factor) => {
        const before = flowWith(() => {});
        const longer = flowWith((design) => {
          const pipe = design.loops[0]?.run[0];
          if (pipe?.kind === "pipe") pipe.length.value *= factor;
        });
        const higher = flowWith((design) => {
          design.display.standHeight.value *= factor;
        });
        expect(longer).toBeLessThanOrEqual(before * (1 + 1e-6));
        expect(higher).toBeLessThanOrEqual(before * (1 + 1e-6));
      }),
      { numRuns: 20 },
    );
  });
});

function scale(value: unknown, factor: () => number): void {
  if (typeof value !== "object" || value === null) return;
  const quantity = value as { value?: number; unit?: string; opening?: number; speed?: number };
  if (typeof quantity.value === "number" && /^(mm|in|cm|m)$/.test(quantity.unit ?? "")) quantity.value *= factor();
  if (typeof quantity.opening === "number") quantity.opening = Math.min(1, quantity.opening * factor());
  if (typeof quantity.speed === "number") quantity.speed = Math.min(1, quantity.speed * factor());
  for (const inner of Object.values(value)) scale(inner, factor);
}

describe("any accepted design", () => {
  it("is assessed without an exception or a number that is none", () => {
    let assessed = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...exampleFiles),
        fc.infiniteStream(fc.double({ min: -1, max: 1, noNaN: true })),
        (file, s) => {
          const design = example(file);
          // One in about thirty is changed, so that enough designs still fit together.
          scale(design, () => {
            const x = s.next().value as number;
            return Math.abs(x) < 0.97 ? 1 : 10 ** (((Math.abs(x) - 0.97) / 0.03) * Math.sign(x));
          });
          const reading = readDesign(JSON.stringify(design), demoCatalogue);
          if (!reading.ok) return;
          assessed++;
          const text = JSON.stringify(assess(reading.design, demoCatalogue, { curves: false }), (_, x) =>
            typeof x === "number" && !Number.isFinite(x) ? "NOT FINITE" : x,
          );
          expect(text).not.toContain("NOT FINITE");
        },
      ),
      { numRuns: 150, seed: 1 },
    );
    expect(assessed).toBeGreaterThan(30);
  });
});

// Pinned: this project's own numbers at 4 digits, to notice change; UPDATE_GOLDEN=1 rewrites them.
describe.each(exampleFiles)("the pinned summary of %s", (file) => {
  it("has not moved", () => {
    const state = assess(example(file), demoCatalogue, { curves: false });
    const round = (x: number) => Number(x.toPrecision(4));
    const summary = {
      tag: "pinned",
      flow: round(state.overflow.flow),
      totalHead: state.loops.map((loop) => round(loop.totalHead)),
      displayLevel: round(state.overflow.displayLevel),
      boxLevel: round(state.overflow.boxLevel),
      chamberLevels: state.sump.chambers.map((chamber) => round(chamber.level)),
      drainFlows: state.drains.map((drain) => round(drain.flow)),
      watts: round(state.power.watts),
      findings: state.findings.map((finding) => finding.code),
    };
    const path = new URL(file.replace("golden/", "golden-"), pinned);
    if (process.env["UPDATE_GOLDEN"] === "1") writeFileSync(path, `${JSON.stringify(summary, null, 2)}\n`);
    expect(existsSync(path)).toBe(true);
    expect(summary).toEqual(JSON.parse(readFileSync(path, "utf8")));
  });
});
