import type { PlacedDimension, Point } from "@tidewright/editor";

/** Dimension lines in drafting style: extension lines, slim arrows, the number over the line. */
export function DimensionLayer({ placed }: { readonly placed: readonly PlacedDimension[] }) {
  return (
    <g aria-hidden="true">
      {placed.map((dimension) => (
        <Dimension key={`${dimension.line.path}${dimension.line.side}`} {...dimension} />
      ))}
    </g>
  );
}

function Dimension({ a, b, p, q, upright, text }: PlacedDimension) {
  const long = Math.hypot(q.x - p.x, q.y - p.y);
  // Extension lines begin clear of the outline and end just past the dimension line.
  const way = upright ? { x: Math.sign(p.x - a.x), y: 0 } : { x: 0, y: Math.sign(p.y - a.y) };
  const extension = (from: Point, to: Point) =>
    `M${from.x + way.x * 4},${from.y + way.y * 4}L${to.x + way.x * 3},${to.y + way.y * 3}`;
  return (
    <g>
      <path d={`${extension(a, p)}${extension(b, q)}M${p.x},${p.y}L${q.x},${q.y}`} className="tw-dimension" />
      {long > 26 ? <path d={arrow(p, q) + arrow(q, p)} className="tw-ink" /> : null}
      {text ? (
        <text
          transform={`translate(${(p.x + q.x) / 2} ${(p.y + q.y) / 2}) rotate(${upright ? -90 : 0})`}
          y={-3.5}
          className="tw-dimensionText"
        >
          {text}
        </text>
      ) : null}
    </g>
  );
}

/** A slim closed arrow head at `tip`, longer than wide as in ISO 129-1. */
function arrow(tip: Point, from: Point): string {
  const long = Math.hypot(tip.x - from.x, tip.y - from.y) || 1;
  const [ux, uy] = [(from.x - tip.x) / long, (from.y - tip.y) / long];
  const [x, y] = [tip.x + ux * 8, tip.y + uy * 8];
  return `M${tip.x},${tip.y}L${x - uy * 1.5},${y + ux * 1.5}L${x + uy * 1.5},${y - ux * 1.5}Z`;
}
