import type { Assessment } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { type PointerEvent, type ReactNode, useCallback, useEffect, useId, useMemo, useRef, useState } from "react";
import "./elevation.css";
import {
  angleShare,
  dimensionRects,
  editsFor,
  type Format,
  fitView,
  flagRects,
  type Handle,
  handleAt,
  type LabelOffset,
  type Levels,
  layoutElevation,
  nudgeOf,
  obstaclesOf,
  type Point,
  partAt,
  placeDimensions,
  placeFlags,
  placeLabels,
  type Scene,
  type ScenePart,
  type SetEdit,
  shareScene,
  type View,
} from "@tidewright/editor";
import { DimensionLayer } from "./DimensionLayer.tsx";
import { HandleLayer } from "./HandleLayer.tsx";
import { FlagLayer, LabelLayer } from "./LabelLayer.tsx";
import { measureText } from "./measureText.ts";
import { PartTargets } from "./PartTargets.tsx";
import { ShapeLayer } from "./ShapeLayer.tsx";
import { SheetFoot } from "./SheetFoot.tsx";

/** A line ruled over the drawing, such as the highest safe one, and the part that bears its label [m]. */
export interface RuledLine {
  readonly from: Point;
  readonly to: Point;
  readonly part: ScenePart;
}

export interface ElevationProps {
  readonly design: Design;
  readonly assessment: Assessment | undefined;
  /** Levels that count instead of the assessment's, such as one moment of a film [m]. */
  readonly levels?: Levels;
  /** JSON Pointer of the part in hand. */
  readonly selection: string | undefined;
  readonly onSelect: (path: string | undefined) => void;
  /** Edits of one move; those with the same key belong to one drag, `done` ends it. */
  readonly onEdit: (edits: readonly SetEdit[], drag: { readonly dragKey: string; readonly done: boolean }) => void;
  /** Takes a drag back that turned out to be none, such as the first finger of a pinch. */
  readonly onDrop: (dragKey: string) => void;
  readonly format: Format;
  readonly ruled?: RuledLine | undefined;
  readonly showDimensions?: boolean;
  /** Height of the picture [px]; without it as high as its width asks. */
  readonly height?: number;
  /** Width before the first measurement [px]. */
  readonly initialWidth?: number;
}

interface Drag {
  readonly handle: Handle;
  readonly pointer: number;
  /** Way that still counts as a tap [px]: a fingertip rolls. */
  readonly slack: number;
  readonly from: Point;
  /** Where the pointer was in the window when it took hold: measuring the page anew at every move would cost a layout. */
  readonly client: Point;
  readonly view: View;
  readonly key: string;
  edits: readonly SetEdit[];
}

/** The side elevation to scale, with live numbers on its parts; every part can be selected, what is movable dragged. */
export function Elevation(props: ElevationProps): ReactNode {
  const {
    design,
    assessment,
    levels,
    selection,
    onSelect,
    onEdit,
    onDrop,
    format,
    ruled,
    showDimensions = false,
  } = props;
  const id = useId().replace(/[^a-zA-Z0-9]/g, "");
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame, props.initialWidth ?? 960);
  const measure = useMeasure(frame);
  const last = useRef<Scene>(undefined);
  const scene = useMemo(
    () => shareScene(last.current, layoutElevation(design, assessment, levels)),
    [design, assessment, levels],
  );
  useEffect(() => {
    last.current = scene;
  }, [scene]);
  const drag = useRef<Drag | undefined>(undefined);
  const drags = useRef(0);
  const [dragging, setDragging] = useState<string>();
  const fitted = useMemo(
    () =>
      fitView(scene.bounds, { width, dimensions: showDimensions, ...(props.height ? { height: props.height } : {}) }),
    [scene.bounds, width, showDimensions, props.height],
  );
  // The picture keeps its scale under a finger; it fits itself anew when the finger lifts.
  const view = dragging && drag.current ? drag.current.view : fitted;
  const obstacles = useMemo(() => obstaclesOf(scene, view), [scene, view]);
  const flags = useMemo(() => placeFlags(scene, view, obstacles), [scene, view, obstacles]);
  const dimensions = useMemo(
    () => (showDimensions ? placeDimensions(scene, view, format) : []),
    [scene, view, format, showDimensions],
  );
  const keepFree = useMemo(() => [...flagRects(flags), ...dimensionRects(dimensions)], [flags, dimensions]);
  // Labels keep their places in a drag only: anything else that moves the picture earns them a fresh search.
  const offsets = useRef<ReadonlyMap<string, LabelOffset>>(undefined);
  const labels = useMemo(
    () =>
      placeLabels({
        scene: ruled ? { ...scene, parts: [...scene.parts, ruled.part] } : scene,
        view,
        format,
        selection,
        previous: dragging ? offsets.current : undefined,
        keepFree,
        obstacles,
        measure,
      }),
    [scene, view, format, selection, dragging, keepFree, obstacles, measure, ruled],
  );
  useEffect(() => {
    offsets.current = new Map(labels.map((label) => [label.path, label.offset]));
  }, [labels]);
  // Nobody walks through the parts by keyboard while a pointer drags: their spoken numbers wait for its end.
  const still = useRef(scene);
  const targets = dragging ? still.current : scene;
  useEffect(() => {
    if (!dragging) still.current = scene;
  }, [dragging, scene]);
  const handles = useMemo(() => shownHandles(scene, view, selection), [scene, view, selection]);

  const nudge = useCallback(
    (handle: Handle, steps: number, large: boolean) => {
      const by = steps * nudgeOf(handle, large) * (handle.axis === "arc" ? 1 : handle.targets[0].sign);
      onEdit(editsFor(handle, by), { dragKey: `nudge-${handle.part}-${++drags.current}`, done: true });
    },
    [onEdit],
  );

  const onPointerDown = (event: PointerEvent<SVGSVGElement>) => {
    // A second finger makes a gesture of what the first began.
    if (drag.current) {
      letGo(false);
      return;
    }
    if (event.button !== 0 || !event.isPrimary) return;
    const point = screenPoint(event);
    const reach = event.pointerType === "mouse" ? 14 : 22;
    const taken = handleAt(handles, view, point, reach);
    const part = taken ? taken.part : partAt(scene, view, point, reach)?.path;
    if (!taken) {
      onSelect(part);
      return;
    }
    event.currentTarget.setPointerCapture(event.pointerId);
    drag.current = {
      handle: taken,
      pointer: event.pointerId,
      slack: event.pointerType === "mouse" ? 3 : 8,
      from: point,
      client: { x: event.clientX, y: event.clientY },
      view,
      key: `drag-${taken.part}-${++drags.current}`,
      edits: [],
    };
    onSelect(taken.part);
  };
  const onPointerMove = (event: PointerEvent<SVGSVGElement>) => {
    const held = drag.current;
    if (!held || held.pointer !== event.pointerId) return;
    const { client, from } = held;
    const point = { x: from.x + event.clientX - client.x, y: from.y + event.clientY - client.y };
    if (!dragging && Math.hypot(point.x - from.x, point.y - from.y) < held.slack) return;
    if (!dragging) setDragging(held.handle.part);
    held.edits = editsFor(held.handle, moved(held, point));
    onEdit(held.edits, { dragKey: held.key, done: false });
  };
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    // Marks inside a picture cannot tell the browser to leave their touches alone, and React's own listeners may not.
    const hold = (event: TouchEvent) => {
      if (drag.current && event.cancelable) event.preventDefault();
    };
    for (const kind of ["touchstart", "touchmove"] as const) element.addEventListener(kind, hold, { passive: false });
    return () => {
      for (const kind of ["touchstart", "touchmove"] as const) element.removeEventListener(kind, hold);
    };
  }, []);

  const letGo = (keep: boolean) => {
    const held = drag.current;
    drag.current = undefined;
    setDragging(undefined);
    if (!held || held.edits.length === 0) return;
    if (keep) onEdit(held.edits, { dragKey: held.key, done: true });
    else onDrop(held.key);
  };
  const onPointerEnd = (event: PointerEvent<SVGSVGElement>) => {
    // The browser cancels a pointer when it scrolls or zooms with it: nothing was meant to be edited.
    if (drag.current?.pointer === event.pointerId) letGo(event.type === "pointerup");
  };

  return (
    <div ref={frame} className="tw-elevation">
      <svg
        width={view.width}
        height={view.height}
        viewBox={`0 0 ${view.width} ${view.height}`}
        role="group"
        aria-label={`Side elevation of ${design.name}, to scale`}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={onPointerEnd}
        onPointerCancel={onPointerEnd}
        className={dragging ? "tw-dragging" : undefined}
      >
        <Hatches id={id} scene={scene} view={view} />
        <ShapeLayer scene={scene} view={view} selection={selection} id={id} />
        <DimensionLayer placed={dimensions} />
        {ruled ? <path d={ruledPath(ruled, view)} className="tw-ruled" data-safe-line /> : null}
        <LabelLayer labels={labels} onSelect={onSelect} />
        <HandleLayer handles={handles} view={view} active={dragging} selection={selection} />
        <FlagLayer flags={flags} onSelect={onSelect} />
        <PartTargets
          scene={targets}
          view={view}
          format={format}
          selection={selection}
          onSelect={onSelect}
          onNudge={nudge}
        />
        <SheetFoot scene={scene} view={view} format={format} />
      </svg>
    </div>
  );
}

const ruledPath = ({ from, to }: RuledLine, view: View): string => {
  const [a, b] = [view.toScreen(from), view.toScreen(to)];
  return `M${a.x},${a.y}L${b.x},${b.y}`;
};

/** Pipes and in-tank pumps show their grip only in hand; on a phone only the part in hand does. */
function shownHandles(scene: Scene, view: View, selection: string | undefined): Handle[] {
  return scene.parts.flatMap((part) => {
    if (!part.handle) return [];
    if (part.path === selection) return [part.handle];
    if (view.width < 560 || /\/run\/|\/suction\/|^\/tankPumps/.test(part.path)) return [];
    return [part.handle];
  });
}

/** Way along the handle's axis since it was taken [m], or share of the arc. */
function moved({ handle, from, view }: Drag, point: Point): number {
  if (handle.axis === "x") return (point.x - from.x) / view.scale;
  if (handle.axis === "y") return (from.y - point.y) / view.scale;
  const at = view.toScreen(handle.at);
  return angleShare(point.x - at.x, at.y - point.y) - handle.targets[0].value;
}

function screenPoint(event: PointerEvent<SVGSVGElement>): Point {
  const box = event.currentTarget.getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
}

/** The page's own type counts once its fonts are there. */
function useMeasure(frame: React.RefObject<HTMLDivElement | null>) {
  const [measure, setMeasure] = useState<(text: string, size: number) => number>();
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    let here = true;
    void document.fonts.ready.then(() => {
      if (here) setMeasure(() => measureText(element));
    });
    return () => {
      here = false;
    };
  }, [frame]);
  return measure;
}

function useWidth(frame: React.RefObject<HTMLDivElement | null>, initial: number): number {
  const [width, setWidth] = useState(initial);
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const observer = new ResizeObserver(([entry]) => {
      if (entry && entry.contentRect.width > 0) setWidth(Math.floor(entry.contentRect.width));
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [frame]);
  return width;
}

/** Hatches for cut glass and for the ground, and the tint of water by depth. */
export function Hatches({ id, scene, view }: { id: string; scene: Scene; view: View }) {
  const water = scene.shapes.find((shape) => shape.kind === "area" && shape.ink === "water");
  const ys = water?.kind === "area" ? water.points.map((point) => view.toScreen(point).y) : [0, 1];
  return (
    <defs>
      <pattern id={`${id}-glass`} width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line x1="0" y1="0" x2="0" y2="4" className="tw-hatch" />
      </pattern>
      <pattern id={`${id}-ground`} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line x1="0" y1="0" x2="0" y2="7" className="tw-hatch" />
      </pattern>
      <linearGradient
        id={`${id}-water`}
        gradientUnits="userSpaceOnUse"
        x1="0"
        x2="0"
        y1={Math.min(...ys)}
        y2={Math.max(...ys)}
      >
        <stop offset="0" className="tw-tintTop" />
        <stop offset="1" className="tw-tintDeep" />
      </linearGradient>
      <linearGradient
        id={`${id}-deepWater`}
        gradientUnits="userSpaceOnUse"
        x1="0"
        x2="0"
        y1={Math.min(...ys)}
        y2={Math.max(...ys)}
      >
        <stop offset="0" className="tw-tintMiddle" />
        <stop offset="1" className="tw-tintDeep" />
      </linearGradient>
    </defs>
  );
}
