import type { Design } from "@tidewright/design";
import {
  choiceLooks,
  type InsertingPart,
  layoutFrame,
  type Point,
  previewRun,
  type RoutingRun,
  runPartAt,
  type Scene,
  type SheetState,
  symbolStrokes,
  type View,
} from "@tidewright/editor";
import type { ReactNode } from "react";

interface Props {
  readonly state: SheetState;
  readonly design: Design;
  readonly scene: Scene;
  readonly view: View;
}

/** What is not there yet: the part in the hand where it would land, the line on its way. */
export function GhostLayer({ state, design, scene, view }: Props): ReactNode {
  if (state.kind === "InsertingPart") return <PartGhost state={state} view={view} />;
  if (state.kind === "RoutingRun") return <LineGhost state={state} design={design} scene={scene} view={view} />;
  return null;
}

function PartGhost({ state, view }: { readonly state: InsertingPart; readonly view: View }) {
  const { spot, choice } = state;
  if (spot === undefined) return null;
  const { symbol } = choiceLooks[choice];
  const at = view.toScreen(spot.at);
  const wide = Math.max(16, (1.5 * spot.bore + 0.015) * view.scale);
  const across = Math.max(7, (spot.bore * view.scale) / 2 + 5);
  const [c, s] = [Math.cos(spot.angle), -Math.sin(spot.angle)];
  return (
    <g className="tw-ghost" data-ghost={spot.path} aria-hidden="true">
      <circle cx={at.x} cy={at.y} r={Math.max(22, wide * 0.9)} className="tw-ghostRing" />
      {/* Where the pipe will be cut. */}
      <path
        d={`M${at.x - s * across},${at.y + c * across}L${at.x + s * across},${at.y - c * across}`}
        className="tw-ghostCut"
      />
      {symbol === "box" || symbol === "pipe" ? (
        <rect x={at.x - 22} y={at.y - 9} width={44} height={18} className="tw-ghostBox" />
      ) : symbol === "tee" || symbol === "elbow" ? (
        <circle cx={at.x} cy={at.y} r={4.5} className="tw-ghostDot" />
      ) : (
        <g transform={`translate(${at.x} ${at.y}) rotate(${(-spot.angle * 180) / Math.PI}) scale(${wide} ${-wide})`}>
          {symbolStrokes(symbol, 1).map((stroke) => (
            <path key={stroke.d} d={stroke.d} className={`tw-symbol tw-fill-${stroke.fill} tw-line-${stroke.weight}`} />
          ))}
        </g>
      )}
    </g>
  );
}

/** Parts that a line can begin at, besides the water itself. */
const beginnings = /^\/(overflow\/box|sump\/chambers\/\d+|loops\/\d+\/pumps\/\d+|display)$/;

const isEnd = (design: Design, path: string): boolean => {
  const kind = runPartAt(design, path)?.part.kind;
  return kind === "tee" || kind === "outlet";
};

function LineGhost({ state, design, scene, view }: { readonly state: RoutingRun } & Omit<Props, "state">) {
  const { from, to, at } = state;
  if (from === undefined)
    return (
      <g className="tw-ghost" aria-hidden="true">
        {scene.parts
          .filter(({ path }) => beginnings.test(path) || isEnd(design, path))
          .map(({ path, anchor }) => {
            const point = view.toScreen(anchor);
            return <circle key={path} cx={point.x} cy={point.y} r={6.5} className="tw-port" />;
          })}
      </g>
    );
  const target = to ?? at;
  const points = target === undefined ? [] : previewRun(design, from, target).map(view.toScreen);
  const first = points[0] ?? (from.at && view.toScreen(from.at));
  return (
    <g className="tw-ghost" data-route={to?.kind === "place" ? to.place : ""} aria-hidden="true">
      {to?.kind === "place" ? <Target place={to.place} design={design} view={view} /> : null}
      {points.length > 1 ? (
        <path
          d={`M${points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join("L")}`}
          className="tw-ghostLine"
        />
      ) : null}
      {first ? <circle cx={first.x} cy={first.y} r={6.5} className="tw-port tw-portTaken" /> : null}
      {points.length > 1 ? <circle cx={points.at(-1)!.x} cy={points.at(-1)!.y} r={5} className="tw-ghostDot" /> : null}
    </g>
  );
}

/** The body of water that the line would end in. */
function Target({ place, design, view }: { readonly place: string; readonly design: Design; readonly view: View }) {
  const frame = layoutFrame(design, undefined);
  const body =
    place === "display"
      ? frame.display
      : place === "overflowBox"
        ? frame.box
        : { ...frame.sump, ...pick(frame.chambers.find(({ id }) => `sump.${id}` === place)) };
  const a: Point = view.toScreen({ x: body.x0, y: body.y1 });
  const b: Point = view.toScreen({ x: body.x1, y: body.y0 });
  return <rect x={a.x} y={a.y} width={b.x - a.x} height={b.y - a.y} className="tw-ghostTarget" />;
}

const pick = (span: { readonly x0: number; readonly x1: number } | undefined) =>
  span === undefined ? {} : { x0: span.x0, x1: span.x1 };
