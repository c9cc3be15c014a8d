import type { Curve, LoopState, PumpState } from "@tidewright/advice";
import { scaleLinear } from "d3-scale";
import { curveMonotoneX, line } from "d3-shape";

/** Writes an SI number with its unit. */
export type Format = (si: number, dimension: "flow" | "head") => string;

/** A curve as a path, with a name at its end. */
export interface CurveLine {
  readonly id: string;
  readonly kind: "pump" | "pumpFull" | "system";
  readonly path: string;
  readonly label: string;
  readonly labelAt: readonly [number, number];
  readonly anchor: "start" | "middle" | "end";
}

/** Everything the picture draws, in pixels. */
export interface CurveLayout {
  readonly width: number;
  readonly height: number;
  readonly plot: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly lines: readonly CurveLine[];
  readonly flowTicks: readonly { readonly at: number; readonly label: string }[];
  readonly headTicks: readonly { readonly at: number; readonly label: string }[];
  readonly band: { readonly from: number; readonly to: number; readonly aim: number } | undefined;
  readonly point: { readonly x: number; readonly y: number; readonly label: string } | undefined;
  readonly range: { readonly from: number; readonly to: number; readonly y: number } | undefined;
  readonly staticHead: { readonly y: number; readonly label: string } | undefined;
  /** Flow [m3/s] at a pixel, and heads of pumps and system there [m]. */
  readonly readAt: (x: number) => {
    readonly flow: number;
    readonly pump: number | undefined;
    readonly system: number | undefined;
  };
  readonly xOf: (flow: number) => number;
  readonly yOf: (head: number) => number;
}

/** What the picture shows: a loop, its pumps and, for a return, the wish in pump flow terms. */
export interface CurveSubject {
  readonly loop: LoopState;
  readonly pumps: readonly PumpState[];
  readonly wish?: { readonly low: number; readonly aim: number; readonly high: number } | undefined;
  readonly parallel: boolean;
}

/** Lays the curve picture out in a box of pixels. Pump curves of a loop are combined: flows add in parallel, heads in series. */
export function layoutCurves(subject: CurveSubject, format: Format, width: number, height: number): CurveLayout {
  const { loop, pumps, wish, parallel } = subject;
  const full = combined(
    pumps.map((pump) => pump.curves[0]?.curve),
    parallel,
  );
  const slowed = pumps.some((pump) => pump.curves.length > 1);
  const now = slowed
    ? combined(
        pumps.map((pump) => pump.curves.at(-1)?.curve),
        parallel,
      )
    : full;
  // The wish is what shall reach the display; the pumps give more where branches take their share.
  const share = loop.flow > 0 && loop.flowToDisplay > 0 ? loop.flowToDisplay / loop.flow : 1;
  const band = wish && { low: wish.low / share, aim: wish.aim / share, high: wish.high / share };
  const flowEnd =
    1.04 *
    Math.max(
      1e-6,
      last(full?.flow),
      loop.flow * 1.15,
      Math.min(band?.high ?? 0, 2 * Math.max(loop.flow, last(full?.flow))),
    );
  const headEnd = 1.08 * Math.max(0.1, full?.head[0] ?? 0, loop.totalHead * 1.15, loop.staticHead * 1.1);
  const plot = { left: 46, right: width - 14, top: 18, bottom: height - 36 };
  const x = scaleLinear([0, flowEnd], [plot.left, plot.right]);
  const y = scaleLinear([0, headEnd], [plot.bottom, plot.top]);
  const path = line<readonly [number, number]>()
    .x(([q]) => x(q))
    .y(([, h]) => y(h))
    .curve(curveMonotoneX);
  const inside = (curve: Curve) =>
    curve.flow.flatMap((q, i): [number, number][] => {
      const h = curve.head[i] ?? 0;
      return q <= flowEnd && h <= headEnd && h >= 0 ? [[q, h]] : [];
    });
  const lines: CurveLine[] = [];
  const add = (
    id: string,
    kind: CurveLine["kind"],
    curve: Curve | undefined,
    label: string,
    share: number,
    anchor: CurveLine["anchor"],
  ) => {
    if (!curve) return;
    const points = inside(curve);
    const at = points[Math.max(0, Math.min(points.length - 1, Math.round(share * (points.length - 1))))];
    if (points.length < 2 || !at) return;
    lines.push({ id, kind, path: path(points) ?? "", label, labelAt: [x(at[0]), y(at[1])], anchor });
  };
  if (slowed) add("full", "pumpFull", full, "full speed", 0.22, "start");
  const speed = pumps[0] ? Math.round(100 * pumps[0].speed) : 100;
  add("now", "pump", now, slowed ? `${speed} % speed` : "pump", slowed ? 0.12 : 0.22, "start");
  add("system", "system", loop.systemCurve, "system", 1, "end");
  const ticks = (scale: typeof x, count: number, dimension: "flow" | "head") =>
    scale.ticks(count).map((value) => ({ at: scale(value), label: format(value, dimension) }));
  const running = loop.flow > 0;
  return {
    width,
    height,
    plot,
    lines,
    flowTicks: ticks(x, Math.max(2, Math.floor((plot.right - plot.left) / 90)), "flow"),
    headTicks: ticks(y, Math.max(2, Math.floor((plot.bottom - plot.top) / 44)), "head"),
    band: band && {
      from: x(Math.min(band.low, flowEnd)),
      to: x(Math.min(band.high, flowEnd)),
      aim: x(Math.min(band.aim, flowEnd)),
    },
    point: running
      ? {
          x: x(loop.flow),
          y: y(loop.totalHead),
          label: `${format(loop.flow, "flow")} at ${format(loop.totalHead, "head")}`,
        }
      : undefined,
    range: running ? { from: x(loop.flowRange[0]), to: x(loop.flowRange[1]), y: y(loop.totalHead) } : undefined,
    staticHead:
      loop.staticHead > 0.01
        ? { y: y(loop.staticHead), label: `static ${format(loop.staticHead, "head")}` }
        : undefined,
    readAt: (pixel) => {
      const flow = Math.max(0, x.invert(pixel));
      return { flow, pump: now && interpolated(now, flow), system: interpolated(loop.systemCurve, flow) };
    },
    xOf: (flow) => x(flow),
    yOf: (head) => y(head),
  };
}

function last(values: readonly number[] | undefined): number {
  return values?.at(-1) ?? 0;
}

/** Pump curves of one loop as one: equal samples of flow, heads or flows added. Unlike pumps in parallel are drawn up to the lower shut-off. */
function combined(curves: readonly (Curve | undefined)[], parallel: boolean): Curve | undefined {
  const known = curves.filter((curve): curve is Curve => curve !== undefined && curve.flow.length > 1);
  const first = known[0];
  if (!first || known.length === 1) return first;
  if (!parallel) {
    const end = Math.min(...known.map((curve) => last(curve.flow)));
    const flow = first.flow.map((_, i) => (end * i) / (first.flow.length - 1));
    return { flow, head: flow.map((q) => known.reduce((sum, curve) => sum + (interpolated(curve, q) ?? 0), 0)) };
  }
  const top = Math.min(...known.map((curve) => curve.head[0] ?? 0));
  const floor = Math.max(...known.map((curve) => last(curve.head)));
  const head = first.head.map((_, i) => top - ((top - floor) * i) / (first.head.length - 1));
  return { flow: head.map((h) => known.reduce((sum, curve) => sum + flowAt(curve, h), 0)), head };
}

function interpolated(curve: Curve, flow: number): number | undefined {
  const i = curve.flow.findIndex((q) => q >= flow);
  if (i < 0) return undefined;
  if (i === 0) return curve.head[0];
  const [q0, q1] = [curve.flow[i - 1] ?? 0, curve.flow[i] ?? 0];
  const [h0, h1] = [curve.head[i - 1] ?? 0, curve.head[i] ?? 0];
  return h0 + ((h1 - h0) * (flow - q0)) / (q1 - q0 || 1);
}

function flowAt(curve: Curve, head: number): number {
  const i = curve.head.findIndex((h) => h <= head);
  if (i <= 0) return i === 0 ? (curve.flow[0] ?? 0) : last(curve.flow);
  const [h0, h1] = [curve.head[i - 1] ?? 0, curve.head[i] ?? 0];
  const [q0, q1] = [curve.flow[i - 1] ?? 0, curve.flow[i] ?? 0];
  return q0 + ((q1 - q0) * (h0 - head)) / (h0 - h1 || 1);
}
