import { readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { applyEdit, checkDesign, type Design, readDesign } from "@tidewright/design";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layoutPlan } from "../layoutPlan.ts";
import { gripOf } from "../planEdits.ts";
import { planView } from "../planView.ts";
import { type PlanContext, type PlanEvent, type PlanState, planIdle } from "./planState.ts";
import { planStep } from "./planStep.ts";

const reading = readDesign(
  readFileSync(new URL("../../../../../examples/waiting-room-reef.json", import.meta.url), "utf8"),
  demoCatalogue,
);
if (!reading.ok) throw new Error(reading.problems[0]?.message);
const reef = reading.design;

/** A page that does what the plan asks of it. */
function sheet(design: Design) {
  let state: PlanState = planIdle;
  let before: { readonly key: string; readonly design: Design } | undefined;
  let now = design;
  let selection: string | undefined;
  const contextOf = (): PlanContext => {
    const scene = layoutPlan(now, undefined);
    return { scene, view: planView(scene.bounds, 800, 500), handles: scene.handles };
  };
  const send = (event: PlanEvent) => {
    const done = planStep(state, event, contextOf());
    state = done.state;
    for (const effect of done.effects) {
      if (effect.kind === "select") selection = effect.path;
      else if (effect.kind === "drop") {
        if (before?.key === effect.dragKey) now = before.design;
        before = undefined;
      } else {
        if (before?.key !== effect.dragKey) before = { key: effect.dragKey, design: now };
        now = effect.edits.reduce<Design>((one, edit) => applyEdit(one, edit).design, now);
        if (effect.done) before = undefined;
      }
    }
  };
  return {
    send,
    contextOf,
    state: () => state,
    design: () => now,
    selection: () => selection,
  };
}

const pumpGrip = (context: PlanContext) =>
  context.view.toScreen(gripOf(context.handles.find(({ part, kind }) => part === "/tankPumps/0" && kind === "place")!));
const at = (kind: "down" | "move" | "up" | "cancel", point: { x: number; y: number }): PlanEvent => ({
  kind,
  point,
  pointer: 1,
  touch: false,
  at: 7,
});

describe("a hand on the plan", () => {
  it("drags a pump along the tank by as much as the pointer moves", () => {
    const page = sheet(reef);
    const grip = pumpGrip(page.contextOf());
    const { scale } = page.contextOf().view;
    page.send(at("down", grip));
    expect(page.selection()).toBe("/tankPumps/0");
    page.send(at("move", { x: grip.x + 0.1 * scale, y: grip.y }));
    page.send(at("move", { x: grip.x + 0.3 * scale, y: grip.y }));
    page.send(at("up", { x: grip.x + 0.3 * scale, y: grip.y }));
    // 60 mm and 300 mm more.
    expect(page.design().tankPumps?.[0]?.at[0]).toEqual({ value: 360, unit: "mm" });
    expect(page.state()).toBe(planIdle);
  });

  it("leaves the document as it was where the pointer is cancelled or Escape is pressed", () => {
    for (const end of [at("cancel", { x: 0, y: 0 }), { kind: "escape" } as const]) {
      const page = sheet(reef);
      const grip = pumpGrip(page.contextOf());
      page.send(at("down", grip));
      page.send(at("move", { x: grip.x + 60, y: grip.y + 30 }));
      expect(page.design()).not.toEqual(reef);
      page.send(end);
      expect(page.design()).toEqual(reef);
    }
  });

  it("takes a press without a move as a choice and no edit", () => {
    const page = sheet(reef);
    const grip = pumpGrip(page.contextOf());
    page.send(at("down", grip));
    page.send(at("move", { x: grip.x + 1, y: grip.y }));
    page.send(at("up", { x: grip.x + 1, y: grip.y }));
    expect(page.design()).toBe(reef);
  });

  it("moves by an arrow key a centimetre at a time, and turns with the second grip", () => {
    const page = sheet(reef);
    const arrow = { kind: "arrow", way: { x: 1, y: 0 }, large: false, focus: "/tankPumps/0", at: 1 } as const;
    page.send({ ...arrow, second: false });
    expect(page.design().tankPumps?.[0]?.at[0]).toEqual({ value: 70, unit: "mm" });
    page.send({ ...arrow, second: true });
    expect(page.design().tankPumps?.[0]?.aim?.yaw).toEqual({ value: 0, unit: "deg" });
  });

  it("never fails, keeps the document sound, and is idle again after Escape, whatever happens", () => {
    const point = fc.record({ x: fc.integer({ min: -50, max: 850 }), y: fc.integer({ min: -50, max: 550 }) });
    const event: fc.Arbitrary<PlanEvent> = fc.oneof(
      fc.record({
        kind: fc.constantFrom("down", "move", "up", "cancel"),
        pointer: fc.integer({ min: 1, max: 2 }),
        point,
        touch: fc.boolean(),
        at: fc.nat(),
      }) as fc.Arbitrary<PlanEvent>,
      fc.constant<PlanEvent>({ kind: "escape" }),
      fc.record({
        kind: fc.constant("arrow" as const),
        way: fc.constantFrom({ x: 1, y: 0 }, { x: 0, y: -1 }),
        large: fc.boolean(),
        focus: fc.constantFrom("/tankPumps/0", "/overflow/box", "/nowhere", "/drains/1"),
        second: fc.boolean(),
        at: fc.nat(),
      }),
    );
    fc.assert(
      fc.property(fc.array(event, { maxLength: 40 }), (events) => {
        const page = sheet(reef);
        for (const one of events) page.send(one);
        page.send({ kind: "escape" });
        expect(page.state()).toBe(planIdle);
        const checked = checkDesign(page.design(), demoCatalogue);
        expect(checked.ok ? [] : checked.problems).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });
});
