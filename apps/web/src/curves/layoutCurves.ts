import type { Curve, LoopState, PumpState } from "@tidewright/advice";
import { textWidth } from "@tidewright/editor";
import { fromSI, toSI } from "@tidewright/units";
import { englishWords, type Words } from "@tidewright/words";
import { curveMonotoneX, line } from "d3-shape";
import { combinedCurve, headAt } from "./combinedCurve.ts";
import { roundTicks, type Scale, scaleOf } from "./scale.ts";

/** Flows that are wished for over the weir [m3/s]. */
export interface FlowWish {
  readonly low: number;
  readonly aim: number;
  readonly high: number;
}

/** Units of the two axes, as the units package knows them. */
export interface CurveUnits {
  readonly flow: string;
  readonly head: string;
}

export interface CurveInput {
  readonly loop: LoopState;
  /** Pumps of this loop, in its order. */
  readonly pumps: readonly PumpState[];
  readonly wish?: FlowWish | undefined;
  readonly units: CurveUnits;
  /** The reader's words, English where left out. */
  readonly words?: Words;
  readonly width: number;
  readonly height: number;
}

/** A curve as it is drawn, and what is written beside it [px]. */
export interface DrawnCurve {
  readonly kind: "pumpNow" | "pumpFull" | "pumpSingle" | "system";
  readonly label: string;
  readonly d: string;
  readonly curve: Curve;
  readonly labelAt: { readonly x: number; readonly y: number; readonly anchor: "start" | "end" };
}

/** Where the first of the operating point's three lines stands [px]. */
export interface PointLabel {
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "end";
}

export interface Tick {
  /** Place on the axis [px]. */
  readonly at: number;
  readonly text: string;
}

/** Where a loop runs [px]. */
export interface OperatingPlace {
  /** The operating point; none where nothing flows. */
  readonly point: { readonly x: number; readonly y: number; readonly label: PointLabel } | undefined;
  /** Honest interval of the flow. */
  readonly range: readonly [number, number];
}

/** The curve picture in picture points, with scales to read it by. */
export interface CurveScene {
  readonly plot: { readonly x0: number; readonly x1: number; readonly y0: number; readonly y1: number };
  readonly flowTicks: readonly Tick[];
  readonly headTicks: readonly Tick[];
  readonly curves: readonly DrawnCurve[];
  readonly point: OperatingPlace["point"];
  readonly range: OperatingPlace["range"];
  readonly band: { readonly x0: number; readonly x1: number; readonly aim: number } | undefined;
  readonly staticHead: number;
  /** Largest flow on the axis [m3/s]. */
  readonly mostFlow: number;
  /** Where a loop runs on these axes, such as the same loop a moment later. */
  place(loop: LoopState): OperatingPlace;
  x(flow: number): number;
  y(head: number): number;
  flowAt(x: number): number;
}

/** Returns the curve picture of a loop: pump curves at full and at present speed, system curve, operating point, wished
 *  band, static head and the honest interval of the flow, all placed in picture points.
 *  input loop, its pumps, wish, units of the axes, size [px]   -> curve scene [px]
 *  Findings: none. Throws: where a unit is unknown.
 *  Valid: curves of one point or more. Several pumps are drawn as one combined curve with a single one lightly beside
 *  it. The wish is for what reaches the display: where branches take a share, the pumps' flow for it is read off the
 *  system curve's samples.
 *  Source: own construction; pumps in parallel add flows at equal head, in series heads at equal flow (analytic). */
export function layoutCurves(input: CurveInput): CurveScene {
  const { loop, pumps, units, width, height, words = englishWords } = input;
  const named = pumpCurves(pumps, loop.flow, words);
  const wish = wishAtPumps(input.wish, loop);
  const pumpFlow = Math.max(0, ...named.flatMap(({ curve }) => curve.flow).filter(Number.isFinite));
  const reach = Math.max(1e-6, pumpFlow, 1.15 * finite(loop.flow), finite(loop.flowRange[1]));
  // A wish far beyond the pump is shown up to twice of what the pump can, so that the curve keeps its size.
  const mostFlow = 1.04 * Math.max(reach, wish ? Math.min(wish.high, 2 * reach) : 0);
  const pumpHead = Math.max(0, ...named.flatMap(({ curve }) => curve.head).filter(Number.isFinite));
  const mostHead = 1.1 * Math.max(0.1, pumpHead, finite(loop.totalHead), 1.1 * finite(loop.staticHead));
  const plot = { x0: width < 480 ? 42 : 54, x1: width - (width < 480 ? 14 : 24), y0: height - 38, y1: 22 };
  const x = scaleOf([0, mostFlow], [plot.x0, plot.x1]);
  const y = scaleOf([0, mostHead], [plot.y0, plot.y1]);
  const drawn: DrawnCurve[] = [
    ...named.map(({ kind, label, curve }) => ({
      kind,
      label,
      curve,
      d: pathOf(curve, x, y),
      labelAt: pumpLabel(curve, kind, x, y),
    })),
    {
      kind: "system",
      label: words.say("curves.system"),
      curve: loop.systemCurve,
      ...systemDrawing(loop, x, y, mostFlow, mostHead),
    },
  ];
  const highest = named.at(-1)?.curve;
  // The largest ordinate of the pump's curve under a label that begins at a place: the label must stay above it.
  const over = (at: number) => (highest ? y(headAt(highest, Math.max(0, x.invert(at)))) : plot.y0);
  const within = (flow: number) => x(Math.min(mostFlow, Math.max(0, finite(flow))));
  const place = ({ flow, totalHead, flowRange }: LoopState): OperatingPlace => ({
    point:
      flow > 0 ? placePoint({ x: within(flow), y: y(Math.min(mostHead, finite(totalHead))) }, plot, over) : undefined,
    range: [within(flowRange[0]), within(flowRange[1])],
  });
  const { point, range } = place(loop);
  return {
    plot,
    flowTicks: ticks(mostFlow, units.flow, "flow", x, words, Math.max(2, Math.floor((plot.x1 - plot.x0) / 84))),
    headTicks: ticks(mostHead, units.head, "head", y, words, Math.max(2, Math.floor((plot.y0 - plot.y1) / 44))),
    curves: apart(
      drawn.filter(({ curve }) => curve.flow.length > 0),
      plot,
      point,
    ),
    point,
    range,
    place,
    band: wish && {
      x0: x(Math.min(wish.low, mostFlow)),
      x1: x(Math.min(wish.high, mostFlow)),
      aim: x(Math.min(wish.aim, mostFlow)),
    },
    staticHead: y(Math.max(0, finite(loop.staticHead))),
    mostFlow,
    x: (flow) => x(flow),
    y: (head) => y(head),
    flowAt: (at) => Math.min(mostFlow, Math.max(0, x.invert(at))),
  };
}

const finite = (value: number): number => (Number.isFinite(value) ? value : 0);

function wishAtPumps(wish: FlowWish | undefined, loop: LoopState): FlowWish | undefined {
  if (!wish) return undefined;
  return { low: pumpFlowFor(wish.low, loop), aim: pumpFlowFor(wish.aim, loop), high: pumpFlowFor(wish.high, loop) };
}

/** Pump flow that brings a flow to the display [m3/s], between the samples of the system curve; beyond them in proportion. */
function pumpFlowFor(target: number, loop: LoopState): number {
  const { flow, toDisplay } = loop.systemCurve;
  const i = toDisplay.findIndex((reached) => reached >= target);
  const [q1, d1] = [flow[i], toDisplay[i]];
  const [q0, d0] = [flow[i - 1], toDisplay[i - 1]];
  if (q1 !== undefined && d1 !== undefined && q0 !== undefined && d0 !== undefined && d1 > d0)
    return q0 + ((q1 - q0) * (target - d0)) / (d1 - d0);
  const [q, d] = [flow.at(-1) ?? 0, toDisplay.at(-1) ?? 0];
  return d > 0 ? (target * q) / d : target;
}

interface NamedCurve {
  readonly kind: "pumpNow" | "pumpFull" | "pumpSingle";
  readonly label: string;
  readonly curve: Curve;
}

/** Full speed and present speed of all pumps together; one of several pumps lightly beside them. */
function pumpCurves(pumps: readonly PumpState[], flow: number, { say }: Words): NamedCurve[] {
  const first = pumps[0];
  if (!first) return [];
  // Pumps in series all carry the loop's flow, pumps in parallel share it.
  const series = pumps.length > 1 && pumps.every((pump) => pump.flow >= 0.99 * flow);
  const together = (fastest: boolean) => {
    const curves = pumps.flatMap((pump) => curveOf(pump, fastest) ?? []);
    return curves.length > 0 ? combinedCurve(curves, series ? "series" : "parallel") : undefined;
  };
  const many = pumps.length > 1;
  const count = pumps.length;
  const named: NamedCurve[] = [];
  const full = together(true);
  if (full && pumps.some((pump) => pump.speed < 0.995 && pump.curves.length > 1))
    named.push({
      kind: "pumpFull",
      label: say(many ? "curves.manyFullSpeed" : "curves.fullSpeed", { count }),
      curve: full,
    });
  const one = curveOf(first, false);
  if (one && pumps.length > 1) named.push({ kind: "pumpSingle", label: say("curves.onePump"), curve: one });
  const now = together(false);
  if (now)
    named.push({
      kind: "pumpNow",
      label: say(many ? "curves.manySpeed" : "curves.speed", { count, share: `${Math.round(first.speed * 100)} %` }),
      curve: now,
    });
  return named;
}

/** The curve nearest to the pump's speed, or that of its highest. */
function curveOf(pump: PumpState, fastest: boolean): Curve | undefined {
  const order = [...pump.curves].sort((a, b) =>
    fastest ? b.speedRatio - a.speedRatio : Math.abs(a.speedRatio - pump.speed) - Math.abs(b.speedRatio - pump.speed),
  );
  return order[0]?.curve;
}

function pathOf(curve: Curve, x: Scale, y: Scale): string {
  const points = curve.flow.map((flow, i): [number, number] => [x(flow), y(curve.head[i] ?? 0)]);
  return line().curve(curveMonotoneX).digits(1)(points.filter(([a, b]) => Number.isFinite(a + b))) ?? "";
}

/** A pump's name stands over the upper part of its curve, where curves lie apart. */
function pumpLabel(curve: Curve, kind: NamedCurve["kind"], x: Scale, y: Scale): DrawnCurve["labelAt"] {
  const flow = (curve.flow.at(-1) ?? 0) * (kind === "pumpFull" ? 0.3 : 0.12);
  return { x: x(flow), y: y(headAt(curve, flow)) - 8, anchor: "start" };
}

/** The system curve may run far above the pump; it is cut off at the top of the picture and named at its end. */
function systemDrawing(
  loop: LoopState,
  x: Scale,
  y: Scale,
  mostFlow: number,
  mostHead: number,
): Pick<DrawnCurve, "d" | "labelAt"> {
  const curve = loop.systemCurve;
  const end = Math.min(mostFlow, curve.flow.at(-1) ?? 0);
  const points: [number, number][] = [];
  for (let i = 0; i <= 80; i++) {
    const flow = (end * i) / 80;
    const head = headAt(curve, flow);
    if (head > mostHead) break;
    points.push([x(flow), y(head)]);
  }
  const last = points.at(-1) ?? [x(0), y(0)];
  return { d: line().digits(1)(points) ?? "", labelAt: { x: last[0] - 4, y: last[1] + 16, anchor: "end" } };
}

/** Names move up or down until none lies on another or on the operating point's numbers. */
function apart(curves: readonly DrawnCurve[], plot: CurveScene["plot"], point: CurveScene["point"]): DrawnCurve[] {
  const taken: { x0: number; x1: number; y0: number; y1: number }[] = [];
  if (point) {
    taken.push(labelBox(point.label), { x0: point.x - 9, x1: point.x + 9, y0: point.y - 9, y1: point.y + 9 });
  }
  return curves.map((curve) => {
    const wide = textWidth(curve.label, 11);
    const { anchor } = curve.labelAt;
    const right = Math.min(anchor === "end" ? curve.labelAt.x : curve.labelAt.x + wide, plot.x1);
    const x0 = Math.max(plot.x0 + 2, right - wide);
    const clash = (y: number) =>
      taken.some((other) => x0 < other.x1 + 4 && other.x0 < x0 + wide + 4 && y - 10 < other.y1 && other.y0 < y + 3);
    const wished = Math.min(Math.max(curve.labelAt.y, plot.y1 + 9), plot.y0 - 4);
    let y = wished;
    for (let step = 1; clash(y) && step < 60; step++) {
      const next = wished + (step % 2 ? 1 : -1) * Math.ceil(step / 2) * 5;
      if (next > plot.y1 + 8 && next < plot.y0 - 3) y = next;
    }
    taken.push({ x0, x1: x0 + wide, y0: y - 10, y1: y + 3 });
    return { ...curve, labelAt: { x: anchor === "end" ? x0 + wide : x0, y, anchor } };
  });
}

/** Room for the operating point's numbers [px]. */
const pointRoom = { wide: 132, high: 42 } as const;

/** The numbers stand to the right of the point and over it; near the right edge they keep to the edge, over the curve. */
function placePoint(
  { x, y }: { readonly x: number; readonly y: number },
  plot: CurveScene["plot"],
  over: (x: number) => number,
): { readonly x: number; readonly y: number; readonly label: PointLabel } {
  const fits = x + 12 + pointRoom.wide < plot.x1 + 10;
  const top = fits ? y - 10 : Math.min(y - 10, over(plot.x1 - pointRoom.wide) - 4);
  const first = Math.min(Math.max(top - pointRoom.high + 14, plot.y1 + 13), plot.y0 - pointRoom.high);
  return { x, y, label: fits ? { x: x + 12, y: first, anchor: "start" } : { x: plot.x1, y: first, anchor: "end" } };
}

function labelBox({ x, y, anchor }: PointLabel) {
  const x0 = anchor === "start" ? x : x - pointRoom.wide;
  return { x0, x1: x0 + pointRoom.wide, y0: y - 12, y1: y + pointRoom.high - 12 };
}

function ticks(
  most: number,
  unit: string,
  dimension: "flow" | "head",
  scale: Scale,
  words: Words,
  count: number,
): Tick[] {
  return roundTicks(fromSI(most, unit, dimension), count, words).map(({ value, text }) => ({
    at: scale(toSI({ value, unit }, dimension)),
    text,
  }));
}
