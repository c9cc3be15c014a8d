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
  fittingLoss,
  fittingLossSpread,
  suddenContractionLoss,
  suddenExpansionLoss,
  type ValveKind,
  valveLoss,
} from "@tidewright/engine";
import { toSI } from "@tidewright/units";
import type { OutletPart, Part, TeePart } from "../schema/parts.ts";

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
  run.forEach((part, i) => {
    const at = `${path}/${i}`;
    switch (part.kind) {
      case "pipe": {
        const next = pipeBore(part) ?? bore;
        if (Math.abs(next - bore) > 1e-6) parts.push(areaChange(at, bore, next));
        bore = next;
        parts.push(sizedPipe(part, at, bore));
        break;
      }
      case "fitting": {
        const own = i === 0 || !run.slice(0, i).some((earlier) => earlier.kind === "pipe");
        parts.push(sizedFitting(part, at, own && boreBefore === undefined ? firstBore : bore, method));
        break;
      }
      case "valve": {
        const kind = (findValve(part.valve)?.id ?? "ball") as ValveKind;
        const loss = valveLoss(kind, part.opening, bore, method);
        parts.push({
          ...plain(at, "valve", findValve(part.valve)?.label ?? part.valve, bore),
          lossCoefficient: loss.turbulent,
          laminarLoss: loss.laminar,
          lossRange: valveRange(kind, part.opening, bore),
          valve: { kind, opening: part.opening },
        });
        break;
      }
      case "device": {
        const device = findDevice(catalogue, part.ref);
        parts.push({ ...plain(at, "device", device?.label ?? part.ref, bore), device });
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
  });
  return { path, parts, firstBore, lastBore: bore, tee, outlet };
}

function plain(path: string, kind: SizedPart["kind"], label: string, diameter: number): SizedPart {
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
    lossRange: [0, 0],
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
  const roughness = part.roughness ? toSI(part.roughness, "length") : (series?.roughness ?? defaultRoughness);
  return {
    ...plain(path, "pipe", series?.label ?? "pipe", bore),
    length: toSI(part.length, "length"),
    rise: part.rise ? toSI(part.rise, "length") : 0,
    roughness,
  };
}

function sizedFitting(
  part: Extract<Part, { kind: "fitting" }>,
  path: string,
  bore: number,
  method: FittingMethod,
): SizedPart {
  const row = findFitting(part.fitting);
  const count = part.count ?? 1;
  const base = { ...plain(path, "fitting", row?.label ?? part.fitting, bore), fitting: part.fitting, count };
  const fixed = part.lossCoefficient ?? row?.fixedLoss;
  if (fixed !== undefined)
    return { ...base, lossCoefficient: fixed * count, lossRange: [fixed * count, fixed * count] };
  // The area change itself is reckoned from the two bores.
  if (!row || row.id === "reducer") return base;
  const kind = row.engineKind as FittingKind;
  const loss = fittingLoss(kind, method, bore);
  const spread = fittingLossSpread(kind, bore, 3e4);
  return {
    ...base,
    lossCoefficient: loss.turbulent * count,
    laminarLoss: loss.laminar * count,
    lossRange: [spread.low * count, spread.high * count],
  };
}

function valveRange(kind: ValveKind, opening: number, bore: number): readonly [number, number] {
  const all = (["crane", "hooper", "darby"] as const).map((method) => {
    const loss = valveLoss(kind, opening, bore, method);
    return loss.turbulent + loss.laminar / 3e4;
  });
  return [Math.min(...all), Math.max(...all)];
}

function areaChange(path: string, before: number, after: number): SizedPart {
  const small = Math.min(before, after);
  const k = after > before ? suddenExpansionLoss(before, after) : suddenContractionLoss(before, after);
  const other = after > before ? k : suddenContractionLoss(before, after, "rennels");
  return {
    ...plain(path, "areaChange", after > before ? "widening" : "narrowing", small),
    lossCoefficient: k,
    lossRange: [Math.min(k, other), Math.max(k, other)],
  };
}

/** The jet's whole velocity head is lost in still water; a nozzle narrows first. */
function sizedOutlet(part: OutletPart, path: string, bore: number): SizedPart {
  const nozzle = part.nozzle ? toSI(part.nozzle, "length") : bore;
  const narrowing = nozzle < bore ? suddenContractionLoss(bore, nozzle) : 0;
  const k = 1 + narrowing;
  return {
    ...plain(path, "outlet", part.nozzle ? "nozzle" : "outlet", nozzle),
    lossCoefficient: k,
    lossRange: [k, k],
    outlet: part,
  };
}
