import { flagRadius, labelType, type PlacedFlag, type PlacedLabel } from "@tidewright/editor";
import { memo } from "react";

interface LabelsProps {
  readonly labels: readonly PlacedLabel[];
  /** For a picture without a chart of states; there a press on a label says itself which part it is about. */
  readonly onSelect?: (path: string) => void;
}

/** Numbers on the parts they belong to, with leaders. */
export const LabelLayer = memo(function LabelLayer({ labels, onSelect }: LabelsProps) {
  return (
    <g aria-hidden="true">
      {labels.map(({ path, leader, anchor, lines }) =>
        leader ? (
          <g key={path}>
            <path d={`M${anchor.x},${anchor.y}L${leader.x},${leader.y}`} className="tw-leader" />
            {lines[0] === "" ? null : <circle cx={anchor.x} cy={anchor.y} r={1.7} className="tw-ink" />}
          </g>
        ) : null,
      )}
      {labels.map(({ path, rect, lines, emphasis, align }) => (
        <g
          key={path}
          className={emphasis ? "tw-label tw-labelHeld" : "tw-label"}
          data-over={path}
          onClick={onSelect && (() => onSelect(path))}
        >
          <rect {...rect} rx={2} className="tw-labelGround" />
          {numbered(lines).map(({ line, i, id }) => (
            <text
              key={id}
              x={align === "end" ? rect.x + rect.width - labelType.pad : rect.x + labelType.pad}
              textAnchor={align}
              y={rect.y + labelType.pad + labelType.line * (i - (lines[0] === "" ? 1 : 0)) + 9}
              className={i === 0 ? "tw-labelName" : "tw-labelFigure"}
            >
              {line}
            </text>
          ))}
        </g>
      ))}
    </g>
  );
});

/** Lines keep their place, not their words, from one picture to the next. */
const numbered = (lines: readonly string[]) => lines.map((line, i) => ({ line, i, id: `line ${i}` }));

/** Numbered findings at their parts: a triangle for danger, a diamond for a warning, a ring for a notice. */
export const FlagLayer = memo(function FlagLayer({ flags }: { readonly flags: readonly PlacedFlag[] }) {
  return (
    <g aria-hidden="true">
      {flags.map(({ flag, at, more }) => (
        <g
          key={flag.number}
          transform={`translate(${at.x} ${at.y})`}
          className={`tw-flag tw-flag-${flag.severity}`}
          data-over={flag.path}
        >
          <circle r={22} className="tw-hit" />
          <path d={flagPath[flag.severity]} className="tw-flagShape" />
          <text y={flag.severity === "danger" ? 5 : 3.4} className="tw-flagNumber">
            {flag.number}
          </text>
          {more > 0 ? (
            <text x={flagRadius + 3} y={3.5} className="tw-flagMore">
              +{more}
            </text>
          ) : null}
        </g>
      ))}
    </g>
  );
});

const flagPath = {
  danger: "M0,-9.5L10,7.5H-10Z",
  warning: "M0,-9.5L9.5,0L0,9.5L-9.5,0Z",
  notice: "M-8,0a8,8 0 1,0 16,0a8,8 0 1,0 -16,0Z",
} as const;
