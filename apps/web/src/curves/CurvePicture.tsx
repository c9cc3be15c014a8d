import type { LoopState, PumpState } from "@tidewright/advice";
import { type KeyboardEvent, type PointerEvent, useEffect, useId, useMemo, useRef, useState } from "react";
import "./curves.css";
import { type Format, layoutCurves } from "./layoutCurves.ts";

interface CurvePictureProps {
  readonly loop: LoopState;
  readonly pumps: readonly PumpState[];
  readonly wish?: { readonly low: number; readonly aim: number; readonly high: number } | undefined;
  readonly format: Format;
  readonly height?: number;
}

/** Pump curve and system curve of one loop with the operating point, the wished band and the flow's interval. Drag across it, or
 *  use the arrow keys, to read values along the curves. */
export function CurvePicture({ loop, pumps, wish, format, height = 260 }: CurvePictureProps) {
  const frame = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(420);
  const [reading, setReading] = useState<number>();
  const hatch = useId();
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const observer = new ResizeObserver(([entry]) =>
      setWidth(Math.max(240, Math.round(entry?.contentRect.width ?? 420))),
    );
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  // Pumps in parallel share the flow, pumps in series all carry it.
  const parallel = pumps.length > 1 && pumps.every((pump) => pump.flow < 0.99 * loop.flow);
  const layout = useMemo(
    () => layoutCurves({ loop, pumps, wish, parallel }, format, width, height),
    [loop, pumps, wish, parallel, format, width, height],
  );
  const { plot, band, point, range, staticHead } = layout;
  const read = reading === undefined ? undefined : layout.readAt(reading);
  const move = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    setReading(clamp(((event.clientX - box.left) * width) / box.width, plot.left, plot.right));
  };
  const key = (event: KeyboardEvent<SVGSVGElement>) => {
    const step = { ArrowLeft: -8, ArrowRight: 8 }[event.key];
    if (event.key === "Escape") setReading(undefined);
    if (step === undefined) return;
    event.preventDefault();
    setReading((at) => clamp((at ?? point?.x ?? plot.left) + step, plot.left, plot.right));
  };
  const summary = point
    ? `${loop.name}: operating point ${point.label}`
    : `${loop.name}: no flow; the system asks for ${format(loop.staticHead, "head")} before anything moves`;
  return (
    <div className="curve-picture" ref={frame}>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={summary}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys read values along the curves
        tabIndex={0}
        onPointerMove={move}
        onPointerDown={move}
        onPointerLeave={() => setReading(undefined)}
        onKeyDown={key}
      >
        <defs>
          <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <line className="curve-hatch" y2="6" />
          </pattern>
        </defs>
        {band && band.to > band.from && (
          <g>
            <rect
              x={band.from}
              y={plot.top}
              width={band.to - band.from}
              height={plot.bottom - plot.top}
              fill={`url(#${hatch})`}
            />
            <line className="curve-aim" x1={band.aim} x2={band.aim} y1={plot.top} y2={plot.bottom} />
            <text className="curve-note" x={(band.from + band.to) / 2} y={plot.top - 6} textAnchor="middle">
              wished
            </text>
          </g>
        )}
        <g className="curve-axis">
          {layout.headTicks.map((tick) => (
            <g key={tick.at}>
              <line className="curve-grid" x1={plot.left} x2={plot.right} y1={tick.at} y2={tick.at} />
              <text x={plot.left - 6} y={tick.at + 4} textAnchor="end">
                {tick.label}
              </text>
            </g>
          ))}
          {layout.flowTicks.map((tick, i) => (
            <g key={tick.at}>
              <line className="curve-tick" x1={tick.at} x2={tick.at} y1={plot.bottom} y2={plot.bottom + 5} />
              <text
                x={tick.at}
                y={plot.bottom + 19}
                textAnchor={i === 0 ? "start" : tick.at > plot.right - 24 ? "end" : "middle"}
              >
                {tick.label}
              </text>
            </g>
          ))}
          <line className="curve-base" x1={plot.left} x2={plot.right} y1={plot.bottom} y2={plot.bottom} />
          <line className="curve-base" x1={plot.left} x2={plot.left} y1={plot.top} y2={plot.bottom} />
        </g>
        {staticHead && (
          <g>
            <line className="curve-static" x1={plot.left} x2={plot.left + 22} y1={staticHead.y} y2={staticHead.y} />
            <text className="curve-note" x={plot.left + 26} y={staticHead.y + 15}>
              {staticHead.label}
            </text>
          </g>
        )}
        {layout.lines.map((curve) => (
          <g key={curve.id} className={`curve-line curve-${curve.kind}`}>
            <path d={curve.path} />
            <text
              x={curve.labelAt[0] + (curve.anchor === "end" ? -6 : 6)}
              y={curve.labelAt[1] + (curve.kind === "system" ? 17 : -7)}
              textAnchor={curve.anchor}
            >
              {curve.label}
            </text>
          </g>
        ))}
        {range && (
          <line
            className="curve-range"
            x1={range.from}
            x2={Math.max(range.to, range.from + 1)}
            y1={range.y}
            y2={range.y}
          />
        )}
        {point && (
          <g className="curve-point">
            <circle cx={point.x} cy={point.y} r="5.5" />
            <text
              x={point.x + (point.x > width * 0.6 ? -10 : 10)}
              y={point.y - 12}
              textAnchor={point.x > width * 0.6 ? "end" : "start"}
            >
              {point.label}
            </text>
          </g>
        )}
        {reading !== undefined && (
          <line className="curve-reader" x1={reading} x2={reading} y1={plot.top} y2={plot.bottom} />
        )}
      </svg>
      <p className="curve-reading" aria-live="polite">
        {read
          ? `${format(read.flow, "flow")}: pump ${read.pump === undefined ? "—" : format(read.pump, "head")}, system ${read.system === undefined ? "—" : format(read.system, "head")}`
          : `Total head ${format(loop.totalHead, "head")}; flow lies within ${format(loop.flowRange[0], "flow")} to ${format(loop.flowRange[1], "flow")}.`}
      </p>
    </div>
  );
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
