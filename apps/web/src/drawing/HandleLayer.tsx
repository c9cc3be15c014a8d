import {
  aimGrip,
  arcGeometry,
  bodyRadius,
  type Handle,
  type LineHandle,
  shareAngle,
  type View,
} from "@tidewright/editor";

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
        const key = `${handle.part}:${handle.axis}`;
        if (handle.axis === "arc") return <SpeedArc key={key} handle={handle} view={view} held={held} />;
        if (handle.axis === "aim") return <AimGrip key={key} handle={handle} view={view} held={held} />;
        if (handle.axis === "place") return <PlaceGrip key={key} handle={handle} view={view} held={held} />;
        return (
          <g key={key} transform={`translate(${at.x} ${at.y}) rotate(${handle.axis === "x" ? 90 : 0})`}>
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

interface GripProps<Kind extends Handle> {
  readonly handle: Kind;
  readonly view: View;
  readonly held: boolean;
}

/** The pump itself is what is moved; in hand four arrows say which ways. */
function PlaceGrip({ handle, view, held }: GripProps<Extract<Handle, { axis: "place" }>>) {
  const at = view.toScreen(handle.at);
  return (
    <g transform={`translate(${at.x} ${at.y})`} data-move={handle.part}>
      <circle r={bodyRadius(view.scale)} className="tw-hit tw-drag-place" />
      {held ? (
        <path
          d="M0,-8L3,-4.4H-3ZM0,8L3,4.4H-3ZM-8,0L-4.4,3V-3ZM8,0L4.4,3V-3Z"
          className="tw-grip tw-gripHeld"
          data-grip-place={handle.part}
        />
      ) : null}
    </g>
  );
}

/** Where the pump points as seen from the front, with a grip at the tip. */
function AimGrip({ handle, view, held }: GripProps<Extract<Handle, { axis: "aim" }>>) {
  const at = view.toScreen(handle.at);
  const tip = aimGrip(handle, view);
  const long = Math.hypot(tip.x - at.x, tip.y - at.y);
  const from = (arcGeometry(view.scale).radius + 4) / long;
  const line = `M${at.x + (tip.x - at.x) * from},${at.y + (tip.y - at.y) * from}L${tip.x},${tip.y}`;
  return (
    <g>
      <path d={line} className="tw-hidden" />
      <g transform={`translate(${tip.x} ${tip.y})`}>
        <circle r={22} className="tw-hit tw-drag-arc" />
        <path
          d="M0,-5.5L5.5,0L0,5.5L-5.5,0Z"
          data-grip-aim={handle.part}
          className={held ? "tw-grip tw-gripHeld" : "tw-grip"}
        />
      </g>
    </g>
  );
}

function SpeedArc({ handle, view, held }: GripProps<LineHandle>) {
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
