import { type FittingMethod, type SiphonTubes, tubeEntranceLoss } from "@tidewright/engine";
import { toSI } from "@tidewright/units";
import type { Overflow } from "../schema/vessels.ts";
import { fittingLosses } from "./knownLosses.ts";

/** The siphon of a hang-on overflow for the engine. Elevations [m above room floor]. */
export interface HangOnModel {
  readonly tubes: SiphonTubes;
  readonly crest: number;
  /** Lower ends in both boxes. */
  readonly mouth: number;
  readonly innerBoxArea: number;
  readonly innerBoxFloor: number;
}

/** Smooth drawn tube. Source: L. F. Moody 1944. */
const roughness = 1.5e-6;
/** Up, over and down again: one bend at each edge of the glass. */
const bends = 2;

/** Returns the siphon of a hang-on overflow as the engine reckons it: each tube with an entrance that stands free in the water, two bends
 *  over the glass, and an exit under water.
 *  overflow Overflow   displayFloor [m above room floor]   method of the fittings   -> HangOnModel; undefined for every other overflow
 *  Findings: none. Throws: never for a document that `checkDesign` accepts.
 *  Valid: tubes alike, bent in a sweep of about 1.5 diameters; sharp elbows lose twice as much in their bends.
 *  Source: Crane TP-410: entrance projecting inward 0.78, exit 1; 90 degree bend r/D 1.5 by the method asked for. */
export function hangOnModel(overflow: Overflow, displayFloor: number, method: FittingMethod): HangOnModel | undefined {
  const { kind, siphon } = overflow;
  if (kind !== "hangOn" || siphon === undefined) return undefined;
  const metres = (q: { value: number; unit: string }) => toSI(q, "length");
  const bore = metres(siphon.bore);
  const bend = fittingLosses("elbow90Sweep", bore, method);
  return {
    tubes: {
      count: siphon.tubes,
      bore,
      length: metres(siphon.length),
      roughness,
      lossCoefficient: tubeEntranceLoss + bends * bend.turbulent + 1,
      laminarLoss: bends * bend.laminar,
    },
    crest: displayFloor + metres(siphon.crest),
    mouth: displayFloor + metres(siphon.mouth),
    innerBoxArea: metres(siphon.innerBox.length) * metres(siphon.innerBox.width),
    innerBoxFloor: displayFloor + metres(siphon.innerBox.floor),
  };
}
