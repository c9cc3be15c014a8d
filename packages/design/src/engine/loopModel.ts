import { type Catalogue, type DeviceRow, findPump, type PumpRow } from "@tidewright/catalogue";
import {
  deviceLoss,
  type FittingMethod,
  type Liquid,
  type MonotoneCubic,
  type NetworkLink,
  type NetworkModel,
  type NetworkNode,
  type PumpAtSpeed,
  pumpAtSpeed,
  pumpCurve,
  type TeeJunction,
} from "@tidewright/engine";
import { toSI } from "@tidewright/units";
import { isCheckValve } from "../references/breaksAndChecks.ts";
import type { Loop } from "../schema/loops.ts";
import { pumpHydraulics } from "./pumpHydraulics.ts";
import { type SizedPart, type SizedRun, sizeRun } from "./sections.ts";

/** A stretch of a loop with one flow: its link in the network and the parts it stands for. */
export interface LoopSection {
  readonly link: string;
  readonly side: "pressure" | "suction";
  readonly parts: readonly SizedPart[];
}

/** A pump of the loop: link, path and catalogue row (none where the choice is open). */
export interface LoopPumpModel {
  readonly link: string;
  readonly path: string;
  readonly row: PumpRow | undefined;
  readonly speed: number;
  readonly elevation: number;
}

/** An outlet: its fixed-head node, its jet and how deep it lies (negative above the surface). */
export interface LoopOutlet {
  readonly path: string;
  readonly node: string;
  readonly link: string;
  readonly place: string;
  readonly depth: number;
  readonly jetDiameter: number;
  readonly siphonBreakDepth: number | undefined;
}

/** A loop as a network with the way back from links to the document. Heads of "source" and of outlets wait for levels. */
export interface LoopModel {
  readonly path: string;
  readonly model: NetworkModel;
  readonly sections: readonly LoopSection[];
  readonly pumps: readonly LoopPumpModel[];
  readonly outlets: readonly LoopOutlet[];
  readonly sourcePlace: string;
  readonly suctionBore: number | undefined;
  /** Water held in its pipes, suction included [m3]. */
  readonly pipeVolume: number;
}

/** A pump that is not chosen yet: it lifts nothing, so the system can still be drawn and asked what it needs. */
const noPump: PumpAtSpeed = pumpAtSpeed(
  [
    {
      speedRatio: 1,
      curve: pumpCurve([
        { flow: 0, head: 1e-6 },
        { flow: 1e-6, head: 0 },
      ]),
    },
  ],
  1,
);

/** Returns a loop as a network: source - suction - pumps - tree of runs - outlets.
 *  loop Loop   index of the loop in the design   liquid [SI]   method fitting losses   sumpFloor [m above room floor]
 *  -> LoopModel
 *  Findings: none. Throws: never for a document that `checkReferences` accepts.
 *  Valid: any tree of runs. A tee of n branches is n - 1 tees in a row, the first branch going straight on.
 *  Source: own construction on the engine's network. */
export function loopModel(
  loop: Loop,
  index: number,
  catalogue: Catalogue,
  liquid: Liquid,
  method: FittingMethod,
  sumpFloor: number,
): LoopModel {
  const path = `/loops/${index}`;
  const build = new LoopBuilder(sumpFloor);
  const suction = loop.suction ? sizeRun(loop.suction, `${path}/suction`, catalogue, method) : undefined;
  const run = sizeRun(loop.run, `${path}/run`, catalogue, method);
  let inlet = "source";
  if (suction) {
    build.junction("suction");
    build.stretch("source", "suction", withEntrance(suction.parts), "suction");
    inlet = "suction";
  }
  const pumps = loop.pumps.map((pump, i): LoopPumpModel => {
    const row = pump.ref === undefined ? undefined : findPump(catalogue, pump.ref);
    const speed = row?.control === "constant" ? 1 : (pump.speed ?? 1);
    const elevation = pump.elevation
      ? toSI(pump.elevation, "length")
      : sumpFloor + (pump.placed === "external" ? 0.05 : 0.03);
    return { link: `pump${i}`, path: `${path}/pumps/${i}`, row, speed, elevation };
  });
  build.junction("discharge");
  pumps.forEach((pump, i) => {
    const series = loop.arrangement === "series";
    const from = series && i > 0 ? `stage${i}` : inlet;
    const to = series && i < pumps.length - 1 ? `stage${i + 1}` : "discharge";
    if (to !== "discharge") build.junction(to);
    const set = pump.row ? pumpAtSpeed(pumpHydraulics(pump.row).head, pump.speed) : noPump;
    if (!loop.pumps[i]?.checkValve) {
      build.links.push({ id: pump.link, kind: "pump", from, to, pump: set });
      return;
    }
    const outlet = `${pump.link}out`;
    build.junction(outlet);
    build.links.push({ id: pump.link, kind: "pump", from, to: outlet, pump: set });
    const valve = sizeRun([{ kind: "fitting", fitting: "swingCheck" }], pump.path, catalogue, method, run.firstBore);
    // The valve stands for a field of the pump, so that is where it is found.
    build.stretch(
      outlet,
      to,
      valve.parts.map((part) => ({ ...part, path: `${pump.path}/checkValve` })),
      "pressure",
    );
  });
  build.run("discharge", run, catalogue, method);
  return {
    path,
    model: { liquid, nodes: build.nodes, links: build.links, tees: build.tees },
    sections: build.sections,
    pumps,
    outlets: build.outlets,
    sourcePlace: loop.from.place,
    suctionBore: suction ? Math.min(...suction.parts.map((part) => part.diameter)) : undefined,
    pipeVolume: build.volume,
  };
}

/** A suction pipe has an inlet, whether or not the document names its shape. */
function withEntrance(parts: readonly SizedPart[]): readonly SizedPart[] {
  const first = parts[0];
  if (!first) return parts;
  const named = first.fitting?.startsWith("entrance") || first.fitting === "strainer" || first.fitting === "footValve";
  if (named) return parts;
  const entrance: SizedPart = {
    ...first,
    kind: "areaChange",
    label: "inlet",
    length: 0,
    rise: 0,
    count: 1,
    laminarLoss: 0,
    lossCoefficient: 0.5,
    lossRange: [0.5, 0.57],
    fitting: undefined,
    valve: undefined,
    device: undefined,
  };
  return [entrance, ...parts];
}

class LoopBuilder {
  readonly nodes: NetworkNode[] = [{ id: "source", kind: "fixedHead", head: 0 }];
  readonly links: NetworkLink[] = [];
  readonly tees: TeeJunction[] = [];
  readonly sections: LoopSection[] = [];
  readonly outlets: LoopOutlet[] = [];
  volume = 0;
  readonly #sumpFloor: number;
  #serial = 0;

  constructor(sumpFloor: number) {
    this.#sumpFloor = sumpFloor;
  }

  junction(id: string): void {
    this.nodes.push({ id, kind: "junction", elevation: this.#sumpFloor });
  }

  /** A run from a node on: its stretches, then its outlet or its tees. Returns the first and the last link. */
  run(from: string, run: SizedRun, catalogue: Catalogue, method: FittingMethod): { first: string; last: string } {
    const body = run.parts.filter((part) => part.kind !== "outlet");
    const end = run.outlet ? `out${this.#serial++}` : `tee${this.#serial++}`;
    if (run.outlet) {
      const jet = run.parts[run.parts.length - 1] as SizedPart;
      this.nodes.push({ id: end, kind: "fixedHead", head: 0 });
      const links = this.stretch(from, end, run.parts, "pressure");
      const { part, path } = run.outlet;
      this.outlets.push({
        path,
        node: end,
        link: links.last,
        place: part.to,
        depth: part.depth ? toSI(part.depth, "length") : 0,
        jetDiameter: jet.diameter,
        siphonBreakDepth: part.siphonBreak ? toSI(part.siphonBreak, "length") : undefined,
      });
      return links;
    }
    this.junction(end);
    const links = this.stretch(from, end, body, "pressure");
    if (run.tee) this.#manifold(end, links.last, run, catalogue, method);
    return links;
  }

  /** n branches: n - 1 tees in a row, joined by short stretches of the main; the first branch goes straight on at the end. */
  #manifold(node: string, incoming: string, run: SizedRun, catalogue: Catalogue, method: FittingMethod): void {
    const tee = run.tee as NonNullable<SizedRun["tee"]>;
    const branches = tee.part.branches.map((branch, i) =>
      sizeRun(branch, `${tee.path}/branches/${i}`, catalogue, method, run.lastBore),
    );
    let at = node;
    let main = incoming;
    for (let i = 1; i < branches.length; i++) {
      const branch = branches[i] as SizedRun;
      const side = this.run(at, branch, catalogue, method);
      let onward: string;
      if (i === branches.length - 1) onward = this.run(at, branches[0] as SizedRun, catalogue, method).first;
      else {
        const next = `tee${this.#serial++}`;
        this.junction(next);
        onward = `main${this.#serial++}`;
        this.links.push({ id: onward, kind: "valve", from: at, to: next, diameter: run.lastBore, lossCoefficient: 0 });
        this.tees.push(this.#tee(at, main, onward, side.first, run.lastBore, branch.firstBore));
        at = next;
        main = onward;
        continue;
      }
      this.tees.push(this.#tee(at, main, onward, side.first, run.lastBore, branch.firstBore));
    }
  }

  #tee(node: string, incoming: string, onward: string, branch: string, bore: number, branchBore: number): TeeJunction {
    return { node, run: [incoming, onward], branch, runDiameter: bore, branchDiameter: Math.min(bore, branchBore) };
  }

  /** Parts in a row as links: one for each stretch of one bore, one for each device. Returns the first and the last. */
  stretch(
    from: string,
    to: string,
    parts: readonly SizedPart[],
    side: LoopSection["side"],
  ): { first: string; last: string } {
    const groups: SizedPart[][] = [];
    for (const part of parts) {
      const current = groups.at(-1);
      const before = current?.at(-1);
      const joins = before && part.kind !== "device" && before.kind !== "device" && sameBore(before, part);
      if (current && joins) current.push(part);
      else groups.push([part]);
    }
    if (groups.length === 0) groups.push([]);
    const ids = groups.map(() => `s${this.#serial++}`);
    groups.forEach((group, i) => {
      const a = i === 0 ? from : `${ids[i]}a`;
      const b = i === groups.length - 1 ? to : `${ids[i + 1]}a`;
      if (i > 0) this.junction(a);
      const id = ids[i] as string;
      this.links.push(linkOf(id, a, b, group));
      this.sections.push({ link: id, side, parts: group });
      for (const part of group) this.volume += (Math.PI / 4) * part.diameter ** 2 * part.length;
    });
    return { first: ids[0] as string, last: ids[ids.length - 1] as string };
  }
}

function sameBore(a: SizedPart, b: SizedPart): boolean {
  return Math.abs(a.diameter - b.diameter) < 1e-9 && (a.length === 0 || b.length === 0 || a.roughness === b.roughness);
}

function linkOf(id: string, from: string, to: string, parts: readonly SizedPart[]): NetworkLink {
  const device = parts[0]?.device;
  if (device) return { id, kind: "device", from, to, ...deviceCurve(device) };
  const diameter = parts[0]?.diameter ?? 0.1;
  const length = parts.reduce((sum, part) => sum + part.length, 0);
  const minorLoss = parts.reduce((sum, part) => sum + part.lossCoefficient, 0);
  const laminarLoss = parts.reduce((sum, part) => sum + part.laminarLoss, 0);
  const checkValve = parts.some((part) => isCheckValve(part.fitting));
  if (minorLoss === Number.POSITIVE_INFINITY || length === 0)
    return { id, kind: "valve", from, to, diameter, lossCoefficient: minorLoss, laminarLoss, checkValve };
  const roughness = Math.max(...parts.map((part) => part.roughness));
  return { id, kind: "pipe", from, to, length, diameter, roughness, minorLoss, laminarLoss, checkValve };
}

/** A device's loss for the solver: its points through zero, or a square law through its only one.
 *  device DeviceRow   -> coefficient [s2/m5] and curve
 *  Findings: none. Throws: RangeError when its points make no curve (`checkCatalogue` and readers name them first).
 *  Valid: within its points; a square law beyond.
 *  Source: engine `deviceLoss`. */
export function deviceCurve(device: Pick<DeviceRow, "lossPoints">): {
  coefficient: number;
  curve?: MonotoneCubic;
} {
  const { coefficient, curve } = deviceLoss(device.lossPoints);
  return { coefficient, ...(curve ? { curve } : {}) };
}
