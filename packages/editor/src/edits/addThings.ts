import type { Design, Drain, Part, Run } from "@tidewright/design";
import { valueAt } from "@tidewright/design";
import { metres } from "../elevation/frame.ts";
import { fromPlace } from "./drawRun.ts";
import { freeName } from "./freeName.ts";
import { typedLength } from "./lengths.ts";
import { type Outcome, refused } from "./outcome.ts";
import { runPartAt } from "./runPart.ts";

/** Things that can be added to a design as a whole. */
export const additionNames = [
  "drain",
  "chamber",
  "closedLoop",
  "sideLoop",
  "returnLoop",
  "pumpBeside",
  "tankPump",
] as const;
/** One of `additionNames`. */
export type Addition = (typeof additionNames)[number];

/** Returns the edits that add a drain, a chamber, a loop, a second pump or a pump in the display.
 *  design checked design   what   at path of the part in hand, which says which loop or which chamber   -> Outcome, the
 *  new thing in hand. New loops have no pump chosen yet: the ranking is asked about them.
 *  Source: own construction. */
export function addThing(design: Design, what: Addition, at = ""): Outcome {
  switch (what) {
    case "drain":
      return addDrain(design);
    case "chamber":
      return addChamber(design, at);
    case "tankPump":
      return addTankPump(design);
    case "pumpBeside":
      return addPump(design, at);
    case "closedLoop":
      return fromPlace(design, "display", "display");
    case "sideLoop": {
      const { chambers } = design.sump;
      return fromPlace(design, `sump.${chambers.at(-1)!.id}`, `sump.${chambers[0]!.id}`);
    }
    case "returnLoop":
      return fromPlace(design, `sump.${design.sump.chambers.at(-1)!.id}`, "display");
  }
}

function addDrain(design: Design): Outcome {
  return fromPlace(design, "overflowBox", `sump.${design.sump.chambers[0]!.id}`);
}

/** Half of the chamber in hand, or of the longest, becomes a chamber of its own, so that the sump keeps its length. */
function addChamber(design: Design, at: string): Outcome {
  const { chambers } = design.sump;
  if (chambers.length >= 12) return refused("drawing.why.twelveChambers");
  const named = Number(/^\/sump\/chambers\/(\d+)/.exec(at)?.[1] ?? "-1");
  const longest = chambers.reduce(
    (best, one, i) => (metres(one.length) > metres(chambers[best]!.length) ? i : best),
    0,
  );
  const place = named >= 0 ? named : longest;
  const chamber = chambers[place]!;
  const ids = new Set(chambers.map(({ id }) => id));
  let number = chambers.length + 1;
  while (ids.has(`chamber${number}`)) number += 1;
  const { unit } = chamber.length;
  const half = typedLength(metres(chamber.length) / 2, unit);
  const rest = { value: Number((chamber.length.value - half.value).toFixed(6)), unit };
  const baffle = chamber.baffle ?? typedLength(metres(design.sump.operatingLevel) + 0.04, unit);
  // It stands before the one in hand, so that the last chamber stays the one that the pumps draw from.
  return {
    ok: true,
    edits: [
      { op: "set", path: `/sump/chambers/${place}/length`, value: rest },
      {
        op: "insert",
        path: `/sump/chambers/${place}`,
        value: { id: `chamber${number}`, length: half, width: chamber.width, baffle },
      },
    ],
    select: `/sump/chambers/${place}`,
    label: { key: "drawing.step.addChamber" },
  };
}

/** At the left end, half way up, turned along the tank: a place to drag it from. */
function addTankPump(design: Design): Outcome {
  const { display, tankPumps } = design;
  const { unit } = display.length;
  const right = (tankPumps?.length ?? 0) % 2 === 1;
  const inset = Math.min(0.06, metres(display.length) / 4);
  const x = right ? metres(display.length) - inset : inset;
  const pump = {
    ref: "brayne-y8",
    speed: 0.6,
    at: [
      typedLength(x, unit),
      typedLength(metres(display.width) / 2, unit),
      typedLength(metres(display.height) / 2, unit),
    ],
    aim: { yaw: { value: right ? 180 : 0, unit: "deg" }, pitch: { value: 0, unit: "deg" } },
  };
  const count = tankPumps?.length ?? 0;
  return {
    ok: true,
    edits:
      tankPumps === undefined
        ? [{ op: "set", path: "/tankPumps", value: [pump] }]
        : [{ op: "insert", path: `/tankPumps/${count}`, value: pump }],
    select: `/tankPumps/${count}`,
    label: { key: "drawing.step.addTankPump" },
  };
}

/** A second pump of the same kind; pumps side by side need a check valve each, or one would run back through the other. */
function addPump(design: Design, at: string): Outcome {
  const line = /^\/loops\/(\d+)/.exec(at)?.[1];
  const loop = line === undefined ? undefined : design.loops[Number(line)];
  if (loop === undefined) return refused("drawing.why.noLoopInHand");
  if (loop.pumps.length >= 6) return refused("drawing.why.sixPumps");
  const base = `/loops/${line}/pumps`;
  const series = loop.arrangement === "series";
  const pumps = series ? loop.pumps : loop.pumps.map((pump) => ({ ...pump, checkValve: true }));
  const copy = pumps.at(-1)!;
  return {
    ok: true,
    edits: [{ op: "set", path: base, value: [...pumps, copy] }],
    select: `${base}/${loop.pumps.length}`,
    label: { key: "drawing.step.addPump" },
  };
}

/** Returns the edits that put a like part, drain, pump or branch next to the one at a path.
 *  design   path of it   -> Outcome, the copy in hand
 *  Source: own construction. */
export function duplicatePart(design: Design, path: string): Outcome {
  const label = { key: "drawing.step.duplicate" } as const;
  const there = runPartAt(design, path);
  if (there !== undefined) {
    const { part, base, index } = there;
    if (part.kind === "outlet") return duplicateBranch(design, base);
    if (part.kind === "tee") return refused("drawing.why.teeTwice");
    const copy: Part = part.kind === "pipe" ? part : { ...part };
    return {
      ok: true,
      edits: [{ op: "insert", path: `${base}/${index + 1}`, value: copy }],
      select: `${base}/${index + 1}`,
      label,
    };
  }
  if (/^\/loops\/\d+\/pumps\/\d+$/.test(path)) return addPump(design, path);
  const list = /^\/(drains|tankPumps)\/(\d+)$/.exec(path);
  if (list === null) return refused("drawing.why.cannotDouble");
  const entries = valueAt(design, `/${list[1]}`) as readonly (Drain | { name?: string })[] | undefined;
  const place = Number(list[2]) + 1;
  const entry = entries?.[place - 1];
  if (entry === undefined) return refused("drawing.why.nothingHere");
  const copy = { ...entry };
  if (copy.name !== undefined)
    copy.name = freeName(
      copy.name,
      entries!.map(({ name }) => name ?? ""),
    );
  return {
    ok: true,
    edits: [{ op: "insert", path: `/${list[1]}/${place}`, value: copy }],
    select: `/${list[1]}/${place}`,
    label,
  };
}

function duplicateBranch(design: Design, base: string): Outcome {
  const found = /^(.*)\/branches\/(\d+)$/.exec(base);
  if (found === null) return refused("drawing.why.outletTwice");
  const tee = runPartAt(design, found[1]!);
  if (tee?.part.kind !== "tee") return refused("drawing.why.nothingHere");
  if (tee.part.branches.length >= 8) return refused("drawing.why.eightBranches");
  const branch = valueAt(design, base) as Run;
  const place = Number(found[2]) + 1;
  return {
    ok: true,
    edits: [{ op: "insert", path: `${found[1]}/branches/${place}`, value: branch }],
    select: `${found[1]}/branches/${place}/${branch.length - 1}`,
    label: { key: "drawing.step.duplicate" },
  };
}
