import { readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { applyEdit, checkDesign, type Design, type Part, type Run } from "@tidewright/design";
import { toSI } from "@tidewright/units";
import { describe, expect, it } from "vitest";
import { layoutElevation } from "../elevation/layoutElevation.ts";
import { additionNames, addThing, duplicatePart } from "./addThings.ts";
import { drawRun, type RunEnd } from "./drawRun.ts";
import { insertPart } from "./insertPart.ts";
import type { Outcome } from "./outcome.ts";
import { partChoiceNames } from "./partChoices.ts";
import { removePart } from "./removePart.ts";
import { runEndOf } from "./runEnds.ts";

const names = ["waiting-room-reef", "school-corridor-soft", "hotel-lobby", "first-tank-110"] as const;
const designs = names.map((name): [string, Design] => [
  name,
  JSON.parse(readFileSync(new URL(`../../../../examples/${name}.json`, import.meta.url), "utf8")),
]);

/** The changed design where the operation is done; undefined where it is refused in words. */
function done(design: Design, outcome: Outcome): Design | undefined {
  if (!outcome.ok) return undefined;
  let changed = design;
  for (const edit of outcome.edits) {
    const edited = applyEdit(changed, edit);
    expect(edited.problem).toBeUndefined();
    changed = edited.design;
  }
  return changed;
}

/** Every part of every run with its path. */
function everyPart(design: Design): { path: string; part: Part }[] {
  const walk = (run: Run, base: string): { path: string; part: Part }[] =>
    run.flatMap((part, i) => [
      { path: `${base}/${i}`, part },
      ...(part.kind === "tee" ? part.branches.flatMap((one, b) => walk(one, `${base}/${i}/branches/${b}`)) : []),
    ]);
  return [
    ...design.drains.flatMap(({ run }, i) => walk(run, `/drains/${i}/run`)),
    ...design.loops.flatMap(({ run, suction }, i) => [
      ...walk(suction ?? [], `/loops/${i}/suction`),
      ...walk(run, `/loops/${i}/run`),
    ]),
  ];
}

const lengthOf = (design: Design): number =>
  everyPart(design).reduce((sum, { part }) => sum + (part.kind === "pipe" ? toSI(part.length, "length") : 0), 0);
const riseOf = (design: Design): number =>
  everyPart(design).reduce(
    (sum, { part }) => sum + (part.kind === "pipe" && part.rise ? toSI(part.rise, "length") : 0),
    0,
  );

describe.each(designs)("on %s", (_name, design) => {
  it("a part put in anywhere leaves a sound design of the same pipe length and rise, or is refused in words", () => {
    for (const { path, part } of everyPart(design))
      for (const choice of partChoiceNames)
        for (const share of part.kind === "pipe" ? [0.37] : [0, 1]) {
          const outcome = insertPart(design, { path, share }, choice);
          const changed = done(design, outcome);
          if (changed === undefined) continue;
          const reading = checkDesign(changed, demoCatalogue);
          expect(reading, `${choice} at ${share} of ${path}`).toMatchObject({ ok: true });
          if (choice === "pipe" || choice === "tee") continue;
          expect(lengthOf(changed)).toBeCloseTo(lengthOf(design), 9);
          expect(riseOf(changed)).toBeCloseTo(riseOf(design), 9);
        }
  });

  it("what is put into a pipe and removed again leaves the pipe as it was", () => {
    for (const { path, part } of everyPart(design)) {
      if (part.kind !== "pipe") continue;
      const outcome = insertPart(design, { path, share: 0.4 }, "union");
      const changed = done(design, outcome);
      if (changed === undefined || !outcome.ok) continue;
      expect(done(changed, removePart(changed, outcome.select!)), path).toEqual(design);
    }
  });

  it("a part removed leaves a sound design, or one that the check names the fault of", () => {
    let sound = 0;
    for (const { path } of everyPart(design)) {
      const changed = done(design, removePart(design, path));
      if (changed === undefined) continue;
      const reading = checkDesign(changed, demoCatalogue);
      if (reading.ok) sound += 1;
      else expect(reading.problems[0]!.fix.length, path).toBeGreaterThan(0);
    }
    expect(sound).toBeGreaterThan(5);
  });

  it("a thing added or doubled leaves a sound design that can be drawn", () => {
    for (const what of additionNames) {
      const changed = done(design, addThing(design, what, "/loops/0/pumps/0"));
      if (changed === undefined) continue;
      expect(checkDesign(changed, demoCatalogue), what).toMatchObject({ ok: true });
      expect(layoutElevation(changed, undefined).parts.length).toBeGreaterThan(
        layoutElevation(design, undefined).parts.length - 1,
      );
    }
    for (const { path } of [...everyPart(design), { path: "/drains/0" }, { path: "/tankPumps/0" }]) {
      const changed = done(design, duplicatePart(design, path));
      if (changed !== undefined) expect(checkDesign(changed, demoCatalogue), path).toMatchObject({ ok: true });
    }
  });

  it("a line from anywhere to anywhere is sound, with lengths no shorter than its rises, or refused in words", () => {
    const scene = layoutElevation(design, undefined);
    const places = ["display", "overflowBox", ...design.sump.chambers.map(({ id }) => `sump.${id}`)];
    const ends: RunEnd[] = scene.parts.flatMap(({ path }) => runEndOf({ design, scene }, path, false) ?? []);
    let drawn = 0;
    for (const from of ends)
      for (const place of places) {
        const changed = done(design, drawRun(design, from, { kind: "place", place }));
        if (changed === undefined) continue;
        drawn += 1;
        expect(checkDesign(changed, demoCatalogue), `${JSON.stringify(from)} to ${place}`).toMatchObject({ ok: true });
      }
    expect(drawn).toBeGreaterThan(8);
  });
});
