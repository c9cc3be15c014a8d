import type { Assessment } from "@tidewright/advice";
import type { Design, Overflow } from "@tidewright/design";
import { toSI } from "@tidewright/units";
import type { Extent, Levels } from "./scene.ts";

/** Where the large bodies stand in the picture and how high the water is in them [m]. */
export interface Frame {
  readonly design: Design;
  /** +1 where water runs from left to right in the picture, -1 where the box hangs right and it runs to the left. */
  readonly flow: 1 | -1;
  readonly display: Extent;
  readonly box: Extent;
  /** The box inside of an overflow that hangs on the glass, up to the crest. */
  readonly inner: Extent | undefined;
  /** Weir crest, its visible length, and the side of the box at which the water falls. */
  readonly crest: number;
  readonly weir: { readonly x0: number; readonly x1: number; readonly edge: number };
  readonly sump: Extent;
  readonly chambers: readonly ChamberFrame[];
  readonly standTop: number;
  readonly level: { readonly display: number; readonly box: number; readonly inner: number };
  /** Part of the display free for rock, outlets and pumps. */
  readonly open: Span;
  /** Where the display's surface can be seen beside the box. */
  readonly surfaces: readonly Span[];
}

/** A stretch along the picture [m]. */
export interface Span {
  readonly x0: number;
  readonly x1: number;
}

export interface ChamberFrame {
  readonly id: string;
  readonly path: string;
  readonly x0: number;
  readonly x1: number;
  /** The wall that water leaves it by. */
  readonly end: number;
  readonly level: number;
  /** Elevation of the baffle's top after this chamber; none after an open side. */
  readonly baffle: number | undefined;
}

type Length = { readonly value: number; readonly unit: string };

/** Returns a length of the design in metres.
 *  q length as typed   -> length [m]
 *  Findings: none. Throws: where the unit is no length, which a checked design cannot have.
 *  Valid: every length unit of the units package.
 *  Source: own construction.
 *  Example: metres({ value: 1500, unit: "mm" })  ->  1.5 */
export function metres(q: Length): number {
  let factor = factors.get(q.unit);
  if (factor === undefined) {
    factor = toSI({ value: 1, unit: q.unit }, "length");
    factors.set(q.unit, factor);
  }
  return q.value * factor;
}

/** Every unit of length is a multiple of the metre, so each is looked up once and not at every part of every frame. */
const factors = new Map<string, number>();

/** Returns the places of display, overflow box, sump and chambers in the elevation, and the water levels in them.
 *  Water runs away from the box: with it at the left, sump chambers follow each other to the right and returns rise at the
 *  right; with it at the right wall, or in the right half of the back wall, all that is the other way round.
 *  design checked design   assessment levels as computed, if there are any   levels levels that count instead [m]
 *  -> frame [m]
 *  Findings: none. Throws: never for a checked design.
 *  Valid: any checked design. Without an assessment water stands at the weir crest and at the operating level.
 *  Source: own construction. */
export function layoutFrame(design: Design, assessment: Assessment | undefined, levels: Levels = {}): Frame {
  const frame = frameAlongFlow(design, assessment, levels);
  return frame.flow < 0 ? mirroredFrame(frame) : frame;
}

/** Returns the frame as it would be with the box at the left, in which everything is laid out; its `flow` says whether the
 *  picture shows it the other way round.
 *  design, assessment, levels as for `layoutFrame`   -> frame [m]
 *  Findings: none. Throws: never for a checked design.
 *  Valid: any checked design.
 *  Source: own construction. */
export function frameAlongFlow(design: Design, assessment: Assessment | undefined, levels: Levels = {}): Frame {
  const length = metres(design.display.length);
  const floor = metres(design.display.standHeight);
  const display = { x0: 0, x1: length, y0: floor, y1: floor + metres(design.display.height) };
  const crest = floor + metres(design.overflow.weir.crest);
  const pumpPlaces = (design.tankPumps ?? []).map((pump) => metres(pump.at[0]));
  const flow = flowOf(design.overflow, length);
  const box = boxExtent(design.overflow, flow, length, floor, pumpPlaces);
  const displayLevel = levels.display ?? assessment?.overflow.displayLevel ?? crest;
  const boxLevel = levels.box ?? assessment?.overflow.boxLevel ?? fallbackBoxLevel(design, box, floor, crest);
  const inner = innerExtent(design.overflow, length, floor, crest);
  const weirBox = inner ?? box;
  const weirLength = Math.min(metres(design.overflow.weir.length), weirBox.x1 - weirBox.x0);
  const sumpLength = design.sump.chambers.reduce((sum, chamber) => sum + metres(chamber.length), 0);
  const slack = length - sumpLength;
  // The first chamber stands under the drains where the stand leaves the choice.
  const drains = Math.min(0.15 * design.drains.length, box.x1 - box.x0);
  const under = box.x0 + drains / 2 - metres(design.sump.chambers[0]!.length) / 2;
  const sumpLeft = slack > 0.12 ? Math.min(Math.max(0.06, under), slack - 0.06) : slack / 2;
  const sumpFloor = metres(design.sump.floor);
  const open = { x0: Math.max(0, Math.min(weirBox.x1, length * 0.9)), x1: length };
  return {
    design,
    flow,
    display,
    box,
    inner,
    crest,
    weir: { x0: weirBox.x1 - weirLength, x1: weirBox.x1, edge: weirBox.x1 },
    sump: { x0: sumpLeft, x1: sumpLeft + sumpLength, y0: sumpFloor, y1: sumpFloor + metres(design.sump.height) },
    chambers: layoutChambers(design, assessment, levels, sumpLeft, sumpFloor),
    standTop: floor,
    level: { display: displayLevel, box: boxLevel, inner: assessment?.overflow.siphon?.innerLevel ?? boxLevel },
    open,
    surfaces: [...(box.x0 > 0 ? [{ x0: 0, x1: box.x0 }] : []), open],
  };
}

/** The frame as seen from behind: what was `x` from the left wall is `x` from the right one. */
function mirroredFrame(frame: Frame): Frame {
  const over = (x: number) => frame.display.x1 - x;
  const turned = <Kind extends Span>(span: Kind): Kind => ({ ...span, x0: over(span.x1), x1: over(span.x0) });
  return {
    ...frame,
    box: turned(frame.box),
    inner: frame.inner && turned(frame.inner),
    weir: { ...turned(frame.weir), edge: over(frame.weir.edge) },
    sump: turned(frame.sump),
    chambers: frame.chambers.map((chamber) => ({ ...turned(chamber), end: over(chamber.end) })),
    open: turned(frame.open),
    surfaces: frame.surfaces.map(turned),
  };
}

/** Water runs away from the wall, or the half of the back wall, that the box hangs on. */
function flowOf({ box }: Overflow, displayLength: number): 1 | -1 {
  if (box.at?.wall === "right") return -1;
  if (box.at?.wall !== "back") return 1;
  const boxLength = metres(box.length);
  return alongBack(box.at.along, boxLength, displayLength) + boxLength / 2 > displayLength / 2 + 1e-9 ? -1 : 1;
}

/** How far from the left wall a box on the back wall begins: as typed, as far as the wall is long. */
const alongBack = (along: Length, boxLength: number, displayLength: number): number =>
  Math.min(metres(along), Math.max(0, displayLength - boxLength));

/** Glass of the tank and of the box that hangs on it [m]. */
const gapToHungBox = 0.03;

/** The box inside that the tubes of a hang-on overflow draw from, seen end-on. */
function innerExtent(
  { kind, siphon }: Overflow,
  displayLength: number,
  displayFloor: number,
  crest: number,
): Extent | undefined {
  if (kind !== "hangOn" || siphon === undefined) return undefined;
  const x1 = Math.min(metres(siphon.innerBox.width), displayLength / 2);
  return { x0: 0, x1, y0: displayFloor + metres(siphon.innerBox.floor), y1: crest };
}

/** A box beside the tank of which nothing says where is drawn end-on where its length would dwarf the tank. */
function boxExtent(
  overflow: Overflow,
  flow: 1 | -1,
  displayLength: number,
  displayFloor: number,
  pumps: readonly number[],
): Extent {
  const { box, kind } = overflow;
  const y0 = displayFloor + metres(box.floor);
  const y1 = displayFloor + metres(box.rim);
  const boxLength = metres(box.length);
  const inside = kind === "internalBox";
  // What hangs on the glass is shown beside it, from whichever wall, so that its siphon can be seen.
  if (kind === "hangOn") {
    const seen = boxLength > 0.5 * displayLength ? Math.min(boxLength, metres(box.width)) : boxLength;
    return { x0: -gapToHungBox - seen, x1: -gapToHungBox, y0, y1 };
  }
  if (box.at?.wall === "back") {
    const typed = alongBack(box.at.along, boxLength, displayLength);
    const x0 = flow > 0 ? typed : Math.max(0, displayLength - typed - boxLength);
    return { x0, x1: Math.min(x0 + boxLength, displayLength), y0, y1 };
  }
  // Along a side wall one looks at the box's end.
  if (box.at !== undefined) {
    const seen = metres(box.width);
    return inside ? { x0: 0, x1: Math.min(seen, displayLength), y0, y1 } : { x0: -seen, x1: 0, y0, y1 };
  }
  if (inside) {
    const x0 = freeOf(pumps, boxLength, displayLength);
    return { x0, x1: Math.min(x0 + boxLength, displayLength), y0, y1 };
  }
  const seen = boxLength > 0.4 * displayLength ? Math.min(boxLength, metres(box.width)) : boxLength;
  return { x0: -seen, x1: 0, y0, y1 };
}

/** Where the design does not say where along the back wall the box hangs: at the left end, or right of pumps that stand
 *  there. */
function freeOf(pumps: readonly number[], boxLength: number, displayLength: number): number {
  let x0 = 0;
  for (const x of [...pumps].sort((a, b) => a - b)) if (x > x0 - 0.1 && x < x0 + boxLength + 0.02) x0 = x + 0.1;
  return x0 + boxLength < displayLength * 0.7 ? x0 : 0;
}

function fallbackBoxLevel(design: Design, box: Extent, displayFloor: number, crest: number): number {
  const inlets = design.drains.map((drain) => displayFloor + metres(drain.inlet.elevation));
  return Math.min(Math.max(box.y0, Math.min(...inlets)), Math.max(crest, box.y0));
}

function layoutChambers(
  design: Design,
  assessment: Assessment | undefined,
  levels: Levels,
  left: number,
  floor: number,
): ChamberFrame[] {
  const running = floor + metres(design.sump.operatingLevel);
  let right = left;
  const spans = design.sump.chambers.map((chamber) => {
    const x0 = right;
    right = x0 + metres(chamber.length);
    return { x0, x1: right };
  });
  // Without an assessment each chamber stands at the baffle after it, the last at the operating level.
  const fallback: number[] = [];
  let downstream = running;
  for (let i = design.sump.chambers.length - 1; i >= 0; i--) {
    const baffle = design.sump.chambers[i]!.baffle;
    const last = i === design.sump.chambers.length - 1;
    downstream = last || !baffle ? downstream : Math.max(downstream, floor + metres(baffle));
    fallback[i] = downstream;
  }
  return design.sump.chambers.map((chamber, i) => ({
    id: chamber.id,
    path: `/sump/chambers/${i}`,
    ...spans[i]!,
    end: spans[i]!.x1,
    level: levels.chambers?.[i] ?? assessment?.sump.chambers[i]?.level ?? fallback[i]!,
    baffle: chamber.baffle && i < design.sump.chambers.length - 1 ? floor + metres(chamber.baffle) : undefined,
  }));
}
