import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type DrainKind,
  type DrainLine,
  drainBackVolume,
  drainCapacity,
  drainFlow,
  drainLineHeadLoss,
  drainPractice,
  emergencyCapacity,
  froudeFlow,
  pipeFroude,
  siphonCrestPressure,
  siphonFlow,
  siphonValveLossFor,
  standpipeFlow,
  terminalLength,
  terminalVelocity,
  ventedStackFlow,
} from "./index.ts";

const gallonPerHour = 3.785411784e-3 / 3600;
const gallonPerMinute = 3.785411784e-3 / 60;
const inch = 0.0254;
/** Sea water at 25 C, 35 g/kg: 9.5883e-4 Pa s (Sharqawy et al. 2010) over 1023.343 kg/m3 (UNESCO 44). */
const water = { kinematicViscosity: 9.5883e-4 / 1023.34306 };
const off = (ours: number, expected: number): number => Math.abs(ours / expected - 1);

/** An open 3 ft siphon: sharp entrance 0.5, elbows 30 fT (Crane TP-410), exit 1, in average Sch 40 bore. */
function threeFootDrain(bore: number, length: number, elbows: number, elbowLoss: number): DrainLine {
  const segment = {
    length,
    diameter: bore,
    roughness: 1.5e-6,
    lossCoefficient: 1.5 + elbows * elbowLoss,
    laminarLoss: 0,
  };
  const rim = { bore, inletDiameter: bore, inletElevation: 0.8, outletElevation: 0 };
  return { ...rim, segments: [segment], valveLoss: 0 };
}

/** Nominal size [in], average Sch 40 bore (ASTM D1785) [m], 30 fT as fluids 1.0.22 ft_Crane gives it. */
const sizes = [
  { name: "1 in", bore: 0.02614, elbow: 30 * 0.02225220600155991 },
  { name: "1 1/2 in", bore: 0.04039, elbow: 30 * 0.02000465367842666 },
  { name: "2 in", bore: 0.05199, elbow: 30 * 0.018847413186254762 },
] as const;

const anyLine = fc
  .record({
    bore: fc.double({ min: 0.012, max: 0.11, noNaN: true }),
    enlarged: fc.double({ min: 1, max: 3, noNaN: true }),
    length: fc.double({ min: 0, max: 5, noNaN: true }),
    roughness: fc.double({ min: 0, max: 1e-4, noNaN: true }),
    lossCoefficient: fc.double({ min: 0, max: 20, noNaN: true }),
    laminarLoss: fc.double({ min: 0, max: 3000, noNaN: true }),
    valveLoss: fc.double({ min: 0, max: 1000, noNaN: true }),
    inletElevation: fc.double({ min: -0.2, max: 2, noNaN: true }),
    outletElevation: fc.double({ min: -1, max: 0.3, noNaN: true }),
  })
  .map(({ bore, enlarged, length, roughness, lossCoefficient, laminarLoss, ...rest }) => ({
    ...rest,
    bore,
    inletDiameter: bore * enlarged,
    segments: [{ length, diameter: bore, roughness, lossCoefficient, laminarLoss }],
  }));
const kinds = ["ventedStandpipe", "throttledSiphon", "openChannel", "dryStandpipe"] as const satisfies DrainKind[];

describe("a vented stack 7/24 full", () => {
  it.each([
    // Published: National Standard Plumbing Code 2006 table 13.6.1, US gal/min.
    [2, 23],
    [3, 67],
    [4, 144],
    [5, 261],
    [6, 424],
    [8, 913],
  ])("of %d in carries %d US gal/min", (size, gallons) => {
    expect(Math.round(ventedStackFlow(size * inch) / gallonPerMinute)).toBe(gallons);
  });

  it("is 31.46 r^(5/3) D^(8/3) in SI", () => {
    // Published formula (Wyly and Eaton 1961) converted by hand.
    expect(off(ventedStackFlow(1, 1), 31.46)).toBeLessThan(1e-4);
  });

  it.each([
    // Formula from memory (Wyly and Eaton 1961), evaluated by hand: bore in, ft/s, ft.
    [3, 10.4, 5.6],
    [2.047, 8.0, 3.4],
    [1.029, 5.1, 1.3],
  ])("of %d in reaches %d ft/s after %d ft", (bore, speed, length) => {
    const flow = ventedStackFlow(bore * inch);
    expect(Math.abs(terminalVelocity(flow, bore * inch) / 0.3048 - speed)).toBeLessThan(0.06);
    expect(Math.abs(terminalLength(flow, bore * inch) / 0.3048 - length)).toBeLessThan(0.06);
  });
});

describe("a standpipe", () => {
  const pipe = (inletElevation: number): DrainLine => ({ ...threeFootDrain(0.0525, 0.9, 0, 0), inletElevation });

  it("of 52.5 mm is a rim weir at 10 mm with 0.293 L/s and a drowned throat at 30 mm with 0.996 L/s", () => {
    // Analytic: shaft-spillway formulas (USBR, Design of Small Dams) with 0.602 and 0.6.
    const low = standpipeFlow(pipe(0.8), 0.81, water);
    expect(off(low.flow, 0.293e-3)).toBeLessThan(2e-3);
    expect(low.control).toBe("crest");
    const high = standpipeFlow(pipe(0.8), 0.83, water);
    expect(off(high.flow, 0.996e-3)).toBeLessThan(1e-3);
    expect(high.control).toBe("throat");
  });

  it("passes from rim to throat at H/D = 0.374", () => {
    // Analytic: equal flows of both formulas.
    const at = (share: number) => standpipeFlow(pipe(0.8), 0.8 + share * 0.0525, water).control;
    expect(at(0.3735)).toBe("crest");
    expect(at(0.3745)).toBe("throat");
  });

  it("ends in full-pipe control with the flow of the siphon", () => {
    const line = { ...pipe(0.8), valveLoss: 200 };
    const state = standpipeFlow(line, 0.9, water);
    expect(state.control).toBe("fullPipe");
    expect(state.flow).toBe(siphonFlow(line, 0.9, water));
  });

  it.each([
    // Analytic: flush rim as an orifice with 0.6; head in mm at the trade's rule of thumb (common practice, no source).
    [0.02614, 800, 348],
    [0.04039, 1500, 215],
    [0.05199, 2050, 146],
  ])("with a flush rim of %d m needs more than its throat gives at %d US gal/h below %d mm", (bore, gallons, head) => {
    const line = { ...threeFootDrain(bore, 0.9, 0, 0), outletElevation: -10 };
    const at = standpipeFlow(line, 0.8 + head / 1000, water);
    expect(at.control).toBe("throat");
    expect(off(at.flow, gallons * gallonPerHour)).toBeLessThan(2e-3);
  });

  it("as an emergency drain counts no siphon", () => {
    const line = pipe(0.8);
    expect(emergencyCapacity(line, 0.83, water)).toBe(standpipeFlow(line, 0.83, water).flow);
    expect(emergencyCapacity(line, 0.83, water)).toBeLessThan(siphonFlow(line, 0.83, water));
  });
});

describe("a full siphon with 3 ft of drop", () => {
  it.each([
    // Other program: energy balance with friction from fluids 1.0.22 Colebrook, US gal/h.
    [sizes[0], 1.8, 2, 1048.9186877644847],
    [sizes[1], 1.8, 2, 2752.296274245187],
    [sizes[2], 1.8, 2, 4759.9498463069895],
    [sizes[0], 0.9144, 0, 1467.7150237791923],
    [sizes[1], 0.9144, 0, 3754.0557869057893],
    [sizes[2], 0.9144, 0, 6397.852405221092],
  ])("of $name carries what the energy balance gives: %# ", (size, length, elbows, gallons) => {
    const flow = siphonFlow(threeFootDrain(size.bore, length, elbows, size.elbow), 0.9144, water);
    expect(off(flow / gallonPerHour, gallons)).toBeLessThan(1e-9);
  });

  it("meets the energy balance to 1e-12, laminar or turbulent, throttled or open", () => {
    fc.assert(
      fc.property(anyLine, fc.double({ min: 1e-6, max: 3, noNaN: true }), (line, drop) => {
        const level = line.outletElevation + drop;
        const flow = siphonFlow(line, level, water);
        expect(off(drainLineHeadLoss(line, flow, water), level - line.outletElevation)).toBeLessThan(1e-12);
      }),
      { numRuns: 2000 },
    );
  });

  it("is throttled to any smaller flow by the valve loss found for it, and to no larger one", () => {
    fc.assert(
      fc.property(anyLine, fc.double({ min: 0.01, max: 1, noNaN: true }), (line, share) => {
        const level = line.outletElevation + 1;
        const open = siphonFlow({ ...line, valveLoss: 0 }, level, water);
        const valveLoss = siphonValveLossFor(line, share * open * (1 - 1e-9), level, water);
        expect(valveLoss).toBeDefined();
        if (valveLoss === undefined) return;
        expect(off(siphonFlow({ ...line, valveLoss }, level, water), share * open * (1 - 1e-9))).toBeLessThan(1e-12);
        expect(siphonValveLossFor(line, open * (1 + 1e-9), level, water)).toBeUndefined();
      }),
      { numRuns: 500 },
    );
  });

  it("has a crest pressure of one atmosphere less lift, speed and loss", () => {
    // Analytic: 101325 - 1000 (9.80665 x 1.5 + 2^2 / 2).
    const crest = { surfacePressure: 101325, density: 1000, level: 0, crestElevation: 1, velocity: 2, headLoss: 0.5 };
    expect(siphonCrestPressure(crest)).toBeCloseTo(101325 - 14709.975 - 2000, 6);
  });
});

describe("a drain's capacity", () => {
  it.each([
    // Froude 0.3, stack at 7/24 and rule, US gal/h, worked out by hand; the rule itself is common practice, no source.
    [sizes[0], 78, 231, 800, 3.1],
    [sizes[1], 230, 737, 1500, 2.0],
    [sizes[2], 432, 1445, 2050, 1.4],
  ])(
    "of $name is a bracket in which the trade's rule lies between vented and siphon",
    (size, quiet, stack, rule, fr) => {
      const capacity = drainCapacity(threeFootDrain(size.bore, 1.8, 2, size.elbow), 0.9144, water);
      expect(Math.round(capacity.quietFroude / gallonPerHour)).toBe(quiet);
      expect(Math.abs(capacity.quietStack / gallonPerHour - stack)).toBeLessThan(1);
      expect(off(capacity.practice / gallonPerHour, rule)).toBeLessThan(1e-12);
      expect(capacity.practiceExtrapolated).toBe(false);
      expect(capacity.quiet).toBe(capacity.quietFroude);
      expect(capacity.practice).toBeGreaterThan(capacity.quietStack);
      expect(capacity.practice).toBeLessThan(capacity.siphon);
      expect(pipeFroude(capacity.practice, size.bore)).toBeCloseTo(fr, 1);
    },
  );

  it("rises with the bore, in the trade's rule too, and says where that rule is stretched", () => {
    let last = 0;
    for (let bore = 0.01; bore < 0.12; bore += 0.0005) {
      const { flow } = drainPractice(bore);
      expect(flow).toBeGreaterThan(last);
      last = flow;
    }
    expect(drainPractice(0.0155).extrapolated).toBe(true);
    expect(drainPractice(0.0773).extrapolated).toBe(true);
    expect(drainPractice(0.0345).extrapolated).toBe(false);
  });

  it("has Froude number and flow as each other's inverse", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        fc.double({ min: 0.01, max: 0.2, noNaN: true }),
        (fr, bore) => {
          expect(pipeFroude(froudeFlow(fr, bore), bore)).toBeCloseTo(fr, 12);
        },
      ),
    );
  });
});

describe("a drain's rating curve", () => {
  it("never falls as the level rises, has no step and is never NaN, whatever the kind", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        anyLine,
        fc.double({ min: -1.5, max: 4, noNaN: true }),
        (kind, line, level) => {
          const here = drainFlow(kind, line, level, water);
          const above = drainFlow(kind, line, level + 1e-9, water);
          expect(Number.isFinite(here.flow)).toBe(true);
          expect(above.flow).toBeGreaterThanOrEqual(here.flow * (1 - 1e-12));
          // Steepest where a fall just opens: flow ~ sqrt(drop) of a 0.11 m bore, 0.043 sqrt(1e-9).
          expect(above.flow - here.flow).toBeLessThan(2e-6);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("is never negative or NaN for absurd pipes: no bore, no loss, shut valves, hair-thin or metre-wide", () => {
    const wild = fc.constantFrom(0, 1e-9, 1e-4, 0.03, 10, 1e6, 1e300);
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.record({
          bore: wild,
          length: wild,
          roughness: wild,
          lossCoefficient: wild,
          laminarLoss: wild,
          valveLoss: wild,
        }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        (kind, { bore, valveLoss, ...rest }, level) => {
          const segments = [{ ...rest, diameter: bore }];
          const line = { bore, inletDiameter: bore, segments, valveLoss, inletElevation: 0, outletElevation: -1 };
          const { flow } = drainFlow(kind, line, level, water);
          expect(Number.isNaN(flow)).toBe(false);
          expect(flow).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 3000 },
    );
  });

  it("names the regime by Froude number until the pipe is full", () => {
    const line = { ...threeFootDrain(0.05199, 1.8, 2, sizes[2].elbow), inletDiameter: 0.08 };
    const at = (level: number) => drainFlow("throttledSiphon", line, level, water);
    expect(at(0.79).regime).toBe("dry");
    expect(at(0.803).regime).toBe("quiet");
    expect(at(0.812).regime).toBe("bursts");
    expect(at(0.83).regime).toBe("swept");
    expect(at(0.9).regime).toBe("siphon");
    expect(at(0.812).froude).toBeGreaterThan(0.3);
    expect(at(0.812).froude).toBeLessThan(1);
  });
});

describe("water that falls back on a power cut", () => {
  const tank = {
    displayArea: 0.9,
    displayLevel: 0.575,
    weirCrest: 0.56,
    siphonBreaks: [],
    boxArea: 0.03,
    boxLevel: 0.4,
    boxStopLevel: 0.3,
    pipeVolume: 0.002,
  };

  it("is the display down to its crest, the box down to its drain, and the pipes", () => {
    // Analytic: 0.9 x 0.015 + 0.03 x 0.1 + 0.002.
    expect(drainBackVolume(tank).total).toBeCloseTo(0.0135 + 0.003 + 0.002, 12);
    expect(drainBackVolume(tank).displayRestLevel).toBe(0.56);
  });

  it("grows where the lowest siphon break lies below the crest", () => {
    // Analytic: 0.9 x 0.035 instead of 0.9 x 0.015.
    const low = drainBackVolume({ ...tank, siphonBreaks: [0.57, 0.54] });
    expect(low.display).toBeCloseTo(0.0315, 12);
    expect(low.displayRestLevel).toBe(0.54);
  });

  it("is never negative when levels already stand below every hole", () => {
    const low = drainBackVolume({ ...tank, displayLevel: 0.5, boxLevel: 0.2, siphonBreaks: [0.54] });
    expect(low.display).toBe(0);
    expect(low.box).toBe(0);
  });
});
