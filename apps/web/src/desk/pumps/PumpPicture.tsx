import type { SpeedCurve } from "@tidewright/catalogue";
import { unitLabel } from "@tidewright/units";
import { useEffect, useMemo, useRef, useState } from "react";
import { useFormat } from "../../format/useFormat.ts";
import { useWords } from "../../words/useWords.ts";
import { layoutPump, type PumpPlot } from "./pumpPlot.ts";

interface Props {
  /** As built from the sheet: NaN where a cell is no number. */
  readonly curves: readonly SpeedCurve[];
  readonly units: { readonly flow: string; readonly head: string };
}

/** A pump's curves on ruled paper, drawn by the engine's own model while the points are typed. */
export function PumpPicture({ curves, units }: Props) {
  const words = useWords();
  const { say } = words;
  const format = useFormat();
  const frame = useRef<HTMLElement>(null);
  const [width, setWidth] = useState(420);
  useEffect(() => {
    const element = frame.current;
    if (element === null) return;
    const observer = new ResizeObserver(([entry]) =>
      setWidth(Math.max(240, Math.floor(entry?.contentRect.width ?? 420))),
    );
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const watts = curves.some(({ power }) => power !== undefined);
  const height = Math.min(watts ? 460 : 340, Math.round(width * (watts ? 1 : 0.72)));
  const plot = useMemo(() => layoutPump(curves, units, width, height, words), [curves, units, width, height, words]);
  const points = curves[0]?.points ?? [];
  const [first, last] = [points[0]?.head ?? Number.NaN, points.at(-1)?.flow ?? Number.NaN];
  const label =
    plot !== undefined && plot.speeds[0]?.head !== "" && Number.isFinite(first + last)
      ? say("pumps.curve.picture", { head: format(first, "head"), flow: format(last, "flow") })
      : say("pumps.curve.noPicture");
  return (
    <figure className="pump-picture" ref={frame}>
      <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
        {plot === undefined ? null : <Plot plot={plot} units={units} height={height} />}
      </svg>
      <figcaption className="quiet">{label}</figcaption>
    </figure>
  );
}

interface PlotProps {
  readonly plot: PumpPlot;
  readonly units: Props["units"];
  readonly height: number;
}

function Plot({ plot: { heads, powers, flowTicks, speeds }, units, height }: PlotProps) {
  const { say } = useWords();
  const frames = powers === undefined ? [heads] : [heads, powers];
  const foot = (powers ?? heads).y0;
  return (
    <>
      {flowTicks.map(({ at, text }) => (
        <g key={text}>
          <path className="plot-grid" d={frames.map(({ y0, y1 }) => `M${at},${y1}V${y0}`).join("")} />
          <text className="plot-tick" x={at} y={foot + 15} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      {frames.map(({ x0, x1, y0, y1, ticks }) => (
        <g key={y0}>
          {ticks.map(({ at, text }) => (
            <g key={text}>
              <path className="plot-grid" d={`M${x0},${at}H${x1}`} />
              <text className="plot-tick" x={x0 - 6} y={at + 3.5} textAnchor="end">
                {text}
              </text>
            </g>
          ))}
          <path className="plot-axis" d={`M${x0},${y1}V${y0}H${x1}`} />
        </g>
      ))}
      <text className="plot-name" x={4} y={11}>
        {say("curves.headAxis", { unit: unitLabel(units.head, "head") })}
      </text>
      {powers === undefined ? null : (
        <text className="plot-name" x={4} y={powers.y1 - 8}>
          {say("pumps.curve.wattsAxis")}
        </text>
      )}
      <text className="plot-name" x={heads.x1} y={height - 4} textAnchor="end">
        {say("curves.flowAxis", { unit: unitLabel(units.flow, "flow") })}
      </text>
      {speeds.map(({ key, label, head, power, points, powerPoints, labelAt }) => (
        <g key={key} className={key === 0 ? "plot-full" : "plot-slower"}>
          <path className="plot-curve" d={head} />
          <path className="plot-power" d={power} />
          {points.map(([x, y]) => (
            <circle key={`${x} ${y}`} className="plot-point" cx={x} cy={y} r={2.6} />
          ))}
          {powerPoints.map(([x, y]) => (
            <circle key={`${x} ${y}`} className="plot-power-point" cx={x} cy={y} r={2.2} />
          ))}
          {labelAt === undefined || speeds.length < 2 ? null : (
            <text className="plot-label" x={labelAt[0]} y={labelAt[1]}>
              {label}
            </text>
          )}
        </g>
      ))}
    </>
  );
}
