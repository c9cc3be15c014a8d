import type { Assessment, WhatIf } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import {
  type AreaShape,
  type Extent,
  layoutElevation,
  layoutFrame,
  type PipeShape,
  type Point,
  pointAlong,
  polylineLength,
  type Scene,
  type ScenePart,
  type Shape,
  sceneInWords,
} from "@tidewright/editor";
import { englishWords, type Words } from "@tidewright/words";

/** A vessel whose level the film moves. */
export interface FilmVessel {
  /** Index in `WhatIf.vessels`. */
  readonly index: number;
  readonly path: string;
  readonly place: string;
  /** Walls and floor; y1 is the rim [m]. */
  readonly extent: Extent;
  /** Spans of its surface that are seen [m]. */
  readonly surface: readonly (readonly [number, number])[];
  /** Place of the mark on the surface [m]. */
  readonly mark: number;
  /** Painted over the body of the box, where the others are painted under glass and rock. */
  readonly over: boolean;
  readonly spills: boolean;
}

/** A sheet of water over a crest, from one vessel into another. */
export interface FilmCrest {
  readonly from: number;
  readonly to: number;
  readonly at: Point;
  readonly way: 1 | -1;
  /** Floor of the vessel below [m]. */
  readonly floor: number;
}

/** A run with the water in it. */
export interface FilmRun {
  /** JSON Pointer of the run. */
  readonly base: string;
  readonly pipes: readonly PipeShape[];
  /** Where its arrow stands and which way the run goes [rad]. */
  readonly arrow: Point & { readonly angle: number };
  readonly bore: number;
  readonly source:
    | { readonly kind: "drain"; readonly index: number }
    | { readonly kind: "loop"; readonly index: number; readonly outlets: readonly number[] };
}

/** A drain or a loop, whose pipes hold a share of the water that fills them. */
export interface FilmLine {
  readonly kind: "drain" | "loop";
  readonly index: number;
  readonly pipes: readonly PipeShape[];
  /** Water clings to the wall of a pipe that air shares. */
  readonly vented: boolean;
  /** Vessel that a loop draws from, by its index in `WhatIf.vessels`. */
  readonly source?: number;
}

/** A jet into the display. */
export interface FilmJet {
  readonly shape: AreaShape;
  readonly loop: number;
  readonly outlet: number;
}

/** The elevation taken apart into what stands still and what a film moves. */
export interface FilmScene {
  readonly scene: Scene;
  readonly bodies: Scene;
  readonly marks: Scene;
  readonly pipes: Scene;
  readonly vessels: readonly FilmVessel[];
  readonly crests: readonly FilmCrest[];
  readonly lines: readonly FilmLine[];
  readonly runs: readonly FilmRun[];
  readonly jets: readonly FilmJet[];
}

const moving = new Set(["water", "deepWater", "surface", "nappe", "jet"]);

/** Returns the elevation of a design taken apart for a film.
 *  design checked design   assessment of it   result a scenario played on it   words of the reader   -> FilmScene [m]
 *  Findings: none. Throws: never.
 *  Valid: any checked design.
 *  Source: own construction on `layoutElevation`. */
export function filmScene(
  design: Design,
  assessment: Assessment,
  result: WhatIf,
  words: Words = englishWords,
): FilmScene {
  const scene = sceneInWords(layoutElevation(design, assessment), words);
  const only = (wanted: (shape: Shape) => boolean): Scene => ({ ...scene, shapes: scene.shapes.filter(wanted) });
  const pipes = scene.shapes.filter((shape) => shape.kind === "pipe");
  const vessels = filmVessels(design, assessment, result, scene);
  return {
    scene,
    bodies: only((shape) => (shape.kind === "area" || shape.kind === "line") && !moving.has(shape.ink)),
    pipes: {
      ...scene,
      shapes: pipes.map((pipe) => (pipe.path === "/overflow/siphon" ? pipe : { ...pipe, water: "dry" as const })),
    },
    marks: only(
      (shape) =>
        shape.kind === "box" ||
        (shape.kind === "symbol" && shape.symbol !== "waterLevel" && shape.symbol !== "flowArrow"),
    ),
    vessels,
    crests: filmCrests(design, assessment, vessels),
    lines: [
      ...design.drains.map(
        (drain, index): FilmLine => ({
          kind: "drain",
          index,
          pipes: under(pipes, `/drains/${index}/`),
          vented: drain.kind !== "throttledSiphon",
        }),
      ),
      ...design.loops.map(({ from }, index): FilmLine => {
        const source = result.vessels.findIndex(({ place }) => place === from.place);
        return {
          kind: "loop",
          index,
          pipes: under(pipes, `/loops/${index}/`),
          vented: false,
          ...(source < 0 ? {} : { source }),
        };
      }),
    ],
    runs: filmRuns(pipes, assessment),
    jets: scene.shapes.flatMap((shape): FilmJet[] => {
      if (shape.kind !== "area" || shape.ink !== "jet") return [];
      const loop = Number(shape.path.split("/")[2]);
      const outlet = outletsOf(assessment, loop).indexOf(shape.path);
      return outlet < 0 ? [] : [{ shape, loop, outlet }];
    }),
  };
}

const under = (pipes: readonly PipeShape[], base: string) => pipes.filter(({ path }) => path.startsWith(base));

/** Paths of a loop's outlets in the order in which the film lists their flows. */
function outletsOf(assessment: Assessment, loop: number): string[] {
  return assessment.outlets.map(({ path }) => path).filter((path) => path.startsWith(`/loops/${loop}/`));
}

function filmVessels(design: Design, assessment: Assessment, result: WhatIf, scene: Scene): FilmVessel[] {
  const { display, box, inner, chambers, sump, surfaces } = layoutFrame(design, assessment);
  const inside = design.overflow.kind === "internalBox";
  const markOf = (path: string, fallback: number) =>
    scene.shapes.find((shape) => shape.kind === "symbol" && shape.symbol === "waterLevel" && shape.path === path) ??
    ({ at: { x: fallback } } as { readonly at: { readonly x: number } });
  return result.vessels.flatMap(({ place, path }, index): FilmVessel[] => {
    const vessel = (extent: Extent, surface: FilmVessel["surface"], over: boolean, spills: boolean): FilmVessel[] => [
      {
        index,
        path,
        place,
        extent,
        surface,
        mark: (markOf(path, (extent.x0 + extent.x1) / 2) as { readonly at: { readonly x: number } }).at.x,
        over,
        spills,
      },
    ];
    if (place === "display")
      return vessel(
        display,
        surfaces.map(({ x0, x1 }) => [x0, x1]),
        false,
        true,
      );
    if (place === "innerBox" && inner !== undefined)
      return vessel({ ...inner, y1: display.y1 }, [[inner.x0, inner.x1]], true, false);
    if (place === "overflowBox") return vessel(box, [[box.x0, box.x1]], true, !inside);
    const chamber = chambers.find(({ id }) => place === `sump.${id}`);
    if (chamber === undefined) return [];
    const { x0, x1 } = chamber;
    return vessel({ x0, x1, y0: sump.y0, y1: sump.y1 }, [[x0, x1]], false, true);
  });
}

function filmCrests(design: Design, assessment: Assessment, vessels: readonly FilmVessel[]): FilmCrest[] {
  const { box, inner, crest, chambers, sump, weir: seen, flow } = layoutFrame(design, assessment);
  const at = (place: string) => vessels.findIndex((vessel) => vessel.place === place);
  const weir: FilmCrest = {
    from: at("display"),
    to: at(inner === undefined ? "overflowBox" : "innerBox"),
    at: { x: seen.edge, y: crest },
    way: flow > 0 ? -1 : 1,
    floor: (inner ?? box).y0,
  };
  const baffles = chambers.flatMap(({ end, baffle, id }, i): FilmCrest[] =>
    baffle === undefined
      ? []
      : [
          {
            from: at(`sump.${id}`),
            to: at(`sump.${chambers[i + 1]!.id}`),
            at: { x: end, y: baffle },
            way: flow,
            floor: sump.y0,
          },
        ],
  );
  return [weir, ...baffles].filter(({ from, to }) => from >= 0 && to >= 0);
}

/** One arrow a run, on its longest pipe; headers of tees, whose ends go both ways, have none. */
function filmRuns(pipes: readonly PipeShape[], assessment: Assessment): FilmRun[] {
  const runs = new Map<string, PipeShape[]>();
  for (const pipe of pipes) {
    const base = pipe.path.slice(0, pipe.path.lastIndexOf("/"));
    if (!pipe.square) runs.set(base, [...(runs.get(base) ?? []), pipe]);
  }
  return [...runs].flatMap(([base, own]): FilmRun[] => {
    const [, section, number] = base.split("/");
    if (section !== "drains" && section !== "loops") return [];
    const index = Number(number);
    const longest = own.reduce((a, b) => (polylineLength(b.points) > polylineLength(a.points) ? b : a));
    const length = polylineLength(longest.points);
    if (!(length > 0.02)) return [];
    const arrow = pointAlong(longest.points, length * 0.62);
    const rest = { base, pipes: own, arrow, bore: longest.bore };
    if (section === "drains") return [{ ...rest, source: { kind: "drain", index } }];
    const paths = outletsOf(assessment, index);
    // The suction side carries what all outlets give.
    const outlets = paths.flatMap((path, i) => (base.includes("/suction") || path.startsWith(`${base}/`) ? [i] : []));
    return [{ ...rest, source: { kind: "loop", index, outlets } }];
  });
}

/** Returns the parts of the elevation that bear numbers in a film, with room for the longest of them.
 *  scene FilmScene   result WhatIf   narrow true on a phone   words of the reader   -> parts for `placeLabels`
 *  Findings: none. Throws: never.
 *  Valid: any film.
 *  Source: own construction. */
export function filmParts(
  { scene, vessels: all }: FilmScene,
  result: WhatIf,
  narrow: boolean,
  { say }: Words = englishWords,
): ScenePart[] {
  // On a phone the chart has every vessel; the drawing keeps those where water comes from and goes to.
  const last = all.at(-1);
  const vessels = all.filter((vessel) => !narrow || !vessel.place.startsWith("sump.") || vessel === last);
  const found = (path: string) => scene.parts.find((part) => part.path === path);
  const widest = (index: number) => {
    const { rim, highest, lowest, start } = result.vessels[index]!;
    return {
      margin: rim === undefined ? 0 : Math.max(Math.abs(rim - highest), Math.abs(rim - lowest)),
      change: Math.max(highest - start, start - lowest),
    };
  };
  const bare = (part: ScenePart): ScenePart => {
    const { handle: _, state: __, shown: ___, ...rest } = part;
    return { ...rest, narrow: true };
  };
  return [
    ...vessels.flatMap(({ path, index }): ScenePart[] => {
      const part = found(path);
      if (part === undefined) return [];
      const { margin, change } = widest(index);
      return [
        {
          ...bare(part),
          rank: 1,
          figures: [
            { value: margin, dimension: "length", after: say("film.overRimWord") },
            { value: change, dimension: "length", before: say("film.downWord") },
          ],
        },
      ];
    }),
    ...result.drainPeak.flatMap((peak, i): ScenePart[] => {
      const part = found(`/drains/${i}`);
      return part === undefined ? [] : [{ ...bare(part), rank: 2, figures: [{ value: peak, dimension: "flow" }] }];
    }),
  ];
}
