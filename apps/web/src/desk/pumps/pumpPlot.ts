import type { PumpRow, SpeedCurve } from "@tidewright/catalogue";
import { electricalPower, powerCurve, pumpCurve, pumpHead, pumpPointProblems } from "@tidewright/engine";
import { fromSI, toSI } from "@tidewright/units";
import type { Words } from "@tidewright/words";
import { scaleLinear, scaleSqrt } from "d3-scale";
import { line } from "d3-shape";

type Pair = readonly [number, number];

/** How many points a curve is drawn by. */
const samples = 48;

/** Returns points along a head curve as the engine reckons with it, from no flow to its last point; none where the points make
 *  no curve.
 *  points flow [m3/s], head [m]   -> pairs of flow and head */
function headLine(points: SpeedCurve["points"]): readonly Pair[] {
  if (pumpPointProblems(points).length > 0) return [];
  const curve = pumpCurve(points);
  return Array.from({ length: samples + 1 }, (_, i) => {
    const flow = (curve.lastFlow * i) / samples;
    return [flow, pumpHead(curve, flow)] as const;
  });
}

/** Returns points along a power curve as the engine reckons with it; none where the points make no curve.
 *  points flow [m3/s], power [W]   speedRatio   -> pairs of flow and power */
function powerLine(points: NonNullable<SpeedCurve["power"]>, speedRatio: number): readonly Pair[] {
  const rising = points.every(
    ({ flow, power }, i) =>
      Number.isFinite(flow + power) && flow >= 0 && power > 0 && (i === 0 || flow > points[i - 1]!.flow),
  );
  if (!rising || points.length < 2 || !(speedRatio > 0 && speedRatio <= 1)) return [];
  const curve = powerCurve(points, 0, speedRatio);
  return Array.from({ length: samples + 1 }, (_, i) => {
    const flow = curve.firstFlow + ((curve.lastFlow - curve.firstFlow) * i) / samples;
    return [flow, electricalPower([curve], speedRatio, flow)] as const;
  });
}

/** What a pump can do at most, as its points say: head without flow or at the first point [m], flow at the last one [m3/s]. */
export function reachOf(pump: PumpRow): { readonly head: number; readonly flow: number } {
  const points = pump.curves[0]?.points ?? [];
  return { head: points[0]?.head ?? Number.NaN, flow: points.at(-1)?.flow ?? Number.NaN };
}

/** The scale that a list's small curves share. */
export interface SharedScale {
  readonly head: number;
  readonly flow: number;
}

/** Returns the scale on which all these pumps find room. */
export function sharedScale(pumps: readonly PumpRow[]): SharedScale {
  let head = 0;
  let flow = 0;
  for (const pump of pumps) {
    const reach = reachOf(pump);
    head = Math.max(head, reach.head || 0);
    flow = Math.max(flow, reach.flow || 0);
  }
  return { head: head || 1, flow: flow || 1e-3 };
}

const lines = new WeakMap<PumpRow, readonly Pair[]>();

/** Returns a pump's full-speed curve in a small picture, on axes of square roots: between the smallest and the largest
 *  pump of a shop lies a factor of thirty, and on straight axes the small ones would be dots.
 *  pump   scale   width, height [px]   -> path, empty where there is no curve */
export function smallPath(pump: PumpRow, scale: SharedScale, width: number, height: number): string {
  let points = lines.get(pump);
  if (points === undefined) {
    points = headLine(pump.curves[0]?.points ?? []);
    lines.set(pump, points);
  }
  const x = scaleSqrt([0, scale.flow], [0, width]);
  const y = scaleSqrt([0, scale.head], [height, 0]);
  return line().digits(1)(points.map(([flow, head]) => [x(flow), y(Math.max(0, head))])) ?? "";
}

export interface Tick {
  readonly at: number;
  readonly text: string;
}

/** One speed as it is drawn [px]. */
export interface PlottedSpeed {
  readonly key: number;
  readonly label: string;
  /** Empty while the points make no curve. */
  readonly head: string;
  readonly power: string;
  readonly points: readonly Pair[];
  readonly powerPoints: readonly Pair[];
  readonly labelAt: Pair | undefined;
}

/** The curves of a sheet in picture points: heads above, watts below where there are any. */
export interface PumpPlot {
  readonly heads: Frame;
  readonly powers: Frame | undefined;
  readonly flowTicks: readonly Tick[];
  readonly speeds: readonly PlottedSpeed[];
}

interface Frame {
  readonly x0: number;
  readonly x1: number;
  /** Lower and upper edge. */
  readonly y0: number;
  readonly y1: number;
  readonly ticks: readonly Tick[];
}

/** Returns a pump's curves laid out for a picture.
 *  curves as built from the sheet, NaN where a cell is no number   units of the axes   width, height [px]   words
 *  -> PumpPlot; undefined while there is no sound point at all */
export function layoutPump(
  curves: readonly SpeedCurve[],
  units: { readonly flow: string; readonly head: string },
  width: number,
  height: number,
  words: Words,
): PumpPlot | undefined {
  const whole = (flow: number, other: number) => Number.isFinite(flow + other) && flow >= 0 && other >= 0;
  const drawn = curves.map((curve) => ({
    speedRatio: curve.speedRatio,
    line: headLine(curve.points),
    points: curve.points.filter(({ flow, head }) => whole(flow, head)).map(({ flow, head }): Pair => [flow, head]),
    powerLine: powerLine(curve.power ?? [], curve.speedRatio),
    powerPoints: (curve.power ?? [])
      .filter(({ flow, power }) => whole(flow, power))
      .map(({ flow, power }): Pair => [flow, power]),
  }));
  const mostFlow = most(drawn.flatMap(({ points, powerPoints }) => [...points, ...powerPoints].map(([flow]) => flow)));
  const mostHead = most(drawn.flatMap(({ points, line: along }) => [...points, ...along].map(([, head]) => head)));
  const mostPower = most(drawn.flatMap(({ powerPoints }) => powerPoints.map(([, power]) => power)));
  if (!(mostFlow > 0 && mostHead > 0)) return undefined;
  const [x0, x1] = [44, width - 12];
  const split = mostPower > 0 ? Math.round(height * 0.66) : height - 34;
  const x = scaleLinear([0, 1.04 * mostFlow], [x0, x1]);
  const y = scaleLinear([0, 1.08 * mostHead], [split, 20]);
  const powerY = scaleLinear([0, 1.12 * mostPower], [height - 34, split + 30]);
  const path = (points: readonly Pair[], up: (value: number) => number) =>
    points.length === 0 ? "" : (line().digits(1)(points.map(([flow, other]) => [x(flow), up(other)])) ?? "");
  const at = (points: readonly Pair[], up: (value: number) => number) =>
    points.map(([flow, other]): Pair => [x(flow), up(other)]);
  return {
    heads: {
      x0,
      x1,
      y0: split,
      y1: 20,
      ticks: ticks(1.08 * mostHead, units.head, "head", y, words, (split - 20) / 40),
    },
    powers:
      mostPower > 0
        ? {
            x0,
            x1,
            y0: height - 34,
            y1: split + 30,
            ticks: ticks(1.12 * mostPower, "W", "power", powerY, words, (height - 64 - split) / 34),
          }
        : undefined,
    flowTicks: ticks(1.04 * mostFlow, units.flow, "flow", x, words, (x1 - x0) / 78),
    speeds: drawn.map((each, key) => {
      // A curve's name stands on it where curves lie apart: towards its left end.
      const named = each.line[Math.round(samples * 0.12)];
      return {
        key,
        label: Number.isFinite(each.speedRatio) ? `${words.number(each.speedRatio * 100)} %` : "",
        head: path(each.line, y),
        power: path(each.powerLine, powerY),
        points: at(each.points, y),
        powerPoints: at(each.powerPoints, powerY),
        labelAt: named && ([x(named[0]), y(named[1]) - 6] as const),
      };
    }),
  };
}

const most = (values: readonly number[]): number => Math.max(0, ...values);

function ticks(
  end: number,
  unit: string,
  dimension: "flow" | "head" | "power",
  scale: (value: number) => number,
  words: Words,
  wished: number,
): Tick[] {
  const count = Math.max(2, Math.floor(wished));
  const axis = scaleLinear([0, fromSI(end, unit, dimension)], [0, 1]);
  return axis.ticks(count).map((value) => ({
    at: scale(toSI({ value, unit }, dimension)),
    text: words.number(value, { useGrouping: false, maximumFractionDigits: 6 }),
  }));
}
