import { readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { checkDesign, type Design, type Part, type PipePart, valueAt } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { partChoiceNames } from "../edits/partChoices.ts";
import type { SheetEvent } from "./sheet.ts";
import { TestSheet } from "./testSheet.ts";

const exampleDesign = (name: string): Design =>
  JSON.parse(readFileSync(new URL(`../../../../examples/${name}.json`, import.meta.url), "utf8"));
const reef = () => new TestSheet(exampleDesign("waiting-room-reef"));
const riser = "/loops/0/run/4/branches/0/0";
const at = <T>(sheet: TestSheet, path: string) => valueAt(sheet.design, path) as T;

describe("a gesture on the sheet", () => {
  it("drags the weir's crest as one step, and Escape takes the drag back", () => {
    const sheet = reef();
    const before = sheet.design;
    const from = sheet.spot("/overflow/weir");
    sheet.stroke(from, { x: from.x, y: from.y + 20 }, { x: from.x, y: from.y + 40 });
    expect(at<{ value: number }>(sheet, "/overflow/weir/crest").value).toBeLessThan(before.overflow.weir.crest.value);
    expect(sheet.history.past.length).toBe(1);
    expect(sheet.undone()).toEqual(before);
    const held = sheet.design;
    const grip = sheet.spot("/overflow/weir");
    const move = { pointer: 1, device: "mouse", at: 1, button: 0 } as const;
    sheet.send({ kind: "down", point: grip, ...move });
    sheet.send({ kind: "move", point: { x: grip.x, y: grip.y - 30 }, ...move });
    expect(sheet.state.kind).toBe("DraggingHandle");
    expect(sheet.design).not.toEqual(held);
    sheet.send({ kind: "key", key: "Escape", at: 2 });
    expect(sheet.state.kind).toBe("Idle");
    expect(sheet.design).toEqual(held);
  });

  it("puts an elbow into a riser where the pointer is: lengths and rises add up to the former", () => {
    const sheet = reef();
    const before = at<PipePart>(sheet, riser);
    sheet.send({ kind: "tool", tool: "insert" });
    sheet.send({ kind: "choose", choice: "elbow" });
    expect(sheet.state.kind).toBe("InsertingPart");
    sheet.stroke(sheet.pipe(riser));
    const run = at<Part[]>(sheet, "/loops/0/run/4/branches/0");
    expect(run.slice(0, 3).map(({ kind }) => kind)).toEqual(["pipe", "fitting", "pipe"]);
    const [a, , b] = run as [PipePart, Part, PipePart];
    expect(a.length.value + b.length.value).toBe(before.length.value);
    expect(a.rise!.value + b.rise!.value).toBeCloseTo(before.rise!.value, 9);
    expect(a.series).toBe(before.series);
    expect(b.series).toBe(before.series);
    expect(a.length.value).toBeGreaterThan(before.length.value * 0.35);
    expect(a.length.value).toBeLessThan(before.length.value * 0.65);
    expect(sheet.selection).toBe("/loops/0/run/4/branches/0/1");
    expect(sheet.state.kind).toBe("Idle");
    expect(sheet.undone()).toEqual(exampleDesign("waiting-room-reef"));
  });

  it("joins the two pieces again when what stood between them is removed", () => {
    const sheet = reef();
    sheet.send({ kind: "choose", choice: "union" });
    sheet.stroke(sheet.pipe(riser));
    sheet.key("Delete", sheet.selection);
    expect(sheet.design).toEqual(exampleDesign("waiting-room-reef"));
  });

  it("puts in a tee whose first branch is the rest of the run and whose second ends somewhere", () => {
    const sheet = reef();
    const rest = at<Part[]>(sheet, "/loops/0/run/4/branches/0");
    sheet.send({ kind: "choose", choice: "tee" });
    sheet.stroke(sheet.pipe(riser));
    const run = at<Part[]>(sheet, "/loops/0/run/4/branches/0");
    const tee = run.at(-1)!;
    if (tee.kind !== "tee") throw new Error("no tee");
    expect(tee.branches[0]!.slice(1)).toEqual(rest.slice(1));
    expect(tee.branches[1]!.at(-1)!.kind).toBe("outlet");
    expect(checkDesign(sheet.design, demoCatalogue).ok).toBe(true);
    sheet.key("Delete", sheet.selection);
    expect(sheet.design).toEqual(exampleDesign("waiting-room-reef"));
  });

  it("says why a drain takes no tee, and leaves it as it is", () => {
    const sheet = reef();
    sheet.send({ kind: "choose", choice: "tee" });
    sheet.stroke(sheet.pipe("/drains/0/run/0"));
    expect(sheet.effects.at(-1)).toMatchObject({ kind: "refuse", why: { key: "drawing.why.drainBranches" } });
    expect(sheet.design).toEqual(exampleDesign("waiting-room-reef"));
  });

  it("draws a closed loop in the display by one stroke; its pump waits for a choice", () => {
    const sheet = reef();
    const from = sheet.spot("/display");
    sheet.send({ kind: "tool", tool: "route" });
    sheet.stroke(from, { x: from.x + 60, y: from.y + 60 }, { x: from.x + 120, y: from.y + 80 });
    const loop = sheet.design.loops.at(-1)!;
    expect(loop.purpose).toBe("closed");
    expect(loop.pumps[0]!.ref).toBeUndefined();
    expect(checkDesign(sheet.design, demoCatalogue).ok).toBe(true);
    expect(sheet.selection).toBe("/loops/1/pumps/0");
    expect(sheet.undone()).toEqual(exampleDesign("waiting-room-reef"));
  });

  it("draws a return, a side loop, a drain, a branch and a new way for an outlet by keyboard alone", () => {
    const chambers = "/sump/chambers";
    const cases: [string, string, (sheet: TestSheet) => unknown, unknown][] = [
      [`${chambers}/2`, "/display", (s) => s.design.loops[1]?.purpose, "return"],
      [`${chambers}/2`, `${chambers}/0`, (s) => s.design.loops[1]?.purpose, "side"],
      ["/overflow/box", `${chambers}/0`, (s) => s.design.drains.length, 4],
      ["/loops/0/run/4", "/display", (s) => (s.design.loops[0]!.run[4] as { branches: unknown[] }).branches.length, 5],
      ["/loops/0/pumps/0", `${chambers}/1`, (s) => s.design.loops[0]!.run.map(({ kind }) => kind), ["pipe", "tee"]],
      [
        "/loops/0/run/4/branches/1/4",
        `${chambers}/0`,
        (s) => valueAt(s.design, "/loops/0/run/4/branches/1/4/to"),
        "sump.drain",
      ],
    ];
    for (const [from, to, found, expected] of cases) {
      const sheet = reef();
      sheet.key("p", from);
      expect(sheet.state.kind).toBe("RoutingRun");
      sheet.key("Enter", to);
      expect(found(sheet), `${from} to ${to}`).toEqual(expected);
      expect(checkDesign(sheet.design, demoCatalogue), `${from} to ${to}`).toMatchObject({ ok: true });
      expect(sheet.undone()).toEqual(exampleDesign("waiting-room-reef"));
    }
  });

  it("names the reason where water does not run that way", () => {
    const cases = [
      ["/display", "/sump/chambers/0", "drawing.why.displayDrains"],
      ["/overflow/box", "/display", "drawing.why.boxGoesDown"],
      ["/sump/chambers/2", "/overflow/box", "drawing.why.boxTakesWeir"],
    ] as const;
    for (const [from, to, why] of cases) {
      const sheet = reef();
      sheet.key("p", from);
      sheet.key("Enter", to);
      expect(sheet.effects.at(-1)).toMatchObject({ kind: "refuse", why: { key: why } });
      sheet.key("Escape");
      expect(sheet.state.kind).toBe("Idle");
    }
  });

  it("zooms at the pointer, keeps what is under it there, and goes back to the whole sheet", () => {
    const sheet = reef();
    const point = { x: 500, y: 300 };
    const place = sheet.context.view.toScene(point);
    sheet.send({ kind: "wheel", point, amount: -400 });
    const back = sheet.context.view.toScreen(place);
    expect(sheet.context.view.scale).toBeGreaterThan(sheet.context.whole.scale * 2);
    expect(back.x).toBeCloseTo(point.x, 6);
    expect(back.y).toBeCloseTo(point.y, 6);
    sheet.key("0");
    expect(sheet.camera).toBeUndefined();
  });

  it("pinches with two fingers, and takes the drag of the first one back", () => {
    const sheet = reef();
    const grip = sheet.spot("/overflow/weir");
    const finger = (kind: "down" | "move" | "up", pointer: number, x: number, y: number) =>
      sheet.send({ kind, pointer, device: "touch", point: { x, y }, at: 10, button: 0 });
    finger("down", 1, grip.x, grip.y);
    finger("move", 1, grip.x, grip.y + 20);
    expect(sheet.state.kind).toBe("DraggingHandle");
    finger("down", 2, grip.x + 100, grip.y);
    expect(sheet.design).toEqual(exampleDesign("waiting-room-reef"));
    expect(sheet.state.kind).toBe("PinchingSheet");
    finger("move", 2, grip.x + 300, grip.y);
    expect(sheet.context.view.scale).toBeGreaterThan(sheet.context.whole.scale * 1.5);
    finger("up", 1, grip.x, grip.y + 20);
    expect(sheet.state.kind).toBe("Idle");
  });

  it("moves a pump in the tank by a stroke, one step of the history, and Escape takes it back", () => {
    const sheet = reef();
    const before = sheet.design;
    const from = sheet.spot("/tankPumps/0");
    const { scale } = sheet.context.view;
    sheet.stroke(from, { x: from.x + 0.1 * scale, y: from.y }, { x: from.x + 0.2 * scale, y: from.y - 0.1 * scale });
    const [x, y, z] = sheet.design.tankPumps![0]!.at;
    expect(x.value).toBe(before.tankPumps![0]!.at[0].value + 200);
    expect(y).toEqual(before.tankPumps![0]!.at[1]);
    expect(z.value).toBe(before.tankPumps![0]!.at[2].value + 100);
    expect(sheet.history.past.length).toBe(1);
    expect(sheet.undone()).toEqual(before);
    const held = sheet.design;
    const move = { pointer: 1, device: "touch", at: 1, button: 0 } as const;
    const grip = sheet.spot("/tankPumps/0");
    sheet.send({ kind: "down", point: grip, ...move });
    sheet.send({ kind: "move", point: { x: grip.x + 40, y: grip.y - 30 }, ...move });
    expect(sheet.design).not.toEqual(held);
    sheet.send({ kind: "cancel", point: grip, ...move });
    expect(sheet.design).toEqual(held);
  });

  it("steers a pump in the tank by keys: its place, then its aim, each key held one step, Escape ending it", () => {
    const sheet = reef();
    const pump = sheet.design.tankPumps![0]!;
    sheet.key("m", "/tankPumps/0");
    expect(sheet.state).toMatchObject({ kind: "SteeringPart", grip: "place" });
    for (const at of [1, 2, 3]) sheet.send({ kind: "key", key: "ArrowRight", at, focus: "/tankPumps/0" });
    sheet.send({ kind: "keyUp", key: "ArrowRight", at: 4, focus: "/tankPumps/0" });
    expect(sheet.design.tankPumps![0]!.at[0].value).toBe(pump.at[0].value + 30);
    expect(sheet.history.past.length).toBe(1);
    sheet.key("a", "/tankPumps/0");
    sheet.key("ArrowUp", "/tankPumps/0");
    expect(sheet.design.tankPumps![0]!.aim!.pitch).toEqual({ value: 5 + (pump.aim?.pitch.value ?? 0), unit: "deg" });
    expect(sheet.history.past.length).toBe(2);
    expect(checkDesign(sheet.design, demoCatalogue).ok).toBe(true);
    sheet.key("Escape", "/tankPumps/0");
    expect(sheet.state.kind).toBe("Idle");
    sheet.key("m", "/overflow/weir");
    expect(sheet.effects.at(-1)).toMatchObject({ kind: "refuse", why: { key: "drawing.why.fixed" } });
  });

  it("goes from what the document says where keys are faster than the picture, and to the ends of a share", () => {
    const pump = "/loops/0/pumps/0";
    const sheet = reef();
    const { scene } = sheet.context;
    const press = (key: string, at: number) =>
      // The picture is still the one before the first press.
      sheet.send({ kind: "key", key, at, focus: pump }, { scene });
    for (let i = 0; i < 12; i += 1) press("ArrowDown", i);
    expect(sheet.design.loops[0]!.pumps[0]!.speed).toBe(0.88);
    press("Home", 20);
    const least = sheet.design.loops[0]!.pumps[0]!.speed!;
    expect(least).toBeLessThan(0.5);
    press("End", 21);
    expect(sheet.design.loops[0]!.pumps[0]!.speed).toBe(1);
  });

  it("keeps the arrow presses up to the key's release as one step", () => {
    const sheet = reef();
    for (let i = 0; i < 3; i += 1)
      sheet.send({ kind: "key", key: "ArrowUp", at: 10 + i, focus: "/display/standHeight" });
    sheet.send({ kind: "keyUp", key: "ArrowUp", at: 20, focus: "/display/standHeight" });
    expect(sheet.design.display.standHeight.value).toBe(
      exampleDesign("waiting-room-reef").display.standHeight.value + 15,
    );
    expect(sheet.history.past.length).toBe(1);
    expect(sheet.state.kind).toBe("Idle");
  });
});

/** Mulberry32, a small generator of even numbers from a seed (public domain, T. Ettinger). */
function random(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function someEvent(next: () => number, sheet: TestSheet, time: number): SheetEvent {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!;
  const parts = sheet.context.scene.parts.map(({ path }) => path);
  const near = sheet.spot(pick(parts));
  const point =
    next() < 0.6
      ? { x: near.x + (next() - 0.5) * 60, y: near.y + (next() - 0.5) * 60 }
      : { x: next() * 1200, y: next() * 800 };
  const roll = next();
  if (roll < 0.55)
    return {
      kind: pick(["down", "move", "move", "up", "cancel"] as const),
      pointer: pick([1, 1, 1, 2, 3]),
      device: pick(["mouse", "touch"] as const),
      point,
      at: time,
      button: pick([0, 0, 0, 1]),
    };
  if (roll < 0.75)
    return {
      kind: pick(["key", "key", "keyUp"] as const),
      key: pick([
        "Enter",
        "F2",
        "i",
        "I",
        "b",
        "d",
        "p",
        " ",
        "ArrowUp",
        "ArrowLeft",
        "m",
        "a",
        "Delete",
        "Tab",
        "+",
        "-",
        "0",
        "?",
      ]),
      at: time,
      ...(next() < 0.7 ? { focus: pick([...parts, "/nowhere"]) } : {}),
      ...(next() < 0.2 ? { alt: true } : {}),
    };
  if (roll < 0.8) return { kind: "wheel", point, amount: (next() - 0.5) * 900 };
  if (roll < 0.86) return { kind: "choose", choice: pick(partChoiceNames) };
  if (roll < 0.9)
    return { kind: "tool", tool: pick(["insert", "route", "zoomIn", "zoomOut", "whole", "stop"] as const) };
  if (roll < 0.94)
    return {
      kind: "add",
      what: pick(["drain", "chamber", "closedLoop", "sideLoop", "pumpBeside", "tankPump"] as const),
    };
  if (roll < 0.99)
    return {
      kind: "act",
      action: pick([
        "edit",
        "insertAfter",
        "branch",
        "route",
        "duplicate",
        "remove",
        "removeLoop",
        "choosePump",
      ] as const),
      path: pick(parts),
    };
  return { kind: "typed" };
}

describe("any hand on the sheet", () => {
  for (const seed of [1, 2, 3, 4, 5, 6])
    it(`never breaks it, and Escape always leads back (seed ${seed})`, () => {
      const sheet = new TestSheet(exampleDesign(["waiting-room-reef", "hotel-lobby", "first-tank-110"][seed % 3]!));
      const next = random(seed);
      for (let i = 0; i < 250; i += 1) {
        sheet.send(someEvent(next, sheet, i * 40));
        if (i % 25 === 24) {
          for (let press = 0; press < 2; press += 1) sheet.send({ kind: "key", key: "Escape", at: i * 40 + press });
          expect(sheet.state.kind).toBe("Idle");
        }
      }
      expect(checkDesign(sheet.design, demoCatalogue).ok).toBe(true);
    });

  it("leaves the document as it was when what it began is cancelled (seeds 10 to 29)", () => {
    for (let seed = 10; seed < 30; seed += 1) {
      const sheet = reef();
      const next = random(seed);
      const before = sheet.design;
      const parts = sheet.context.scene.parts.map(({ path }) => path);
      const start = sheet.spot(parts[Math.floor(next() * parts.length)]!);
      const one = { pointer: 1, device: "mouse", button: 0 } as const;
      if (next() < 0.3) sheet.send({ kind: "choose", choice: "elbow" });
      else if (next() < 0.4) sheet.send({ kind: "tool", tool: "route" });
      sheet.send({ kind: "down", point: start, at: 1, ...one });
      for (let i = 0; i < 12; i += 1)
        sheet.send({ kind: "move", point: { x: start.x + next() * 90, y: start.y + next() * 90 }, at: 2 + i, ...one });
      if (next() < 0.5) sheet.send({ kind: "cancel", point: start, at: 20, ...one });
      sheet.send({ kind: "key", key: "Escape", at: 21 });
      sheet.send({ kind: "up", point: start, at: 22, ...one });
      expect(sheet.design, `seed ${seed}`).toEqual(before);
    }
  });
});
