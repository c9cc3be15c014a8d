import { demoCatalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { solveCompiled } from "@tidewright/engine";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assess, describeSystem } from "../assess.ts";
import { example, exampleFiles } from "../testing/examples.ts";
import { setLoopHeads } from "./levels.ts";
import { NetworkLoan } from "./networkLoan.ts";
import { prepareSystem, withSystem } from "./prepare.ts";
import { solveSystem } from "./solveSystem.ts";

/** The design with its stand, its first pump's speed and its first pipe changed. */
function changed(file: string, by: number): Design {
  const design = example(file);
  design.display.standHeight.value *= 1 + 0.1 * by;
  const loop = design.loops[0];
  const pump = loop?.pumps[0];
  if (pump) pump.speed = 0.8 + 0.2 * by;
  const pipe = loop?.run[0];
  if (pipe?.kind === "pipe") pipe.length.value *= 1 + by;
  return design;
}

function byItself(design: Design): unknown {
  const system = prepareSystem(design, demoCatalogue, new NetworkLoan([]));
  return describeSystem(system, solveSystem(system), true);
}

// Self-consistency, to the last bit: what a network was lent for before must not show.
describe("a lent network", () => {
  it("gives every design the numbers that it has by itself, whatever was assessed before", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...exampleFiles), fc.double({ min: 0, max: 1, noNaN: true })), {
          minLength: 2,
          maxLength: 6,
        }),
        (jobs) => {
          for (const [file, by] of jobs) {
            const design = changed(file, by);
            expect(assess(design, demoCatalogue)).toEqual(byItself(structuredClone(design)));
          }
        },
      ),
      { numRuns: 40, seed: 7 },
    );
  });

  it("belongs to one borrower at a time", () => {
    const design = example(exampleFiles[0] as string);
    withSystem(design, demoCatalogue, (first) => {
      withSystem(design, demoCatalogue, (second) => {
        expect(second.loops[0]?.net).not.toBe(first.loops[0]?.net);
      });
      const outer = describeSystem(first, solveSystem(first), true);
      expect(outer).toEqual(byItself(design));
    });
  });

  it("comes back even where its borrower fails", () => {
    const design = example(exampleFiles[0] as string);
    const nets = [0, 1].map(() => {
      let net: unknown;
      expect(() =>
        withSystem(design, demoCatalogue, (system) => {
          net = system.loops[0]?.net;
          throw new Error("failed");
        }),
      ).toThrow("failed");
      return net;
    });
    expect(nets[1]).toBe(nets[0]);
  });
});

// Analytic: at rest flows and levels agree, so one more round changes neither.
describe("the levels of a solved system", () => {
  it.each(exampleFiles.map((file) => [example(file).name, file] as const))(
    "have settled to some 1e-9 of flow in %s",
    (_, file) => {
      withSystem(example(file), demoCatalogue, (system) => {
        const solved = solveSystem(system);
        const flows = system.loops.map(({ state }) => state.flow.slice());
        const scale = Math.max(...flows.flatMap((flow) => [...flow].map(Math.abs)));
        for (const loop of system.loops) {
          setLoopHeads(loop, solved.levels);
          solveCompiled(loop.net, loop.state);
        }
        system.loops.forEach(({ state }, i) => {
          for (let l = 0; l < state.flow.length; l++)
            expect(Math.abs((state.flow[l] as number) - (flows[i]?.[l] as number))).toBeLessThan(1e-8 * scale);
        });
      });
    },
  );
});
