import type { Catalogue } from "@tidewright/catalogue";
import type { DrainLine, DrainSegment, FittingMethod, ValveKind } from "@tidewright/engine";
import { toSI } from "@tidewright/units";
import type { Drain } from "../schema/loops.ts";
import { type SizedPart, sizeRun } from "./sections.ts";

/** A drain for the engine, with the way back to its parts. `outletElevation` in `line` waits for the sump's level. */
export interface DrainModel {
  readonly path: string;
  readonly line: DrainLine;
  readonly parts: readonly SizedPart[];
  /** The first valve of the run: what a wished share is set with. */
  readonly valve:
    | { readonly kind: ValveKind; readonly opening: number; readonly diameter: number; readonly path: string }
    | undefined;
  readonly place: string;
  readonly depth: number;
  /** Where the run's rises put its end [m above room floor]: used where the end hangs free. */
  readonly pipeVolume: number;
}

/** Returns a drain as the engine rates it: segments with entrance and exit losses, the valve's loss apart.
 *  drain Drain   index in the design   displayFloor [m above room floor]   -> DrainModel
 *  Findings: none. Throws: never for a document that `checkReferences` accepts.
 *  Valid: a single run without tees.
 *  Source: engine `DrainLine`. Entrance 0.5 (Crane TP-410, sharp); exit 1. */
export function drainModel(
  drain: Drain,
  index: number,
  catalogue: Catalogue,
  method: FittingMethod,
  displayFloor: number,
): DrainModel {
  const path = `/drains/${index}`;
  const run = sizeRun(drain.run, `${path}/run`, catalogue, method);
  const parts = run.parts;
  const valvePart = parts.find((part) => part.valve);
  let bore = Number.POSITIVE_INFINITY;
  let pipeVolume = 0;
  for (const part of parts) {
    if (part.kind === "pipe" && part.diameter < bore) bore = part.diameter;
    pipeVolume += (Math.PI / 4) * part.diameter * part.diameter * part.length;
  }
  if (bore === Number.POSITIVE_INFINITY) bore = run.firstBore;
  const first = parts[0];
  const named = first?.fitting?.startsWith("entrance") || first?.fitting === "strainer";
  const segments: Segment[] = [];
  for (const part of parts) if (part !== valvePart) addSegment(segments, part);
  if (!named)
    addSegment(segments, { length: 0, diameter: run.firstBore, roughness: 0, lossCoefficient: 0.5, laminarLoss: 0 });
  const inletElevation = displayFloor + toSI(drain.inlet.elevation, "length");
  const outlet = run.outlet?.part;
  return {
    path,
    line: {
      bore,
      inletDiameter: Math.max(bore, drain.inlet.diameter ? toSI(drain.inlet.diameter, "length") : run.firstBore),
      segments,
      valveLoss: valvePart ? valvePart.lossCoefficient * (bore / valvePart.diameter) ** 4 : 0,
      inletElevation,
      outletElevation: 0,
    },
    parts,
    valve: valvePart?.valve ? { ...valvePart.valve, diameter: valvePart.diameter, path: valvePart.path } : undefined,
    place: outlet?.to ?? "sump",
    depth: outlet?.depth ? toSI(outlet.depth, "length") : 0,
    pipeVolume,
  };
}

type Segment = { -readonly [Key in keyof DrainSegment]: DrainSegment[Key] };

/** Adds a part's losses to the stretches of a drain. All of one bore and wall are one stretch, wherever they stand: a loss counts
 *  on the speed in its bore, and one friction factor does for them all. */
function addSegment(segments: Segment[], part: DrainSegment): void {
  const { length, diameter, roughness, lossCoefficient, laminarLoss } = part;
  if (!(length > 0 || lossCoefficient > 0 || laminarLoss > 0)) return;
  for (const segment of segments) {
    if (segment.diameter !== diameter) continue;
    if (length > 0 && segment.length > 0 && segment.roughness !== roughness) continue;
    if (length > 0) segment.roughness = roughness;
    segment.length += length;
    segment.lossCoefficient += lossCoefficient;
    segment.laminarLoss += laminarLoss;
    return;
  }
  segments.push({ length, diameter, roughness, lossCoefficient, laminarLoss });
}
