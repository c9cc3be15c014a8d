import type { Assessment, OutletState, PartState } from "@tidewright/advice";
import type { Design, Run } from "@tidewright/design";
import { metres } from "./frame.ts";

/** Hand-made numbers for tests and for looking at the drawing: plausible, not computed. Levels follow the design. */
export function testAssessment(design: Design): Assessment {
  const floor = metres(design.display.standHeight);
  const sumpFloor = metres(design.sump.floor);
  const crest = floor + metres(design.overflow.weir.crest);
  const inlets = design.drains.map((drain) => floor + metres(drain.inlet.elevation));
  const flow = 8.2e-4;
  const boxLevel = Math.min(crest - 0.02, Math.min(...inlets) + 0.045);
  const parts: PartState[] = [];
  const outlets: OutletState[] = [];
  const walk = (run: Run, base: string, side: PartState["side"], share: number) => {
    let bore = 0.029;
    run.forEach((part, i) => {
      const path = `${base}/${i}`;
      bore =
        part.kind === "pipe" && part.bore
          ? metres(part.bore)
          : part.kind === "pipe" && part.series
            ? seriesBore(part.series)
            : bore;
      parts.push({
        path,
        kind: part.kind,
        label: part.kind === "device" ? part.ref : part.kind,
        flow: share,
        velocity: share / (0.785 * bore * bore),
        reynolds: 4e4,
        diameter: bore,
        headLoss: 0.043,
        side,
      });
      if (part.kind === "outlet")
        outlets.push({
          path,
          place: part.to,
          flow: share,
          jetVelocity: 1.42,
          jetDiameter: part.nozzle ? metres(part.nozzle) : bore,
          elevation: floor,
          submerged: true,
        });
      if (part.kind === "tee")
        part.branches.forEach((branch, k) => walk(branch, `${path}/branches/${k}`, side, share / part.branches.length));
    });
  };
  design.drains.forEach((drain, i) =>
    walk(drain.run, `/drains/${i}/run`, "drain", drain.role === "main" ? flow * 0.85 : flow * 0.15),
  );
  design.loops.forEach((loop, i) => {
    if (loop.suction) walk(loop.suction, `/loops/${i}/suction`, "suction", flow);
    walk(loop.run, `/loops/${i}/run`, "pressure", flow);
  });
  const regimes = ["siphon", "quiet", "dry"] as const;
  const assessment = {
    name: design.name,
    water: { density: 1023.3, dynamicViscosity: 9.6e-4, kinematicViscosity: 9.4e-7 },
    volumes: { display: 0.452, sump: 0.112, pipes: 0.004, system: 0.568 },
    solve: { converged: true, levelIterations: 4, loops: [] },
    overflow: {
      flow,
      weirHead: 0.0142,
      weirHeadRange: [0.012, 0.016],
      displayLevel: crest + 0.0142,
      boxLevel,
      displayFreeboard: floor + metres(design.display.height) - crest - 0.0142,
      boxFreeboard: floor + metres(design.overflow.box.rim) - boxLevel,
      fall: crest - boxLevel,
    },
    drains: design.drains.map((drain, i) => ({
      path: `/drains/${i}`,
      name: drain.name,
      role: drain.role,
      kind: drain.kind,
      flow: [flow * 0.85, flow * 0.15, 0][i % 3]!,
      regime: regimes[i % 3]!,
      froude: 0.4,
      velocity: 1.1,
      bore: 0.029,
      inletElevation: inlets[i]!,
      submergence: 0.02,
      capacity: { quiet: 3e-4, practice: 5e-4, siphon: 1.2e-3 },
      capacityAtRim: 1.3e-3,
      ...(drain.kind === "throttledSiphon" ? { valveOpening: 0.43, valveSolved: true } : {}),
    })),
    sump: {
      chambers: design.sump.chambers.map((chamber, i) => {
        const last = i === design.sump.chambers.length - 1;
        const depth = last || !chamber.baffle ? metres(design.sump.operatingLevel) : metres(chamber.baffle) + 0.012;
        const area = metres(chamber.length) * metres(chamber.width);
        return {
          id: chamber.id,
          path: `/sump/chambers/${i}`,
          level: sumpFloor + depth,
          depth,
          area,
          volume: area * depth,
        };
      }),
      rim: sumpFloor + metres(design.sump.height),
      drainDown: { display: 0.013, box: 0.008, pipes: 0.003, total: 0.024 },
      room: 0.051,
      margin: 0.027,
      powerCutLevel: sumpFloor + 0.3,
      safeOperatingLevel: 0.26,
    },
    loops: design.loops.map((loop, i) => ({
      path: `/loops/${i}`,
      name: loop.name,
      purpose: loop.purpose ?? "return",
      flow,
      flowToDisplay: flow * 0.8,
      staticHead: 1.2,
      totalHead: 2.1,
      systemCurve: {
        flow: [0, 4e-4, 8e-4, 1.2e-3],
        head: [1.2, 1.43, 2.1, 3.2],
        toDisplay: [0, 3.2e-4, 6.4e-4, 9.6e-4],
      },
      flowRange: [7.6e-4, 8.7e-4],
    })),
    parts,
    pumps: design.loops.flatMap((loop, i) =>
      loop.pumps.map((pump, k) => ({
        path: `/loops/${i}/pumps/${k}`,
        loop: i,
        label: (pump.ref ?? "no pump")
          .split("-")
          .map((word) => word[0]!.toUpperCase() + word.slice(1))
          .join(" "),
        speed: pump.speed ?? 1,
        flow: flow / loop.pumps.length,
        head: 2.1,
        shutoffHead: 3.9,
        placeOnCurve: 0.46,
        beyondLastPoint: false,
        electricalPower: 41.3,
        hydraulicPower: 17,
        efficiency: 0.41,
        npshAvailable: 9.8,
        soundLevel: 38,
        current: 0.2,
        heatToWater: 38,
        curves: [
          { speedRatio: 1, curve: { flow: [0, 5e-4, 1e-3, 1.5e-3, 1.8e-3], head: [4.6, 4.3, 3.4, 1.7, 0.2] } },
          { speedRatio: 0.8, curve: { flow: [0, 4e-4, 8e-4, 1.2e-3, 1.44e-3], head: [2.94, 2.75, 2.18, 1.09, 0.13] } },
        ],
        price: 219,
      })),
    ),
    tankPumps: (design.tankPumps ?? []).map((pump, i) => ({
      path: `/tankPumps/${i}`,
      ref: pump.ref,
      label: pump.ref,
      flow: 2.8e-3,
      electricalPower: 18,
      soundLevel: 33,
      price: 149,
    })),
    outlets,
    devices: [],
    turnover: {
      return: { value: 5.7 / 3600 },
      total: { value: 19 / 3600 },
      returnFlowWish: { low: 7e-4, aim: 9e-4, high: 1.3e-3 },
      animals: [],
    },
    power: { watts: 92, annualEnergy: 2.9e9, annualCost: 250, tariffCurrency: "EUR", circuits: [] },
    heat: { intoWater: 80, chillerCapacity: 0, riseRate: 1e-5 },
    cost: { currency: "EUR", items: [], pumps: 219, purchase: 219, horizon: 1.6e8, total: 1400 },
    sound: { level: 41 },
    findings: [
      {
        code: "drain/emergency-too-small",
        severity: "danger",
        at: `/drains/${design.drains.length - 1}`,
        source: "test",
      },
      { code: "flow/below-wish", severity: "warning", at: "/loops/0", source: "test" },
      { code: "sump/little-room", severity: "warning", at: "/sump", source: "test" },
      { code: "overflow/little-freeboard", severity: "notice", at: "/overflow/box", source: "test" },
      { code: "outlet/jet-fast", severity: "notice", at: outlets.at(-1)?.path ?? "/display", source: "test" },
    ],
  };
  return assessment as unknown as Assessment;
}

const seriesBore = (series: string): number => (Number(/(\d+)$/.exec(series)?.[1] ?? 32) / 1000) * 0.87;
