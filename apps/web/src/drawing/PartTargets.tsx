import { type Format, type Scene, type ScenePart, spokenText, type View } from "@tidewright/editor";
import { memo } from "react";

interface TargetProps {
  readonly view: View;
  readonly format: Format;
  readonly onSelect: (path: string | undefined) => void;
}

interface TargetsProps extends TargetProps {
  readonly scene: Scene;
  readonly selection: string | undefined;
}

/** Every part as a stop for the keyboard, in the order of flow; what its keys do is for the chart of states to say. */
export const PartTargets = memo(function PartTargets({ scene, selection, ...rest }: TargetsProps) {
  return (
    <g>
      {scene.parts.map((part) => (
        <Target key={part.path} part={part} held={part.path === selection} {...rest} />
      ))}
    </g>
  );
});

interface OneProps extends TargetProps {
  readonly part: ScenePart;
  readonly held: boolean;
}

const Target = memo(function Target({ part, view, format, held, onSelect }: OneProps) {
  const at = view.toScreen(part.anchor);
  const { handle } = part;
  const slider = handle
    ? {
        role: "slider",
        "aria-valuenow": handle.targets[0].value,
        "aria-valuetext": handle.targets[0].unit
          ? `${handle.label} ${handle.targets[0].value} ${handle.targets[0].unit}`
          : `${handle.label} ${Math.round(handle.targets[0].value * 100)} %`,
        "aria-orientation": handle.axis === "x" ? ("horizontal" as const) : ("vertical" as const),
      }
    : { role: "button", "aria-pressed": held };
  return (
    <g
      tabIndex={0}
      aria-label={spokenText(part, format)}
      data-path={part.path}
      className={held ? "tw-target tw-targetHeld" : "tw-target"}
      onFocus={(event) => {
        if (event.currentTarget.matches(":focus-visible")) onSelect(part.path);
      }}
      {...slider}
    >
      <circle cx={at.x} cy={at.y} r={11} className="tw-focusRing" />
    </g>
  );
});
