import type { Design, Drain, Loop, Part } from "@tidewright/design";
import { valueAt } from "@tidewright/design";
import type { PartList } from "./fields.ts";

const mm = (value: number) => ({ value, unit: "mm" });

/** A part that can be added to a run, as it comes out of the drawer. */
export interface NewPart {
  readonly label: string;
  make(series: string): Part;
}

/** Parts that can be added to a run; `make` is told the pipe size of its neighbours. */
export const newParts: readonly NewPart[] = [
  { label: "Pipe", make: (series) => ({ kind: "pipe", series, length: mm(300) }) },
  { label: "Fitting", make: () => ({ kind: "fitting", fitting: "elbow90", count: 1 }) },
  { label: "Union", make: () => ({ kind: "fitting", fitting: "union", count: 1 }) },
  { label: "Valve", make: () => ({ kind: "valve", valve: "ball", opening: 1 }) },
  { label: "Check valve", make: () => ({ kind: "fitting", fitting: "swingCheck", count: 1 }) },
  { label: "Device", make: () => ({ kind: "device", ref: "uv-36" }) },
  { label: "Outlet", make: () => ({ kind: "outlet", to: "display", depth: mm(30) }) },
  {
    label: "Tee",
    make: (series) => ({
      kind: "tee",
      branches: [0, 1].map((): Part[] => [
        { kind: "pipe", series, length: mm(300) },
        { kind: "outlet", to: "display", depth: mm(30) },
      ]),
    }),
  },
];

/** Returns the pipe size that a new part at `place` of a run should take: that of the nearest pipe before it, else after. */
export function seriesAround(run: readonly Part[], place: number): string {
  const before = run.slice(0, place).reverse();
  for (const part of [...before, ...run.slice(place)])
    if (part.kind === "pipe" && part.series !== undefined) return part.series;
  return "pn16-32";
}

/** Returns a new entry for a list of the design, made after its last one where there is one. */
export function newEntry(design: Design, list: PartList): unknown {
  const there = (valueAt(design, list.path) ?? []) as readonly unknown[];
  const number = there.length + 1;
  const last = there.at(-1);
  switch (list.of) {
    case "pump":
      return last ?? { placed: "inSump", speed: 1 };
    case "chamber": {
      const ids = new Set(design.sump.chambers.map(({ id }) => id));
      let id = `chamber${number}`;
      for (let n = number + 1; ids.has(id); n += 1) id = `chamber${n}`;
      const width = design.sump.chambers[0]?.width ?? mm(400);
      return { id, length: mm(200), width, baffle: mm(250) };
    }
    case "circuit":
      return { name: `Circuit ${number}`, rating: { value: 16, unit: "A" } };
    case "zone":
      return { name: `Zone ${number}`, animals: "mixedReef" };
    case "tankPump": {
      const { width, height } = design.display;
      const half = (q: { value: number; unit: string }) => ({ value: q.value / 2, unit: q.unit });
      return { ref: "brayne-y8", speed: 0.6, at: [mm(60), half(width), half(height)] };
    }
    case "drain":
      return newDrain(design, number);
    case "loop":
      return newLoop(design, number);
    case "run":
      return { kind: "pipe", series: "pn16-32", length: mm(300) };
  }
}

function newDrain(design: Design, number: number): Drain {
  const last = design.drains.at(-1);
  const emergency = !design.drains.some(({ role }) => role === "emergency");
  const elevation = last?.inlet.elevation ?? mm(400);
  const run: Part[] = last?.run.map((part) => part) ?? [
    { kind: "pipe", series: "pn10-40", length: mm(900), rise: mm(-900) },
  ];
  return {
    name: emergency ? "Emergency" : `Drain ${number}`,
    role: emergency ? "emergency" : "secondary",
    kind: emergency ? "dryStandpipe" : "openChannel",
    inlet: { elevation },
    run: run.filter((part) => part.kind !== "valve"),
  };
}

function newLoop(design: Design, number: number): Loop {
  const chamber = design.sump.chambers.at(-1)?.id ?? "return";
  return {
    name: `Loop ${number}`,
    purpose: "side",
    from: { place: `sump.${chamber}`, depth: mm(100) },
    pumps: [{ ref: "ferrow-c15", placed: "inSump", speed: 1 }],
    run: [
      { kind: "pipe", series: "hose-16", length: mm(600) },
      { kind: "outlet", to: `sump.${design.sump.chambers[0]?.id ?? chamber}`, depth: mm(50) },
    ],
  };
}
