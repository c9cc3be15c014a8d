import { readdirSync, readFileSync } from "node:fs";
import { demoCatalogue, findPipeSeries } from "@tidewright/catalogue";
import { type Design, type Part, readDesign } from "@tidewright/design";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assess } from "./assess.ts";
import type { Assessment } from "./assessment.ts";

const root = new URL("../../../examples/", import.meta.url);
const texts = ["", "golden/"].flatMap((folder) =>
  readdirSync(new URL(folder || ".", root))
    .filter((name) => name.endsWith(".json"))
    .map((name) => readFileSync(new URL(folder + name, root), "utf8")),
);

function read(text: string): Design {
  const reading = readDesign(text, demoCatalogue);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.design;
}

const hasTee = (run: readonly Part[]) => run.some((part) => part.kind === "tee");
const all = texts.map(read);
/** Designs whose loops are single lines: beside a tee a longer branch can draw more through its neighbour. */
const single = all.filter((design) => !design.loops.some((loop) => hasTee(loop.run)));

/** A design of the examples with speeds, stand and weir of its own, so that the property is asked away from them too. */
function designOf(designs: readonly Design[]): fc.Arbitrary<Design> {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  return fc.tuple(fc.constantFrom(...designs), share, share, share).map(([design, speed, stand, sump]) => {
    const copy = structuredClone(design);
    for (const loop of copy.loops) for (const pump of loop.pumps) pump.speed = 0.6 + 0.4 * speed;
    copy.display.standHeight.value *= 0.8 + 0.4 * stand;
    copy.sump.operatingLevel.value *= 0.7 + 0.3 * sump;
    return copy;
  });
}

const factor = fc.double({ min: 1, max: 3, noNaN: true });

/** Compares a design as it is with the same one changed; designs that the change makes unfit for reading are passed over. */
function compare(
  designs: readonly Design[],
  change: (design: Design, factor: number) => void,
  check: (before: Assessment, after: Assessment) => void,
): void {
  let compared = 0;
  fc.assert(
    fc.property(designOf(designs), factor, (design, by) => {
      const changed = structuredClone(design);
      change(changed, by);
      for (const entry of [design, changed]) if (!readDesign(JSON.stringify(entry), demoCatalogue).ok) return;
      const before = assess(design, demoCatalogue, { curves: false });
      const after = assess(changed, demoCatalogue, { curves: false });
      if (!before.solve.converged || !after.solve.converged) return;
      compared++;
      check(before, after);
    }),
    { numRuns: 60, seed: 7 },
  );
  expect(compared).toBeGreaterThan(30);
}

function parts<Kind extends Part["kind"]>(
  run: readonly Part[],
  kind: Kind,
  change: (part: Extract<Part, { kind: Kind }>) => void,
): void {
  for (const part of run) {
    if (part.kind === kind) change(part as Extract<Part, { kind: Kind }>);
    if (part.kind === "tee") for (const branch of part.branches) parts(branch, kind, change);
  }
}

/** Levels settle to 1e-7 m, which moves flows by parts in a million. */
const tolerance = 1e-6;
const noMore = (after: number, before: number, size = before) =>
  expect(after).toBeLessThanOrEqual(before + tolerance * Math.abs(size));

// Analytic: pumps have falling curves and lines have rising ones, so what shifts one of them shifts where they meet one way only.
describe("the flow of every loop", () => {
  it("never falls in wider pipe", () => {
    compare(
      single,
      (design, by) => {
        for (const loop of design.loops)
          for (const run of [loop.run, loop.suction ?? []]) {
            // A nozzle would narrow from a wider pipe, which costs more: it keeps its shape here.
            parts(run, "outlet", (outlet) => {
              delete outlet.nozzle;
            });
            parts(run, "pipe", (pipe) => {
              const bore = pipe.bore
                ? pipe.bore.value / 1000
                : (findPipeSeries(pipe.series ?? "")?.innerDiameter ?? 0.025);
              delete pipe.series;
              pipe.bore = { value: 1000 * bore * by, unit: "mm" };
              pipe.roughness = { value: 0.0015, unit: "mm" };
            });
          }
      },
      (before, after) => {
        before.loops.forEach((loop, i) => {
          noMore(loop.flow, after.loops[i]?.flow ?? 0);
        });
      },
    );
  });

  it("never rises in longer pipe", () => {
    compare(
      single,
      (design, by) => {
        for (const loop of design.loops)
          parts(loop.run, "pipe", (pipe) => {
            pipe.length.value *= by;
          });
      },
      (before, after) => {
        after.loops.forEach((loop, i) => {
          noMore(loop.flow, before.loops[i]?.flow ?? 0);
        });
      },
    );
  });

  it("never rises with more bends", () => {
    compare(
      single,
      (design, by) => {
        for (const loop of design.loops)
          loop.run.unshift({ kind: "fitting", fitting: "elbow90", count: Math.ceil(by) });
      },
      (before, after) => {
        after.loops.forEach((loop, i) => {
          noMore(loop.flow, before.loops[i]?.flow ?? 0);
        });
      },
    );
  });

  it("never falls in a return with faster pumps", () => {
    compare(
      all,
      (design, by) => {
        for (const loop of design.loops)
          for (const pump of loop.pumps) pump.speed = Math.min(1, (pump.speed ?? 1) * (1 + (by - 1) / 10));
      },
      (before, after) => {
        // A side loop of one speed feels the higher level in the sump that more return flow brings.
        before.loops.forEach((loop, i) => {
          if (loop.purpose === "return") noMore(loop.flow, after.loops[i]?.flow ?? 0, 1e-3);
        });
      },
    );
  });
});

describe("the display's level", () => {
  it("never rises over a wider weir", () => {
    compare(
      all,
      (design, by) => {
        design.overflow.weir.length.value *= 1 + (by - 1) / 10;
      },
      (before, after) => noMore(after.overflow.displayLevel, before.overflow.displayLevel),
    );
  });

  it("never rises with more of the crest open", () => {
    compare(
      all,
      (design, by) => {
        design.overflow.weir.toothOpenShare = Math.min(1, (design.overflow.weir.toothOpenShare ?? 1) * by);
      },
      (before, after) => noMore(after.overflow.displayLevel, before.overflow.displayLevel),
    );
  });

  it("never falls with a higher crest", () => {
    compare(
      all,
      (design, by) => {
        design.overflow.weir.crest.value *= 1 + (by - 1) / 200;
      },
      (before, after) => noMore(before.overflow.displayLevel, after.overflow.displayLevel),
    );
  });
});

describe("the sump", () => {
  it("never has less room in a power cut for a higher rim", () => {
    compare(
      all,
      (design, by) => {
        design.sump.height.value *= by;
      },
      (before, after) => {
        noMore(before.sump.room, after.sump.room);
        noMore(before.sump.margin, after.sump.margin, 1e-3);
        noMore(before.sump.safeOperatingLevel, after.sump.safeOperatingLevel);
      },
    );
  });

  it("never has more room for standing fuller, while the return flow does not fall", () => {
    compare(
      all,
      (design, by) => {
        design.sump.operatingLevel.value *= 1 + (by - 1) / 10;
      },
      (before, after) => {
        noMore(after.sump.room, before.sump.room);
        noMore(before.overflow.flow, after.overflow.flow, 1e-3);
      },
    );
  });

  it("never has more to take in from a shallower siphon break", () => {
    compare(
      all,
      (design, by) => {
        for (const loop of design.loops)
          parts(loop.run, "outlet", (outlet) => {
            if (outlet.siphonBreak) outlet.siphonBreak.value /= by;
          });
      },
      (before, after) => noMore(after.sump.drainDown.total, before.sump.drainDown.total),
    );
  });
});

describe("a drain", () => {
  it("never carries less with the box full for being wider", () => {
    compare(
      all,
      (design, by) => {
        for (const drain of design.drains)
          parts(drain.run, "pipe", (pipe) => {
            const bore = pipe.bore
              ? pipe.bore.value / 1000
              : (findPipeSeries(pipe.series ?? "")?.innerDiameter ?? 0.025);
            delete pipe.series;
            pipe.bore = { value: 1000 * bore * by, unit: "mm" };
            pipe.roughness = { value: 0.0015, unit: "mm" };
          });
      },
      (before, after) => {
        before.drains.forEach((drain, i) => {
          // A throttle is set anew for its share, so only the open line is compared.
          noMore(drain.capacity.quiet, after.drains[i]?.capacity.quiet ?? 0);
          if (drain.valveOpening === undefined) noMore(drain.capacityAtRim, after.drains[i]?.capacityAtRim ?? 0);
        });
      },
    );
  });
});
