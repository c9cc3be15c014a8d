import type { LoopState, PumpState } from "@tidewright/advice";
import { unitLabel } from "@tidewright/units";
import type { Words } from "@tidewright/words";
import {
  type KeyboardEvent,
  memo,
  type PointerEvent,
  type ReactNode,
  useEffect,
  useId,
  useMemo,
  useRef,
  useState,
} from "react";
import "./curves.css";
import { type Format, textWidth } from "@tidewright/editor";
import { useWords } from "../words/useWords.ts";
import { headAt } from "./combinedCurve.ts";
import { type CurveScene, type CurveUnits, type FlowWish, layoutCurves } from "./layoutCurves.ts";
import { unitOfFormat } from "./unitOfFormat.ts";

export interface CurvePictureProps {
  /** The loop whose curves are drawn. */
  readonly loop: LoopState;
  /** Pumps of this loop, in its order. */
  readonly pumps: readonly PumpState[];
  /** The loop at this moment and its first pump, where the operating point has moved on from the curves. */
  readonly now?: LoopState;
  readonly pump?: PumpState | undefined;
  readonly wish?: FlowWish | undefined;
  readonly format: Format;
  /** Height of the picture [px]. */
  readonly height?: number;
}

/** Pump curve and system curve of one loop with the operating point, the wished band and the flow's interval. A pointer
 *  over it or the arrow keys read values along the curves. */
export function CurvePicture(props: CurvePictureProps): ReactNode {
  const { loop, pumps, wish, format, height = 260, now = loop, pump = pumps[0] } = props;
  const words = useWords();
  const { say } = words;
  const id = useId().replace(/[^a-zA-Z0-9]/g, "");
  const frame = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(420);
  const [read, setRead] = useState<number>();
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const observer = new ResizeObserver(([entry]) =>
      setWidth(Math.max(240, Math.floor(entry?.contentRect.width ?? 420))),
    );
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const units = useMemo(() => ({ flow: unitOfFormat(format, "flow"), head: unitOfFormat(format, "head") }), [format]);
  const scene = useMemo(
    () => layoutCurves({ loop, pumps, wish, units, width, height, words }),
    [loop, pumps, wish, units, width, height, words],
  );
  const flow = read ?? Math.max(0, now.flow);
  const onKeyDown = (event: KeyboardEvent) => {
    const next = stepTo(event.key, flow, scene.mostFlow, event.shiftKey ? 10 : 100);
    if (event.key === "Escape") setRead(undefined);
    else if (next !== undefined) setRead(next);
    else return;
    event.preventDefault();
  };
  const onPointer = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    setRead(scene.flowAt(((event.clientX - box.left) * width) / box.width));
  };
  return (
    // Everything inside a slider is presentation to a screen reader: its value text tells the numbers.
    <div
      ref={frame}
      className="tw-curves"
      tabIndex={0}
      role="slider"
      aria-label={say("curves.label", { loop: loop.name })}
      aria-valuemin={0}
      aria-valuemax={scene.mostFlow}
      aria-valuenow={flow}
      aria-valuetext={
        read === undefined
          ? pointLines(now, pump, format, say).join(", ")
          : readLines(scene, flow, format, say).join(", ")
      }
      onKeyDown={onKeyDown}
      onBlur={() => setRead(undefined)}
    >
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        aria-hidden="true"
        onPointerDown={onPointer}
        onPointerMove={onPointer}
        onPointerLeave={(event) => event.pointerType === "mouse" && setRead(undefined)}
      >
        <defs>
          <pattern id={`${id}-band`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <line x1="0" y1="0" x2="0" y2="6" className="tw-bandHatch" />
          </pattern>
        </defs>
        <Ground scene={scene} units={units} id={id} loop={loop} format={format} />
        <OperatingPoint scene={scene} loop={now} pump={pump} format={format} quiet={read !== undefined} />
        {read === undefined ? null : <Readout scene={scene} flow={flow} format={format} />}
      </svg>
    </div>
  );
}

interface GroundProps {
  readonly scene: CurveScene;
  readonly units: CurveUnits;
  readonly id: string;
  readonly loop: LoopState;
  readonly format: Format;
}

/** All that stands still while the operating point moves: axes, wish, curves and their names. */
const Ground = memo(function Ground({ scene, units, id, loop, format }: GroundProps) {
  return (
    <>
      <Axes scene={scene} units={units} />
      <Band scene={scene} id={id} />
      <StaticHead scene={scene} loop={loop} format={format} />
      {scene.curves.map(({ kind, d }) => (
        <path key={kind} d={d} className={`tw-curve tw-curve-${kind}`} />
      ))}
      {scene.curves.map(({ kind, label, labelAt }) => (
        <text
          key={kind}
          x={labelAt.x}
          y={labelAt.y}
          textAnchor={labelAt.anchor}
          className={`tw-curveName tw-curveName-${kind}`}
        >
          {label}
        </text>
      ))}
    </>
  );
});

function stepTo(key: string, flow: number, most: number, steps: number): number | undefined {
  const step = most / steps;
  if (key === "Home") return 0;
  if (key === "End") return most;
  if (key === "ArrowRight" || key === "ArrowUp") return Math.min(most, flow + step);
  if (key === "ArrowLeft" || key === "ArrowDown") return Math.max(0, flow - step);
  return undefined;
}

function Axes({ scene, units }: { scene: CurveScene; units: CurveUnits }) {
  const { say } = useWords();
  const { plot, flowTicks, headTicks } = scene;
  return (
    <g>
      {flowTicks.map(({ at, text }) => (
        <g key={text}>
          <path d={`M${at},${plot.y1}V${plot.y0 + 4}`} className="tw-grid" />
          <text x={at} y={plot.y0 + 16} textAnchor="middle" className="tw-tick">
            {text}
          </text>
        </g>
      ))}
      {headTicks.map(({ at, text }) => (
        <g key={text}>
          <path d={`M${plot.x0 - 4},${at}H${plot.x1}`} className="tw-grid" />
          <text x={plot.x0 - 7} y={at + 3.5} textAnchor="end" className="tw-tick">
            {text}
          </text>
        </g>
      ))}
      <path d={`M${plot.x0},${plot.y1}V${plot.y0}H${plot.x1}`} className="tw-axis" />
      <text x={plot.x1} y={plot.y0 + 31} textAnchor="end" className="tw-axisName">
        {say("curves.flowAxis", { unit: unitLabel(units.flow, "flow") })}
      </text>
      <text x={6} y={12} className="tw-axisName">
        {say("curves.headAxis", { unit: unitLabel(units.head, "head") })}
      </text>
    </g>
  );
}

/** The wished band of flow, hatched, with a line at the aim. */
function Band({ scene, id }: { scene: CurveScene; id: string }) {
  const { say } = useWords();
  const { band, plot } = scene;
  if (!band) return null;
  const wide = Math.max(0, band.x1 - band.x0);
  return (
    <g>
      <rect x={band.x0} y={plot.y1} width={wide} height={plot.y0 - plot.y1} fill={`url(#${id}-band)`} stroke="none" />
      <path d={`M${band.x0},${plot.y1}V${plot.y0}M${band.x1},${plot.y1}V${plot.y0}`} className="tw-bandEdge" />
      <path d={`M${band.aim},${plot.y1}V${plot.y0}`} className="tw-aim" />
      <text x={Math.min(band.aim + 4, plot.x1 - 20)} y={plot.y0 - 6} className="tw-curveNote">
        {say("curves.aim")}
      </text>
      <text
        x={Math.min((band.x0 + band.x1) / 2, plot.x1 - 20)}
        y={plot.y1 - 6}
        textAnchor="middle"
        className="tw-curveNote"
      >
        {say("curves.wished")}
      </text>
    </g>
  );
}

function StaticHead({ scene, loop, format }: { scene: CurveScene; loop: LoopState; format: Format }) {
  const { say } = useWords();
  const { plot, staticHead } = scene;
  if (!(loop.staticHead > 0.005)) return null;
  const below = staticHead + 14 < plot.y0 - 2;
  return (
    <g>
      <path d={`M${plot.x0},${staticHead}H${plot.x0 + 26}`} className="tw-static" />
      <text x={plot.x0 + 5} y={below ? staticHead + 13 : staticHead - 5} className="tw-curveNote">
        {say("curves.static", { head: format(loop.staticHead, "head") })}
      </text>
    </g>
  );
}

/** Where pump and system agree: a ringed point, the honest interval of its flow, and its numbers. */
function OperatingPoint({
  scene,
  loop,
  pump,
  format,
  quiet,
}: {
  scene: CurveScene;
  loop: LoopState;
  pump: PumpState | undefined;
  format: Format;
  quiet: boolean;
}) {
  const { plot } = scene;
  const { point, range } = scene.place(loop);
  const { say } = useWords();
  const lines = pointLines(loop, pump, format, say);
  if (!point)
    return (
      <text x={(plot.x0 + plot.x1) / 2} y={plot.y0 - 10} textAnchor="middle" className="tw-pointFigure">
        {lines[0]}
      </text>
    );
  const { label } = point;
  return (
    <g>
      <path d={`M${point.x},${point.y}V${plot.y0}M${plot.x0},${point.y}H${point.x}`} className="tw-drop" />
      <path
        d={`M${range[0]},${point.y}H${range[1]}M${range[0]},${point.y - 5}V${point.y + 5}M${range[1]},${point.y - 5}V${point.y + 5}`}
        className="tw-range"
      />
      <circle cx={point.x} cy={point.y} r={6} className="tw-pointRing" />
      <circle cx={point.x} cy={point.y} r={2.4} className="tw-pointDot" />
      {quiet
        ? null
        : lines.map((text, i) => (
            <text
              key={text}
              x={label.x}
              y={label.y + 14 * i}
              textAnchor={label.anchor}
              className={i === 0 ? "tw-pointFigure" : "tw-curveNote"}
            >
              {text}
            </text>
          ))}
    </g>
  );
}

/** The operating point in words: flow and head, its interval, its place on the pump's curve. */
function pointLines(loop: LoopState, pump: PumpState | undefined, format: Format, say: Words["say"]): string[] {
  if (!(loop.flow > 0)) return [say("curves.noFlow", { head: format(loop.staticHead, "head") })];
  return [
    say("curves.point", { flow: format(loop.flow, "flow"), head: format(loop.totalHead, "head") }),
    say("curves.range", { low: format(loop.flowRange[0], "flow"), high: format(loop.flowRange[1], "flow") }),
    ...(pump ? [say("curves.along", { share: `${Math.round(pump.placeOnCurve * 100)} %` })] : []),
  ];
}

/** Flow, the pumps' head and the head that the system asks for there. */
function readLines(scene: CurveScene, flow: number, format: Format, say: Words["say"]): string[] {
  const now = scene.curves.find(({ kind }) => kind === "pumpNow");
  const system = scene.curves.find(({ kind }) => kind === "system");
  const within = (curve: typeof now) => curve !== undefined && flow <= (curve.curve.flow.at(-1) ?? 0);
  return [
    format(flow, "flow"),
    ...(now
      ? [
          within(now)
            ? say("curves.pumpGives", { head: format(headAt(now.curve, flow), "head") })
            : say("curves.beyond"),
        ]
      : []),
    ...(system && within(system)
      ? [say("curves.systemAsks", { head: format(headAt(system.curve, flow), "head") })]
      : []),
  ];
}

function Readout({ scene, flow, format }: { scene: CurveScene; flow: number; format: Format }) {
  const { plot } = scene;
  const { say } = useWords();
  const lines = readLines(scene, flow, format, say);
  const x = scene.x(flow);
  const wide = Math.max(...lines.map((text) => textWidth(text, 12))) + 14;
  const left = x + 10 + wide > plot.x1 ? Math.max(2, x - 10 - wide) : x + 10;
  const read = scene.curves.filter(
    ({ kind, curve }) => (kind === "pumpNow" || kind === "system") && flow <= (curve.flow.at(-1) ?? 0),
  );
  return (
    <g>
      <path d={`M${x},${plot.y1}V${plot.y0}`} className="tw-reader" />
      {read.map(({ kind, curve }) => {
        const y = scene.y(headAt(curve, flow));
        return y >= plot.y1 ? <circle key={kind} cx={x} cy={y} r={3.4} className="tw-readerDot" /> : null;
      })}
      <rect x={left} y={plot.y1 + 2} width={wide} height={lines.length * 15 + 7} rx={2} className="tw-readerBox" />
      {lines.map((text, i) => (
        <text
          key={text}
          x={left + 7}
          y={plot.y1 + 16 + i * 15}
          className={i === 0 ? "tw-pointFigure" : "tw-readerText"}
        >
          {text}
        </text>
      ))}
    </g>
  );
}
