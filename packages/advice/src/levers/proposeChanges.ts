import { type Catalogue, findPipeSeries, findPump, fittingPrice, nextSizeUp } from "@tidewright/catalogue";
import type { Design, Part } from "@tidewright/design";
import { toSI } from "@tidewright/units";
import type { Assessment } from "../assessment.ts";
import type { LeverKind, Told } from "../levers.ts";
import { rank } from "../rank.ts";
import { pumpPrice } from "../states/pumpStates.ts";
import { labelled } from "./labelled.ts";
import { fittingPriceAt25mm, pipePrice, valvePriceAt25mm } from "./partPrices.ts";
import { withValue } from "./withValue.ts";

/** One change to try: the changed document and what its parts cost. */
export interface Change {
  readonly kind: LeverKind;
  readonly at: string;
  readonly label: string;
  /** What the label says, for other languages; absent where it is a pump's name. */
  readonly told?: Told;
  readonly design: Design;
  readonly price: number;
}

/** Returns the single changes that make sense for a design. Source: own search over its parts. */
export function proposeChanges(design: Design, catalogue: Catalogue, state: Assessment): Change[] {
  return [
    ...design.loops.flatMap((_, i) => pumpChanges(design, i, catalogue)),
    ...proposePlumbing(design, catalogue, state),
  ];
}

/** Returns the changes that keep the pumps: lines, speeds, vessels, drains. Source: own search over its parts. */
export function proposePlumbing(design: Design, catalogue: Catalogue, state: Assessment): Change[] {
  return [
    ...design.loops.flatMap((loop, i) => [
      ...lineChanges(design, catalogue, loop.run, `/loops/${i}/run`, "pipe-size-up"),
      ...(loop.suction ? lineChanges(design, catalogue, loop.suction, `/loops/${i}/suction`, "suction-size-up") : []),
      ...speedChanges(design, i, catalogue),
    ]),
    ...design.drains.flatMap((drain, i) =>
      lineChanges(design, catalogue, drain.run, `/drains/${i}/run`, "drain-size-up"),
    ),
    ...vesselChanges(design, state),
    ...emergencyDrain(design),
  ];
}

/** A run and the branches of its tees. */
function allRuns(run: readonly Part[], path: string): { run: readonly Part[]; path: string }[] {
  const own = [{ run, path }];
  run.forEach((part, i) => {
    if (part.kind === "tee")
      part.branches.forEach((branch, b) => {
        own.push(...allRuns(branch, `${path}/${i}/branches/${b}`));
      });
  });
  return own;
}

function lineChanges(
  design: Design,
  catalogue: Catalogue,
  top: readonly Part[],
  topPath: string,
  sizeUp: LeverKind,
): Change[] {
  return allRuns(top, topPath).flatMap(({ run, path }) => [
    ...larger(design, catalogue, run, path, sizeUp),
    ...sweeps(design, catalogue, run, path),
    ...openedValves(design, run, path),
    ...nozzles(design, run, path),
    ...(path === topPath ? union(design, catalogue, run, path, sizeUp) : []),
  ]);
}

/** Every pipe of the run one size up, fittings with it. */
function larger(design: Design, catalogue: Catalogue, run: readonly Part[], path: string, kind: LeverKind): Change[] {
  let price = 0;
  let from = "";
  let to = "";
  const next = run.map((part): Part => {
    if (part.kind !== "pipe" || !part.series) return part;
    const up = nextSizeUp(part.series);
    if (!up) return part;
    from = findPipeSeries(part.series)?.label ?? part.series;
    to = up.label;
    price += pipePrice(catalogue, up.id) * toSI(part.length, "length");
    return { ...part, series: up.id };
  });
  if (!to) return [];
  const bore =
    findPipeSeries((next.find((part) => part.kind === "pipe") as { series?: string }).series ?? "")?.innerDiameter ??
    0.025;
  for (const part of run) {
    if (part.kind === "fitting")
      price += (part.count ?? 1) * fittingPrice(fittingPriceAt25mm(catalogue, part.fitting), bore);
    if (part.kind === "valve") price += fittingPrice(valvePriceAt25mm(catalogue, part.valve), bore);
  }
  return [
    { kind, at: path, ...labelled("levers.size-up", { from, to }), design: withValue(design, path, next), price },
  ];
}

function sweeps(design: Design, catalogue: Catalogue, run: readonly Part[], path: string): Change[] {
  const elbows = run.reduce(
    (sum, part) => (part.kind === "fitting" && part.fitting === "elbow90" ? sum + (part.count ?? 1) : sum),
    0,
  );
  if (elbows === 0) return [];
  const next = run.map(
    (part): Part =>
      part.kind === "fitting" && part.fitting === "elbow90" ? { ...part, fitting: "elbow90Sweep" } : part,
  );
  const price = elbows * fittingPriceAt25mm(catalogue, "elbow90Sweep");
  return [
    {
      kind: "sweep-elbows",
      at: path,
      ...labelled("levers.sweep-elbows", { count: elbows }),
      design: withValue(design, path, next),
      price,
    },
  ];
}

function openedValves(design: Design, run: readonly Part[], path: string): Change[] {
  return run.flatMap((part, i): Change[] =>
    part.kind === "valve" && part.opening < 1
      ? [
          {
            kind: "open-valve",
            at: `${path}/${i}`,
            ...labelled("levers.open-valve"),
            design: withValue(design, `${path}/${i}/opening`, 1),
            price: 0,
          },
        ]
      : [],
  );
}

function nozzles(design: Design, run: readonly Part[], path: string): Change[] {
  return run.flatMap((part, i): Change[] => {
    if (part.kind !== "outlet" || !part.nozzle) return [];
    const at = `${path}/${i}`;
    const wider = { ...part.nozzle, value: Math.round(part.nozzle.value * 125) / 100 };
    const { nozzle: _, ...bare } = part;
    return [
      {
        kind: "larger-nozzle",
        at,
        ...labelled("levers.larger-nozzle", { from: `${part.nozzle.value}`, to: `${wider.value}`, unit: wider.unit }),
        design: withValue(design, `${at}/nozzle`, wider),
        price: 8,
      },
      { kind: "remove-nozzle", at, ...labelled("levers.remove-nozzle"), design: withValue(design, at, bare), price: 0 },
    ];
  });
}

function union(design: Design, catalogue: Catalogue, run: readonly Part[], path: string, kind: LeverKind): Change[] {
  if (kind !== "pipe-size-up" || run.some((part) => part.kind === "fitting" && part.fitting === "union")) return [];
  const next: Part[] = [{ kind: "fitting", fitting: "union" }, ...run];
  return [
    {
      kind: "add-union",
      at: path,
      ...labelled("levers.add-union"),
      design: withValue(design, path, next),
      price: fittingPriceAt25mm(catalogue, "union"),
    },
  ];
}

function speedChanges(design: Design, loop: number, catalogue: Catalogue): Change[] {
  return (design.loops[loop]?.pumps ?? []).flatMap((pump, i): Change[] => {
    const row = pump.ref ? findPump(catalogue, pump.ref) : undefined;
    if (!row) return [];
    const at = `/loops/${loop}/pumps/${i}`;
    const speed = pump.speed ?? 1;
    const changes: Change[] = [];
    const set = (to: number, kind: LeverKind) =>
      changes.push({
        kind,
        at,
        ...labelled("levers.speed", { from: `${Math.round(100 * speed)}`, to: `${Math.round(100 * to)}` }),
        design: withValue(design, `${at}/speed`, to),
        price: 0,
      });
    if (row.control === "controllable") {
      if (speed < 1) set(Math.min(1, speed + 0.1), "raise-speed");
      if (speed - 0.1 >= row.minimumSpeed) set(Math.round(1000 * (speed - 0.1)) / 1000, "lower-speed");
    }
    if (row.controller && !row.controller.included && !pump.controller)
      changes.push({
        kind: "add-controller",
        at,
        ...labelled("levers.add-controller"),
        design: withValue(design, `${at}/controller`, true),
        price: pumpPrice(row, true, catalogue).controller,
      });
    const better = row.placements.find((place) => place !== pump.placed && place !== "inTank");
    if (better && !row.placements.includes(pump.placed))
      changes.push({
        kind: "move-pump",
        at,
        ...labelled(better === "inSump" ? "levers.move-into-sump" : "levers.move-outside"),
        design: withValue(design, `${at}/placed`, better),
        price: 0,
      });
    return changes;
  });
}

/** The best pump of the ranking in place of the present ones. */
function pumpChanges(design: Design, loop: number, catalogue: Catalogue): Change[] {
  const pumps = design.loops[loop]?.pumps ?? [];
  if (design.loops[loop]?.arrangement === "series") return [];
  const present = pumps.map((pump) => pump.ref).join();
  return rank(design, catalogue, { loop, pairs: pumps.length === 2 })
    .candidates.filter((candidate) => candidate.pumpIds.length === pumps.length && candidate.pumpIds.join() !== present)
    .slice(0, 2)
    .map((candidate) => {
      const next = pumps.map((pump) => ({
        ...pump,
        ref: candidate.pumpIds[0],
        speed: Math.round(candidate.speed * 1e4) / 1e4,
        ...(candidate.extras.length > 0 ? { controller: true } : {}),
      }));
      const at = `/loops/${loop}/pumps`;
      return {
        kind: "better-pump" as const,
        at,
        label: candidate.label,
        design: withValue(design, at, next),
        price: candidate.price,
      };
    });
}

function vesselChanges(design: Design, state: Assessment): Change[] {
  const changes: Change[] = [];
  const safe = state.sump.safeOperatingLevel;
  const level = toSI(design.sump.operatingLevel, "length");
  if (safe < level && safe > 0.05) {
    const value = { value: Math.floor(safe * 1000), unit: "mm" };
    changes.push({
      kind: "lower-operating-level",
      at: "/sump/operatingLevel",
      ...labelled("levers.operating-level", { to: `${value.value}` }),
      design: withValue(design, "/sump/operatingLevel", value),
      price: 0,
    });
  }
  const { length } = design.overflow.weir;
  changes.push({
    kind: "longer-weir",
    at: "/overflow/weir/length",
    ...labelled("levers.longer-weir"),
    design: withValue(design, "/overflow/weir/length", { ...length, value: Math.round(length.value * 1250) / 1000 }),
    price: 60,
  });
  design.loops.forEach((loop, i) => {
    for (const { run, path } of allRuns(loop.run, `/loops/${i}/run`))
      run.forEach((part, k) => {
        if (part.kind !== "outlet" || part.to !== "display" || (part.depth?.value ?? 0) <= 0) return;
        const now = part.siphonBreak
          ? toSI(part.siphonBreak, "length")
          : toSI(part.depth as { value: number; unit: string }, "length");
        if (now <= 0.01) return;
        changes.push({
          kind: "raise-siphon-break",
          at: `${path}/${k}`,
          ...labelled("levers.raise-siphon-break"),
          design: withValue(design, `${path}/${k}/siphonBreak`, { value: 10, unit: "mm" }),
          price: 2,
        });
      });
  });
  return changes;
}

/** A dry standpipe like the largest drain, its inlet midway between the others and the rim. */
function emergencyDrain(design: Design): Change[] {
  if (design.drains.some((drain) => drain.role === "emergency")) return [];
  const model = design.drains.reduce((widest, drain) => (boreOf(drain.run) > boreOf(widest.run) ? drain : widest));
  const highest = Math.max(...design.drains.map((drain) => toSI(drain.inlet.elevation, "length")));
  const rim = toSI(design.overflow.box.rim, "length");
  const { share: _, ...rest } = model;
  const run = model.run.map((part): Part => {
    if (part.kind === "valve") return { ...part, opening: 1 };
    const up = part.kind === "pipe" && part.series ? nextSizeUp(part.series) : undefined;
    return part.kind === "pipe" && up ? { ...part, series: up.id } : part;
  });
  const inlet = { elevation: { value: Math.round(1000 * (highest + 0.3 * (rim - highest))), unit: "mm" } };
  const drain = { ...rest, name: "emergency", role: "emergency" as const, kind: "dryStandpipe" as const, inlet, run };
  return [
    {
      kind: "add-emergency-drain",
      at: "/drains",
      ...labelled("levers.add-emergency-drain"),
      design: { ...design, drains: [...design.drains, drain] },
      price: 45,
    },
  ];
}

function boreOf(run: readonly Part[]): number {
  const pipe = run.find((part) => part.kind === "pipe");
  if (pipe?.kind !== "pipe") return 0;
  return pipe.bore ? toSI(pipe.bore, "length") : (findPipeSeries(pipe.series ?? "")?.innerDiameter ?? 0);
}
