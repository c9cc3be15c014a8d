import {
  type BoxShape,
  fitWords,
  letteringRoom,
  type PipeShape,
  type Point,
  type Scene,
  type Shape,
  type SymbolShape,
  symbolStrokes,
  type View,
} from "@tidewright/editor";
import { memo } from "react";

interface LayerProps {
  readonly scene: Scene;
  readonly view: View;
  readonly selection: string | undefined;
  /** Makes ids of patterns and gradients unique on the page. */
  readonly id: string;
}

/** Everything that is drawn to scale: bodies, then pipes by line, then symbols and devices. */
export const ShapeLayer = memo(function ShapeLayer({ scene, view, selection, id }: LayerProps) {
  const held = (path: string) => isHeld(path, selection);
  const bodies = scene.shapes.filter((shape) => shape.kind === "area" || shape.kind === "line");
  const marks = scene.shapes.filter((shape) => shape.kind === "symbol" || shape.kind === "box");
  return (
    <g aria-hidden="true">
      {bodies.map((shape, i) => (
        <Body key={key(shape, i)} shape={shape} view={view} held={held(shape.path)} id={id} />
      ))}
      {pipeLines(scene.shapes).map(([line, pipes]) => (
        <PipeLine
          key={line}
          pipes={pipes}
          view={view}
          selection={pipes.some(({ path }) => held(path)) ? selection : undefined}
        />
      ))}
      {marks.map((shape, i) => (
        <Mark key={key(shape, i)} shape={shape} view={view} held={held(shape.path)} />
      ))}
    </g>
  );
});

const isHeld = (path: string, selection: string | undefined): boolean =>
  selection !== undefined && (path === selection || path.startsWith(`${selection}/`));

const key = (shape: Shape, i: number): string => `${shape.path}:${i}`;

/** Pipes of one drain or one loop run into each other; another line passes in front. */
function pipeLines(shapes: readonly Shape[]): [string, PipeShape[]][] {
  const lines = new Map<string, PipeShape[]>();
  for (const shape of shapes) {
    if (shape.kind !== "pipe") continue;
    const line = shape.path.split("/").slice(0, 3).join("/");
    lines.set(line, [...(lines.get(line) ?? []), shape]);
  }
  return [...lines];
}

const Body = memo(function Body({ shape, view, held, id }: { shape: Shape; view: View; held: boolean; id: string }) {
  if (shape.kind !== "area" && shape.kind !== "line") return null;
  const d = pathOf(shape.points, view, shape.kind === "area");
  const hatch = shape.ink === "ground" || shape.ink === "glass" ? `url(#${id}-${shape.ink})` : undefined;
  const tint = shape.ink === "water" || shape.ink === "deepWater" ? `url(#${id}-${shape.ink})` : undefined;
  return (
    <>
      {hatch ? <path d={d} className="tw-paper" /> : null}
      <path
        d={d}
        className={`tw-${shape.ink}${held ? " tw-held" : ""}`}
        {...(hatch || tint ? { fill: hatch ?? tint } : {})}
      />
      {shape.ink === "ground" ? <path d={groundLine(shape.points, view)} className="tw-outline" /> : null}
    </>
  );
});

/** Only the upper edge of the ground is a line; the hatch fades out below it. */
function groundLine(points: readonly Point[], view: View): string {
  const top = Math.max(...points.map((p) => p.y));
  return pathOf(
    points.filter((p) => p.y === top),
    view,
    false,
  );
}

interface PipeLineProps {
  readonly pipes: readonly PipeShape[];
  readonly view: View;
  /** The part in hand where it is one of this line. */
  readonly selection: string | undefined;
}

const PipeLine = memo(function PipeLine({ pipes, view, selection }: PipeLineProps) {
  const lines = pipes.map((pipe, i) => ({
    pipe,
    id: `${pipe.path}:${i}`,
    d: pathOf(pipe.points, view, false),
    wide: Math.max(2, pipe.bore * view.scale),
    held: isHeld(pipe.path, selection),
    cap: pipe.square ? ("square" as const) : undefined,
  }));
  return (
    <g className="tw-pipes">
      {lines.map(({ d, wide, held, cap, id }) => (
        <path
          key={id}
          d={d}
          strokeLinecap={cap}
          className={held ? "tw-pipeHeld" : "tw-pipeWall"}
          strokeWidth={wide + (held ? 4.4 : 2.2)}
        />
      ))}
      {lines.map(({ d, wide, cap, id }) => (
        <path key={id} d={d} strokeLinecap={cap} className="tw-pipeInside" strokeWidth={wide} />
      ))}
      {lines.map(({ pipe, d, wide, cap, id }) =>
        pipe.water === "dry" ? null : (
          <path key={id} d={d} strokeLinecap={cap} className="tw-pipeWater" strokeWidth={wide} />
        ),
      )}
      {lines.map(({ pipe, d, wide, id }) =>
        pipe.water === "film" ? <path key={id} d={d} className="tw-pipeInside" strokeWidth={wide * 0.5} /> : null,
      )}
    </g>
  );
}, samePipes);

/** Lines are gathered anew each time; what counts is that the very same pipes are in them. */
function samePipes(before: PipeLineProps, now: PipeLineProps): boolean {
  return (
    before.view === now.view &&
    before.selection === now.selection &&
    before.pipes.length === now.pipes.length &&
    before.pipes.every((pipe, i) => pipe === now.pipes[i])
  );
}

const Mark = memo(function Mark({ shape, view, held }: { shape: Shape; view: View; held: boolean }) {
  if (shape.kind === "box") return <Device shape={shape} view={view} held={held} />;
  if (shape.kind !== "symbol") return null;
  const at = view.toScreen(shape.at);
  if (shape.symbol === "waterLevel") return <WaterLevelMark at={at} />;
  if (shape.symbol === "elbow") return <ElbowMark shape={shape} at={at} view={view} held={held} />;
  if (shape.symbol === "tee") return <circle cx={at.x} cy={at.y} r={2.4} className="tw-ink" />;
  const size = Math.max(leastSize(shape), shape.size * view.scale);
  const turn = (-shape.angle * 180) / Math.PI;
  return (
    <>
      <g
        transform={`translate(${at.x} ${at.y}) rotate(${turn}) scale(${size} ${-size})`}
        className={held ? "tw-held" : undefined}
      >
        {symbolStrokes(shape.symbol, shape.share).map((stroke) => (
          <path key={stroke.d} d={stroke.d} className={`tw-symbol tw-fill-${stroke.fill} tw-line-${stroke.weight}`} />
        ))}
      </g>
      {shape.count && view.width >= 560 ? (
        <text x={at.x + size * 0.5 + 2} y={at.y - size * 0.4} className="tw-count">
          ×{shape.count}
        </text>
      ) : null}
    </>
  );
});

/** A device's name stands in its box, on two lines where one is too short for it. */
function Device({ shape, view, held }: { shape: BoxShape; view: View; held: boolean }) {
  const a = view.toScreen({ x: shape.extent.x0, y: shape.extent.y1 });
  const b = view.toScreen({ x: shape.extent.x1, y: shape.extent.y0 });
  const room = b.x - a.x;
  const high = b.y - a.y;
  const lines = room < letteringRoom ? [] : fitWords(shape.text, room - 8, high >= 25 ? 2 : 1);
  return (
    <>
      <rect x={a.x} y={a.y} width={room} height={high} className={`tw-device${held ? " tw-held" : ""}`} />
      {lines.map((text, i) => (
        <text
          key={text}
          x={(a.x + b.x) / 2}
          y={(a.y + b.y) / 2 + 3.5 + (i - (lines.length - 1) / 2) * 11}
          className="tw-deviceText"
        >
          {text}
        </text>
      ))}
    </>
  );
}

const leastSize = (shape: SymbolShape): number =>
  shape.symbol === "pump"
    ? 22
    : shape.symbol === "tankPump"
      ? 16
      : shape.symbol === "flowArrow"
        ? 6
        : shape.symbol === "nozzle"
          ? 7
          : 13;

/** The drafting mark for a level: a triangle standing on the surface over two short lines. */
function WaterLevelMark({ at }: { at: Point }) {
  return (
    <g transform={`translate(${at.x} ${at.y})`}>
      <path d="M0,-1L-4.5,-8.5H4.5Z" className="tw-levelMark" />
      <path d="M-5,3H5M-2.6,5.6H2.6" className="tw-surfaceTick" />
    </g>
  );
}

/** Ticks across the pipe before and after a bend, where its sockets end. */
function ElbowMark({ shape, at, view, held }: { shape: SymbolShape; at: Point; view: View; held: boolean }) {
  const wide = Math.max(3, (shape.size / 1.5) * view.scale);
  const half = wide / 2 + 2.2;
  const leg = wide * 0.5 + 3;
  const tick = (angle: number, way: number) => {
    const [c, s] = [Math.cos(angle), -Math.sin(angle)];
    const [x, y] = [at.x + c * leg * way, at.y + s * leg * way];
    return `M${x - s * half},${y + c * half}L${x + s * half},${y - c * half}`;
  };
  return (
    <>
      <path
        d={tick(shape.angle, -1) + tick(shape.out ?? shape.angle, 1)}
        className={`tw-elbow${held ? " tw-held" : ""}`}
      />
      {shape.count && view.width >= 560 ? (
        <text x={at.x + half + 4} y={at.y - half - 2} className="tw-count">
          ×{shape.count}
        </text>
      ) : null}
    </>
  );
}

function pathOf(points: readonly Point[], view: View, closed: boolean): string {
  const corners = points.map((point) => {
    const { x, y } = view.toScreen(point);
    return `${x.toFixed(1)},${y.toFixed(1)}`;
  });
  return `M${corners.join("L")}${closed ? "Z" : ""}`;
}
