import {
  type Catalogue,
  type DeviceRow,
  findDevice,
  findFitting,
  findPipeSeries,
  findValve,
} from "@tidewright/catalogue";
import {
  type FittingKind,
  type FittingMethod,
  suddenContractionLoss,
  suddenExpansionLoss,
  type ValveKind,
} from "@tidewright/engine";
import { toSI } from "@tidewright/units";
import type { OutletPart, Part, TeePart } from "../schema/parts.ts";
import { fittingLosses, valveLosses } from "./knownLosses.ts";

/** One part of a run in SI, with the bore it works in and its loss. K counts on the velocity head of `diameter`. */
export interface SizedPart {
  readonly path: string;
  readonly kind: "pipe" | "fitting" | "valve" | "device" | "outlet" | "areaChange";
  readonly label: string;
  readonly diameter: number;
  readonly length: number;
  readonly rise: number;
  readonly roughness: number;
  readonly lossCoefficient: number;
  readonly laminarLoss: number;
  /** K by the most and least pessimistic of the published methods. */
  readonly lossRange: readonly [number, number];
  readonly device: DeviceRow | undefined;
  readonly valve: { readonly kind: ValveKind; readonly opening: number } | undefined;
  readonly outlet: OutletPart | undefined;
  readonly fitting: string | undefined;
  readonly count: number;
}

/** A run between two tees: its parts in order, and what ends it. */
export interface SizedRun {
  readonly path: string;
  readonly parts: readonly SizedPart[];
  /** Bore at the beginning and at the end [m]. */
  readonly firstBore: number;
  readonly lastBore: number;
  readonly tee: { readonly part: TeePart; readonly path: string } | undefined;
  readonly outlet: { readonly part: OutletPart; readonly path: string } | undefined;
}

const defaultRoughness = 1.5e-6;

/** Returns a run with the bore, length and loss of every part: pipes from their series, fittings in the size of the pipe before
 *  them (at the start of the run, of the pipe after them), and an area change wherever the bore changes.
 *  run Part[]   path JSON Pointer of the run   boreBefore [m] bore that feeds it, if any   -> SizedRun
 *  Findings: none. Throws: never for a document that `checkReferences` accepts; an unknown reference counts as no loss.
 *  Valid: as the engine's losses. Area change: Borda-Carnot wider, Crane narrower.
 *  Source: engine losses, each with its own source. */
export function sizeRun(
  run: readonly Part[],
  path: string,
  catalogue: Catalogue,
  method: FittingMethod,
  boreBefore?: number,
): SizedRun {
  let bore = boreBefore ?? firstBoreOf(run) ?? 0.025;
  const firstBore = firstBoreOf(run) ?? bore;
  const parts: SizedPart[] = [];
  let tee: SizedRun["tee"];
  let outlet: SizedRun["outlet"];
  let pipes = 0;
  for (let i = 0; i < run.length; i++) {
    const part = run[i] as Part;
    const at = `${path}/${i}`;
    switch (part.kind) {
      case "pipe": {
        pipes++;
        const next = pipeBore(part) ?? bore;
        if (Math.abs(next - bore) > 1e-6) parts.push(areaChange(at, bore, next));
        bore = next;
        parts.push(sizedPipe(part, at, bore));
        break;
      }
      case "fitting": {
        parts.push(sizedFitting(part, at, pipes === 0 && boreBefore === undefined ? firstBore : bore, method));
        break;
      }
      case "valve": {
        const row = findValve(part.valve);
        const kind = (row?.id ?? "ball") as ValveKind;
        const { opening } = part;
        const sized = plain(at, "valve", row?.label ?? part.valve, bore);
        const loss = valveLosses(kind, opening, bore, method);
        sized.lossCoefficient = loss.turbulent;
        sized.laminarLoss = loss.laminar;
        sized.lossRange = loss.range;
        sized.valve = { kind, opening };
        parts.push(sized);
        break;
      }
      case "device": {
        const device = findDevice(catalogue, part.ref);
        const sized = plain(at, "device", device?.label ?? part.ref, bore);
        sized.device = device;
        parts.push(sized);
        break;
      }
      case "outlet": {
        parts.push(sizedOutlet(part, at, bore));
        outlet = { part, path: at };
        break;
      }
      case "tee":
        tee = { part, path: at };
        break;
    }
  }
  return { path, parts, firstBore, lastBore: bore, tee, outlet };
}

type Writable = { -readonly [Key in keyof SizedPart]: SizedPart[Key] };

const noRange = [0, 0] as const;

/** A part without losses. All parts have the same fields in the same order, which keeps every reader of them fast. */
function plain(path: string, kind: SizedPart["kind"], label: string, diameter: number): Writable {
  return {
    path,
    kind,
    label,
    diameter,
    length: 0,
    rise: 0,
    roughness: 0,
    lossCoefficient: 0,
    laminarLoss: 0,
    lossRange: noRange,
    device: undefined,
    valve: undefined,
    outlet: undefined,
    fitting: undefined,
    count: 1,
  };
}

function pipeBore(part: Part): number | undefined {
  if (part.kind !== "pipe") return undefined;
  if (part.bore) return toSI(part.bore, "length");
  return part.series ? findPipeSeries(part.series)?.innerDiameter : undefined;
}

function firstBoreOf(run: readonly Part[]): number | undefined {
  for (const part of run) {
    const bore = pipeBore(part);
    if (bore !== undefined) return bore;
  }
  return undefined;
}

function sizedPipe(part: Extract<Part, { kind: "pipe" }>, path: string, bore: number): SizedPart {
  const series = part.series ? findPipeSeries(part.series) : undefined;
  const sized = plain(path, "pipe", series?.label ?? "pipe", bore);
  sized.length = toSI(part.length, "length");
  sized.rise = part.rise ? toSI(part.rise, "length") : 0;
  sized.roughness = part.roughness ? toSI(part.roughness, "length") : (series?.roughness ?? defaultRoughness);
  return sized;
}

function sizedFitting(
  part: Extract<Part, { kind: "fitting" }>,
  path: string,
  bore: number,
  method: FittingMethod,
): SizedPart {
  const row = findFitting(part.fitting);
  const count = part.count ?? 1;
  const sized = plain(path, "fitting", row?.label ?? part.fitting, bore);
  sized.fitting = part.fitting;
  sized.count = count;
  const fixed = part.lossCoefficient ?? row?.fixedLoss;
  if (fixed !== undefined) {
    sized.lossCoefficient = fixed * count;
    sized.lossRange = [fixed * count, fixed * count];
    return sized;
  }
  // The area change itself is reckoned from the two bores.
  if (!row || row.id === "reducer") return sized;
  const loss = fittingLosses(row.engineKind as FittingKind, bore, method);
  sized.lossCoefficient = loss.turbulent * count;
  sized.laminarLoss = loss.laminar * count;
  sized.lossRange = count === 1 ? loss.range : [loss.range[0] * count, loss.range[1] * count];
  return sized;
}

function areaChange(path: string, before: number, after: number): SizedPart {
  const small = Math.min(before, after);
  const k = after > before ? suddenExpansionLoss(before, after) : suddenContractionLoss(before, after);
  const other = after > before ? k : suddenContractionLoss(before, after, "rennels");
  const sized = plain(path, "areaChange", after > before ? "widening" : "narrowing", small);
  sized.lossCoefficient = k;
  sized.lossRange = [Math.min(k, other), Math.max(k, other)];
  return sized;
}

/** The jet's whole velocity head is lost in still water; a nozzle narrows first. */
function sizedOutlet(part: OutletPart, path: string, bore: number): SizedPart {
  const nozzle = part.nozzle ? toSI(part.nozzle, "length") : bore;
  const narrowing = nozzle < bore ? suddenContractionLoss(bore, nozzle) : 0;
  const k = 1 + narrowing;
  const sized = plain(path, "outlet", part.nozzle ? "nozzle" : "outlet", nozzle);
  sized.lossCoefficient = k;
  sized.lossRange = [k, k];
  sized.outlet = part;
  return sized;
}
