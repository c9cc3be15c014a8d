import type { Assessment } from "@tidewright/advice";
import type { Design, Edit } from "@tidewright/design";
import {
  drawZoneIn,
  type Format,
  gripOf,
  layoutPlan,
  obstaclesOf,
  type PlanEvent,
  type PlanHandle,
  type PlanPart,
  type PlanState,
  placeLabels,
  planIdle,
  planStep,
  planView,
  type Scene,
  type ScenePart,
  type View,
} from "@tidewright/editor";
import { type KeyboardEvent, type PointerEvent, type ReactNode, useEffect, useMemo, useRef, useState } from "react";
import "../drawing/elevation.css";
import "./plan.css";
import { LabelLayer } from "../drawing/LabelLayer.tsx";
import { ShapeLayer } from "../drawing/ShapeLayer.tsx";
import { useWords } from "../words/useWords.ts";

/** What the plan shows and what it tells the bench. */
export interface PlanProps {
  readonly design: Design;
  readonly assessment: Assessment | undefined;
  /** JSON Pointer of the part in hand. */
  readonly selection: string | undefined;
  readonly onSelect?: (path: string | undefined) => void;
  /** Without it the plan is only looked at. */
  readonly onEdit?: (
    edits: readonly Edit[],
    drag: { readonly dragKey: string; readonly done: boolean; readonly label: string },
  ) => void;
  readonly onDrop?: (dragKey: string) => void;
  readonly format: Format;
  readonly width: number;
  readonly height: number;
}

/** Zones that lie nowhere yet take so much of the height [px]. */
const listHeight = 104;

/** The tank from above, to scale: box, holes, outlets, zones and pumps, each to be taken hold of. */
export function Plan(props: PlanProps): ReactNode {
  const { design, assessment, selection, onSelect, onEdit, onDrop, format, width, height } = props;
  const { say } = useWords();
  const scene = useMemo(() => layoutPlan(design, assessment), [design, assessment]);
  const state = useRef<PlanState>(planIdle);
  const [dragging, setDragging] = useState(false);
  const listed = onEdit !== undefined && scene.zonesWithoutArea.length > 0;
  const room = Math.max(160, height - (listed ? listHeight : 0));
  const fitted = useMemo(() => planView(scene.bounds, width, room), [scene.bounds, width, room]);
  // The picture keeps its scale under a hand; it fits itself anew when the hand lifts.
  const view = state.current.kind === "DraggingGrip" ? state.current.view : fitted;
  const handles = useMemo(
    () => (onEdit === undefined ? [] : scene.handles.filter((handle) => isShown(handle, selection))),
    [scene.handles, selection, onEdit],
  );
  const drawn = useMemo(
    (): Scene => ({
      name: design.name,
      bounds: scene.bounds,
      shapes: scene.shapes,
      parts: scene.parts.map((part) => asScenePart(part, say)),
      flags: [],
      dimensions: [],
      summary: [],
    }),
    [scene, design.name, say],
  );
  const labels = useMemo(
    () => placeLabels({ scene: drawn, view, format, selection, obstacles: obstaclesOf(drawn, view) }),
    [drawn, view, format, selection],
  );

  const send = (event: PlanEvent) => {
    const next = planStep(state.current, event, { scene, view, handles });
    state.current = next.state;
    setDragging(next.state.kind === "DraggingGrip");
    for (const effect of next.effects) {
      if (effect.kind === "select") onSelect?.(effect.path);
      else if (effect.kind === "drop") onDrop?.(effect.dragKey);
      else onEdit?.(effect.edits, { ...effect, label: say("plan.step.move") });
    }
  };
  const pointer = (kind: "down" | "move" | "up" | "cancel") => (event: PointerEvent<SVGSVGElement>) => {
    if (kind === "move" && state.current.kind === "Idle") return;
    if (kind === "down") {
      if (event.button !== 0) return;
      const label = event.target instanceof Element ? event.target.closest("[data-over]") : null;
      if (label !== null) {
        onSelect?.(label.getAttribute("data-over") ?? undefined);
        return;
      }
    }
    const box = event.currentTarget.getBoundingClientRect();
    send({
      kind,
      pointer: event.pointerId,
      point: { x: event.clientX - box.left, y: event.clientY - box.top },
      touch: event.pointerType !== "mouse",
      at: event.timeStamp,
    });
    if (kind === "down" && state.current.kind === "PointingGrip")
      event.currentTarget.setPointerCapture(event.pointerId);
  };
  const frame = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = frame.current;
    if (element === null) return;
    // A grip inside a picture cannot tell the browser to leave its touch alone.
    const hold = (event: TouchEvent) => {
      if (state.current.kind !== "Idle" && event.cancelable) event.preventDefault();
    };
    for (const kind of ["touchstart", "touchmove"] as const) element.addEventListener(kind, hold, { passive: false });
    return () => {
      for (const kind of ["touchstart", "touchmove"] as const) element.removeEventListener(kind, hold);
    };
  }, []);

  const front = view.toScreen({ x: scene.display.x0, y: scene.display.y0 });
  return (
    <div ref={frame} className="tw-elevation tw-plan">
      <svg
        width={view.width}
        height={view.height}
        viewBox={`0 0 ${view.width} ${view.height}`}
        role="group"
        aria-label={say("plan.of", { name: design.name })}
        onPointerDown={pointer("down")}
        onPointerMove={pointer("move")}
        onPointerUp={pointer("up")}
        onPointerCancel={pointer("cancel")}
        className={dragging ? "tw-dragging" : undefined}
      >
        <ShapeLayer scene={drawn} view={view} selection={selection} id="plan" />
        <text x={front.x} y={front.y + 16} className="tw-sheetSmall">
          {say("plan.front")}
        </text>
        <LabelLayer labels={labels} />
        <g aria-hidden="true">
          {handles.map((handle) => (
            <Grip
              key={`${handle.part}:${handle.kind}:${handle.path}`}
              handle={handle}
              view={view}
              selection={selection}
            />
          ))}
        </g>
        {scene.parts.map((part) => (
          <Target
            key={part.path}
            part={part}
            view={view}
            format={format}
            held={part.path === selection}
            onSelect={onSelect}
            send={send}
          />
        ))}
      </svg>
      {listed ? <ZonesToDraw design={design} zones={scene.zonesWithoutArea} onEdit={onEdit} /> : null}
    </div>
  );
}

/** Pumps and the box can always be taken; holes, outlets and zones once they are in hand. */
const isShown = (handle: PlanHandle, selection: string | undefined): boolean =>
  handle.part === selection || handle.kind === "wall" || (handle.kind === "place" && handle.height !== undefined);

const ranks: Readonly<Record<PlanPart["kind"], ScenePart["rank"]>> = {
  tankPump: 1,
  box: 1,
  zone: 1,
  outlet: 2,
  hole: 3,
  display: 4,
};

type Say = ReturnType<typeof useWords>["say"];

const asScenePart = (part: PlanPart, say: Say): ScenePart => ({
  path: part.path,
  name: part.name ?? say(`plan.kind.${part.kind}`),
  anchor: part.anchor,
  figures: part.figures,
  rank: ranks[part.kind],
  lean: part.lean,
  ...(part.placed ? {} : { state: say("plan.unplaced") }),
});

function Grip({ handle, view, selection }: { handle: PlanHandle; view: View; selection: string | undefined }) {
  const at = view.toScreen(gripOf(handle));
  const held = handle.part === selection;
  return (
    <g transform={`translate(${at.x} ${at.y})`}>
      <circle r={22} className="tw-hit tw-drag-arc" />
      <path
        d={handle.kind === "turn" ? "M0,-5L5,0L0,5L-5,0Z" : "M-5,-5H5V5H-5Z"}
        className={held ? "tw-grip tw-gripHeld" : "tw-grip"}
        data-plan-grip={`${handle.part}:${handle.kind}`}
      />
    </g>
  );
}

interface TargetProps {
  readonly part: PlanPart;
  readonly view: View;
  readonly format: Format;
  readonly held: boolean;
  readonly onSelect: PlanProps["onSelect"];
  send(event: PlanEvent): void;
}

const ways: Readonly<Record<string, { readonly x: number; readonly y: number }>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: 1 },
  ArrowDown: { x: 0, y: -1 },
};

/** A stop for the keyboard at each part: arrows move it, with Alt they turn it. */
function Target({ part, view, format, held, onSelect, send }: TargetProps) {
  const { say } = useWords();
  const at = view.toScreen(part.anchor);
  const onKeyDown = (event: KeyboardEvent) => {
    const way = ways[event.key];
    if (way !== undefined)
      send({ kind: "arrow", way, large: event.shiftKey, focus: part.path, second: event.altKey, at: event.timeStamp });
    else if (event.key === "Enter" || event.key === " ") onSelect?.(part.path);
    else if (event.key === "Escape") send({ kind: "escape" });
    else return;
    event.preventDefault();
  };
  const name = part.name ?? say(`plan.kind.${part.kind}`);
  return (
    <g
      tabIndex={0}
      role="button"
      aria-pressed={held}
      aria-label={say("plan.spoken", {
        name,
        x: format(part.anchor.x, "length"),
        y: format(part.anchor.y, "length"),
      })}
      data-plan-path={part.path}
      className={held ? "tw-target tw-targetHeld" : "tw-target"}
      onKeyDown={onKeyDown}
      onFocus={(event) => {
        if (event.currentTarget.matches(":focus-visible")) onSelect?.(part.path);
      }}
    >
      <circle cx={at.x} cy={at.y} r={11} className="tw-focusRing" />
    </g>
  );
}

/** Zones that lie nowhere yet, each with a button that draws it in. */
function ZonesToDraw({
  design,
  zones,
  onEdit,
}: {
  readonly design: Design;
  readonly zones: readonly { readonly path: string; readonly name: string }[];
  readonly onEdit: NonNullable<PlanProps["onEdit"]>;
}) {
  const { say } = useWords();
  return (
    <p className="plan-zones">
      <span className="quiet">{say("plan.zonesToDraw")}</span>
      {zones.map(({ path, name }) => (
        <button
          key={path}
          type="button"
          className="action"
          onClick={() =>
            onEdit(drawZoneIn(design, path), { dragKey: `zone-${path}`, done: true, label: say("plan.step.zone") })
          }
        >
          {say("plan.drawIn", { zone: name })}
        </button>
      ))}
    </p>
  );
}
