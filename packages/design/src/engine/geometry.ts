import { toSI } from "@tidewright/units";
import type { Design } from "../schema/design.ts";

/** One sump chamber in SI: plan area [m2], baffle after it [m above the sump's floor], width of that baffle [m]. */
export interface ChamberGeometry {
  readonly id: string;
  readonly path: string;
  readonly area: number;
  readonly baffle: number | undefined;
  readonly baffleWidth: number;
}

/** Every vessel in metres above the room's floor. */
export interface Geometry {
  readonly displayFloor: number;
  readonly displayRim: number;
  readonly displayGrossArea: number;
  /** Plan area less the share of rock [m2]. */
  readonly displayWaterArea: number;
  readonly rockShare: number;
  readonly weir: {
    readonly length: number;
    readonly toothOpenShare: number;
    readonly toothHeight: number;
    readonly crestHeight: number;
  };
  readonly weirCrest: number;
  readonly boxArea: number;
  /** Plan of the box inside that a hang-on overflow draws from [m2]; 0 where there is none. */
  readonly innerBoxArea: number;
  readonly boxFloor: number;
  readonly boxRim: number;
  readonly sumpFloor: number;
  readonly sumpRim: number;
  readonly chambers: readonly ChamberGeometry[];
  /** Depth of water in the last chamber [m]. */
  readonly operatingLevel: number;
}

/** Returns a design's vessels in metres above the room's floor.
 *  design Design   -> Geometry
 *  Findings: none. Throws: never for a document that `checkDesign` accepts.
 *  Valid: rectangular vessels with upright walls.
 *  Source: geometry. */
export function geometryOf(design: Design): Geometry {
  const { display, overflow, sump } = design;
  const length = (q: { value: number; unit: string }) => toSI(q, "length");
  const displayFloor = length(display.standHeight);
  const gross = length(display.length) * length(display.width);
  const boxArea = length(overflow.box.length) * length(overflow.box.width);
  const rockShare = display.rockShare ?? 0;
  const crestHeight = length(overflow.weir.crest);
  const sumpFloor = length(sump.floor);
  // A box inside takes its own plan off the display.
  const inner = overflow.kind === "hangOn" ? overflow.siphon?.innerBox : undefined;
  const innerBoxArea = inner ? length(inner.length) * length(inner.width) : 0;
  const open = gross - (overflow.kind === "internalBox" ? boxArea : innerBoxArea);
  return {
    displayFloor,
    displayRim: displayFloor + length(display.height),
    displayGrossArea: gross,
    displayWaterArea: Math.max(0, open) * (1 - rockShare),
    rockShare,
    weir: {
      length: length(overflow.weir.length),
      toothOpenShare: overflow.weir.toothOpenShare ?? 1,
      toothHeight: overflow.weir.toothHeight ? length(overflow.weir.toothHeight) : 0,
      crestHeight,
    },
    weirCrest: displayFloor + crestHeight,
    boxArea,
    innerBoxArea,
    boxFloor: displayFloor + length(overflow.box.floor),
    boxRim: displayFloor + length(overflow.box.rim),
    sumpFloor,
    sumpRim: sumpFloor + length(sump.height),
    chambers: sump.chambers.map((chamber, i) => ({
      id: chamber.id,
      path: `/sump/chambers/${i}`,
      area: length(chamber.length) * length(chamber.width),
      baffle: chamber.baffle ? length(chamber.baffle) : undefined,
      baffleWidth: length(chamber.width),
    })),
    operatingLevel: length(sump.operatingLevel),
  };
}
