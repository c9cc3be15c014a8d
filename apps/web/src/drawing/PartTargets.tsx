import { type Format, type Handle, type Scene, type ScenePart, spokenText, type View } from "@tidewright/editor";
import { type KeyboardEvent, memo } from "react";

interface TargetProps {
  readonly view: View;
  readonly format: Format;
  readonly onSelect: (path: string | undefined) => void;
  /** Steps along the handle's axis; large with Shift. */
  readonly onNudge: (handle: Handle, steps: number, large: boolean) => void;
}

interface TargetsProps extends TargetProps {
  readonly scene: Scene;
  readonly selection: string | undefined;
}

/** Every part as a stop for the keyboard, in the order of flow; arrows move what can be moved. */
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

const Target = memo(function Target({ part, view, format, held, onSelect, onNudge }: OneProps) {
  const at = view.toScreen(part.anchor);
  const { handle } = part;
  const onKeyDown = (event: KeyboardEvent) => {
    const step = arrowStep(event.key, handle);
    if (handle && step !== 0) onNudge(handle, step, event.shiftKey || event.key.startsWith("Page"));
    else if (event.key === "Enter" || event.key === " ") onSelect(part.path);
    else if (event.key === "Escape") onSelect(undefined);
    else return;
    event.preventDefault();
  };
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
      onKeyDown={onKeyDown}
      onFocus={(event) => {
        if (event.currentTarget.matches(":focus-visible")) onSelect(part.path);
      }}
      {...slider}
    >
      <circle cx={at.x} cy={at.y} r={11} className="tw-focusRing" />
    </g>
  );
});

function arrowStep(key: string, handle: Handle | undefined): number {
  if (!handle) return 0;
  if (key === "ArrowUp" || key === "ArrowRight" || key === "PageUp") return 1;
  if (key === "ArrowDown" || key === "ArrowLeft" || key === "PageDown") return -1;
  return 0;
}
