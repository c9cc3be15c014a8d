import { arcGeometry, type Handle, shareAngle, type View } from "@tidewright/editor";

/** What can be taken hold of: grips at levels and lengths, an arc at every pump. Drawn marks stay small, targets large. */
export function HandleLayer({
  handles,
  view,
  active,
  selection,
}: {
  readonly handles: readonly Handle[];
  readonly view: View;
  readonly active: string | undefined;
  readonly selection: string | undefined;
}) {
  return (
    <g aria-hidden="true">
      {handles.map((handle) => {
        const at = view.toScreen(handle.at);
        const held = handle.part === active || handle.part === selection;
        if (handle.axis === "arc") return <SpeedArc key={handle.part} handle={handle} view={view} held={held} />;
        return (
          <g key={handle.part} transform={`translate(${at.x} ${at.y}) rotate(${handle.axis === "x" ? 90 : 0})`}>
            <circle r={22} className={`tw-hit tw-drag-${handle.axis}`} />
            <path
              d="M0,-6.5L4.6,-1.6H-4.6ZM0,6.5L4.6,1.6H-4.6Z"
              data-grip={handle.part}
              className={held ? "tw-grip tw-gripHeld" : "tw-grip"}
            />
          </g>
        );
      })}
    </g>
  );
}

function SpeedArc({ handle, view, held }: { handle: Handle; view: View; held: boolean }) {
  const at = view.toScreen(handle.at);
  const { radius } = arcGeometry(view.scale);
  const share = handle.targets[0].value;
  const point = (one: number, r: number) => {
    const angle = shareAngle(one);
    return `${(Math.cos(angle) * r).toFixed(1)},${(-Math.sin(angle) * r).toFixed(1)}`;
  };
  const big = (from: number, to: number) => ((to - from) * 1.5 * Math.PI > Math.PI ? 1 : 0);
  const arc = (from: number, to: number) =>
    `M${point(from, radius)}A${radius},${radius} 0 ${big(from, to)},1 ${point(to, radius)}`;
  const knob = shareAngle(share);
  return (
    <g transform={`translate(${at.x} ${at.y})`}>
      <circle r={radius + 12} className="tw-hit tw-drag-arc" />
      <path d={arc(0, 1)} className="tw-arcTrack" />
      {share > 0.01 ? <path d={arc(0, Math.min(1, share))} className="tw-arcValue" /> : null}
      <circle
        cx={Math.cos(knob) * radius}
        cy={-Math.sin(knob) * radius}
        r={held ? 5 : 3.6}
        data-grip={handle.part}
        className={held ? "tw-grip tw-gripHeld" : "tw-grip"}
      />
    </g>
  );
}
