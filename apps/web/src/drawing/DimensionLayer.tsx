import type { DimensionLine, Format, Point, Scene } from "./scene.ts";
import type { View } from "./view.ts";

const stepWidth = 22;

/** Dimension lines in drafting style: extension lines, slim arrows, the number over the line. */
export function DimensionLayer({ scene, view, format }: { readonly scene: Scene; readonly view: View; readonly format: Format }) {
  return (
    <g aria-hidden="true">
      {scene.dimensions.map((line) => (
        <Dimension key={`${line.path}${line.side}`} line={line} scene={scene} view={view} format={format} />
      ))}
    </g>
  );
}

function Dimension({ line, scene, view, format }: { line: DimensionLine; scene: Scene; view: View; format: Format }) {
  const a = view.toScreen(line.a);
  const b = view.toScreen(line.b);
  const upright = line.side === "left" || line.side === "right";
  const out = line.step * stepWidth;
  const reach: Point = upright
    ? { x: (line.side === "left" ? Math.min(a.x, b.x) - out : Math.max(a.x, b.x) + out), y: 0 }
    : { x: 0, y: line.side === "above" ? view.toScreen({ x: 0, y: scene.bounds.y1 }).y - out + 8 : view.toScreen({ x: 0, y: 0 }).y + out - 2 };
  const p = upright ? { x: reach.x, y: a.y } : { x: a.x, y: reach.y };
  const q = upright ? { x: reach.x, y: b.y } : { x: b.x, y: reach.y };
  const long = Math.hypot(q.x - p.x, q.y - p.y);
  if (long < 12) return null;
  const middle = { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
  const beyond = upright ? { x: line.side === "left" ? -3 : 3, y: 0 } : { x: 0, y: line.side === "above" ? -3 : 3 };
  const gap = upright ? { x: Math.sign(p.x - a.x) * 4, y: 0 } : { x: 0, y: Math.sign(p.y - a.y) * 4 };
  const text = format(line.value, "length");
  const room = long > text.length * 6.4 + 6;
  return (
    <g>
      <path
        d={`M${a.x + gap.x},${a.y + gap.y}L${p.x + beyond.x},${p.y + beyond.y}M${b.x + gap.x},${b.y + gap.y}L${q.x + beyond.x},${q.y + beyond.y}M${p.x},${p.y}L${q.x},${q.y}`}
        className="tw-dimension"
      />
      {long > 26 ? <path d={arrow(p, q) + arrow(q, p)} className="tw-ink" /> : null}
      {room ? (
        <text
          transform={`translate(${middle.x} ${middle.y}) rotate(${upright ? -90 : 0})`}
          y={-3.5}
          className="tw-dimensionText"
        >
          {text}
        </text>
      ) : null}
    </g>
  );
}

/** A slim closed arrow head at `tip`, three times as long as wide (ISO 129-1). */
function arrow(tip: Point, from: Point): string {
  const long = Math.hypot(tip.x - from.x, tip.y - from.y) || 1;
  const [ux, uy] = [(from.x - tip.x) / long, (from.y - tip.y) / long];
  const [x, y] = [tip.x + ux * 8, tip.y + uy * 8];
  return `M${tip.x},${tip.y}L${x - uy * 1.5},${y + ux * 1.5}L${x + uy * 1.5},${y - ux * 1.5}Z`;
}
