import type { Assessment } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { type ReactNode, useCallback, useEffect, useId, useLayoutEffect, useMemo, useRef } from "react";
import "./elevation.css";
import "./tools.css";
import {
  aimGrip,
  arcGeometry,
  aroundBoth,
  cameraView,
  dimensionRects,
  dimensionRoom,
  type Extent,
  type Format,
  fitView,
  flagRects,
  flowLines,
  type LabelOffset,
  type Levels,
  layoutElevation,
  obstaclesOf,
  type Point,
  placeDimensions,
  placeFlags,
  placeLabels,
  type Scene,
  type ScenePart,
  sceneInWords,
  shareScene,
  shownHandles,
  type View,
} from "@tidewright/editor";
import { useWords } from "../words/useWords.ts";
import { ContextBar } from "./ContextBar.tsx";
import { DimensionLayer } from "./DimensionLayer.tsx";
import { FlowCanvas } from "./FlowCanvas.tsx";
import { showFlow, useFlow } from "./flowSetting.ts";
import { GhostLayer } from "./GhostLayer.tsx";
import { HandleLayer } from "./HandleLayer.tsx";
import { Hatches } from "./Hatches.tsx";
import { InPlaceField } from "./InPlaceField.tsx";
import { KeysSheet } from "./KeysSheet.tsx";
import { FlagLayer, LabelLayer } from "./LabelLayer.tsx";
import { PartTargets } from "./PartTargets.tsx";
import { ShapeLayer } from "./ShapeLayer.tsx";
import { SheetFoot } from "./SheetFoot.tsx";
import { SheetPrompt } from "./SheetPrompt.tsx";
import { Palette, SheetTools } from "./SheetTools.tsx";
import type { SheetHands } from "./sheetHands.ts";
import { useMeasure, useWidth } from "./useMeasures.ts";
import { usePointers } from "./usePointers.ts";
import { useSheet } from "./useSheet.ts";

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
  /** What may be done to the document; a drawing without hands can be looked at. */
  readonly hands?: SheetHands;
  readonly format: Format;
  readonly ruled?: RuledLine | undefined;
  readonly showDimensions?: boolean;
  /** Height of the picture [px]; without it as high as its width asks. */
  readonly height?: number;
  /** What the picture makes room for besides its own parts, such as a drawing beside it in the same scale [m]. */
  readonly room?: Extent;
  /** Width before the first measurement [px]. */
  readonly initialWidth?: number;
}

/** The side elevation to scale, with live numbers on its parts. It draws what the layout says and hands every event to the
 *  chart of states; what that wants done is done by the hands. */
export function Elevation(props: ElevationProps): ReactNode {
  const { design, assessment, levels, selection, hands, format, ruled, showDimensions = false, room } = props;
  const words = useWords();
  const id = useId().replace(/[^a-zA-Z0-9]/g, "");
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame, props.initialWidth ?? 960);
  const measure = useMeasure(frame);
  const sheet = useSheet(
    hands,
    useCallback(() => frame.current?.contains(document.activeElement) ?? false, []),
  );
  const { state, camera, send, know } = sheet;
  const dragging = state.kind === "DraggingHandle" ? state.handle.part : undefined;
  const last = useRef<Scene>(undefined);
  const scene = useMemo(
    () => shareScene(last.current, sceneInWords(layoutElevation(design, assessment, levels), words)),
    [design, assessment, levels, words],
  );
  useEffect(() => {
    last.current = scene;
  }, [scene]);
  const whole = useMemo(
    () =>
      fitView(room === undefined ? scene.bounds : aroundBoth(scene.bounds, room), {
        width,
        dimensions: dimensionRoom(scene, showDimensions),
        ...(props.height ? { height: props.height } : {}),
      }),
    [scene, width, showDimensions, props.height, room],
  );
  const seen = useMemo(() => cameraView(whole, camera), [whole, camera]);
  // The picture keeps its scale under a finger; it fits itself anew when the finger lifts.
  const view = state.kind === "DraggingHandle" ? state.view : seen;
  const near = view !== whole && camera !== undefined;
  const obstacles = useMemo(() => obstaclesOf(scene, view), [scene, view]);
  const flags = useMemo(
    () => placeFlags(scene, view, obstacles).filter(({ at }) => isSeen(at, view)),
    [scene, view, obstacles],
  );
  const dimensions = useMemo(
    () => (showDimensions && !near ? placeDimensions(scene, view, format) : []),
    [scene, view, format, showDimensions, near],
  );
  const keepFree = useMemo(
    () => [
      ...flagRects(flags),
      ...dimensionRects(dimensions),
      ...toolRects(view, hands !== undefined),
      ...arcRects(scene, view, selection),
    ],
    [flags, dimensions, view, hands, scene, selection],
  );
  // Labels keep their places in a drag only: anything else that moves the picture earns them a fresh search.
  const offsets = useRef<ReadonlyMap<string, LabelOffset>>(undefined);
  const still = dragging !== undefined || sheet.moving;
  const labels = useMemo(() => {
    const parts = ruled ? [...scene.parts, ruled.part] : scene.parts;
    return placeLabels({
      scene: { ...scene, parts: near ? parts.filter(({ anchor }) => isSeen(view.toScreen(anchor), view)) : parts },
      view,
      format,
      selection,
      previous: still ? offsets.current : undefined,
      keepFree,
      obstacles,
      measure,
    });
  }, [scene, view, format, selection, still, near, keepFree, obstacles, measure, ruled]);
  useEffect(() => {
    offsets.current = new Map(labels.map((label) => [label.path, label.offset]));
  }, [labels]);
  // Nobody walks through the parts by keyboard while a pointer drags: their spoken numbers wait for its end.
  const spoken = useRef({ scene, view });
  const targets = dragging ? spoken.current : { scene, view };
  useEffect(() => {
    if (!dragging) spoken.current = { scene, view };
  }, [dragging, scene, view]);
  const handles = useMemo(
    () => (hands === undefined ? [] : shownHandles(scene, view, selection)),
    [scene, view, selection, hands],
  );
  useLayoutEffect(() => know({ design, scene, view, whole, handles, selection }));
  const pointers = usePointers(frame, sheet);
  useFocus(frame, sheet, scene);
  const picture = useRef<SVGSVGElement>(null);
  const handFull = state.kind === "InsertingPart" || state.kind === "RoutingRun";
  useEffect(() => {
    // What has been chosen from a tool is put down with the keyboard on the sheet: Escape, Enter and Tab belong there.
    if (handFull && !picture.current?.contains(document.activeElement)) picture.current?.focus({ preventScroll: true });
  }, [handFull]);
  const select = useCallback((path: string | undefined) => hands?.select(path), [hands]);
  const held = scene.parts.find((part) => part.path === selection);
  const heldLabel = labels.find((label) => label.path === selection);
  const flow = useFlow();
  const water = useMemo(
    () => (flow && !dragging ? flowLines(scene, assessment) : []),
    [scene, assessment, flow, dragging],
  );
  const keepOut = useMemo(() => [...labels.map(({ rect }) => rect), ...flagRects(flags)], [labels, flags]);

  return (
    <div ref={frame} className="tw-elevation" data-state={state.kind}>
      <svg
        ref={picture}
        width={view.width}
        height={view.height}
        viewBox={`0 0 ${view.width} ${view.height}`}
        role="group"
        aria-label={words.say("drawing.elevationOf", { design: design.name })}
        // A click leaves the keyboard with the sheet, so that Delete and Space mean the part and the paper under the hand.
        tabIndex={-1}
        {...pointers}
        onKeyDown={(event) => {
          if (event.ctrlKey || event.metaKey) return;
          if (send(keyOf(event, "key"))) event.preventDefault();
        }}
        onKeyUp={(event) => send(keyOf(event, "keyUp"))}
        className={pictureClass(dragging !== undefined, handFull, state.kind === "PanningSheet")}
      >
        <Hatches id={id} scene={scene} view={view} />
        <clipPath id={`${id}-sheet`}>
          <rect x={6} y={6} width={Math.max(0, view.width - 12)} height={Math.max(0, view.height - view.foot - 6)} />
        </clipPath>
        <g clipPath={near ? `url(#${id}-sheet)` : undefined}>
          <ShapeLayer scene={scene} view={view} selection={selection} id={id} />
          <DimensionLayer placed={dimensions} />
          {ruled ? <path d={ruledPath(ruled, view)} className="tw-ruled" data-safe-line /> : null}
          <LabelLayer labels={labels} />
          <HandleLayer handles={handles} view={view} active={dragging} selection={selection} />
          <FlagLayer flags={flags} />
          <GhostLayer state={state} design={design} scene={scene} view={view} />
          <PartTargets {...targets} format={format} selection={selection} onSelect={select} />
        </g>
        <SheetFoot scene={scene} view={view} format={format} />
      </svg>
      <SheetTools sheet={sheet} editable={hands !== undefined} narrow={width < 700} flow={flow} onFlow={showFlow} />
      {flow && !still && !dragging ? <FlowCanvas lines={water} view={view} keepOut={keepOut} /> : null}
      <Palette sheet={sheet} narrow={width < 700} />
      <SheetPrompt sheet={sheet} design={handFull || state.kind === "SteeringPart" ? design : undefined} />
      {hands && held && state.kind === "TypingQuantity" ? (
        <InPlaceField
          key={state.path}
          design={design}
          path={state.path}
          label={heldLabel}
          anchor={view.toScreen(held.anchor)}
          view={view}
          hands={hands}
          onClose={(back) => {
            send({ kind: "typed" });
            if (back) focusPart(frame.current, state.path);
          }}
        />
      ) : null}
      {hands && held && !still && !handFull && showsBar(state.kind) ? (
        <ContextBar
          design={design}
          path={held.path}
          name={held.name}
          scene={scene}
          labels={labels}
          anchor={view.toScreen(held.anchor)}
          view={view}
          sheet={sheet}
        />
      ) : null}
      <KeysSheet open={sheet.help} onClose={sheet.closeHelp} />
    </div>
  );
}

const showsBar = (kind: string): boolean => kind === "Idle" || kind === "PointingPart" || kind === "NudgingHandle";

const pictureClass = (dragging: boolean, handFull: boolean, panning: boolean): string =>
  ["tw-picture", dragging || panning ? "tw-dragging" : "", handFull ? "tw-handFull" : ""].filter(Boolean).join(" ");

const ruledPath = ({ from, to }: RuledLine, view: View): string => {
  const [a, b] = [view.toScreen(from), view.toScreen(to)];
  return `M${a.x},${a.y}L${b.x},${b.y}`;
};

const isSeen = ({ x, y }: Point, view: View): boolean =>
  x > 0 && x < view.width && y > 0 && y < view.height - view.foot;

/** Where the tools lie, which no label may lie under [px]. */
function toolRects(view: View, editable: boolean) {
  const narrow = view.width < 700;
  const height = narrow ? 50 : 42;
  const look = { x: view.width - (narrow ? 190 : 160), y: 0, width: narrow ? 190 : 160, height };
  return editable ? [{ x: 0, y: 0, width: narrow ? 150 : 290, height }, look] : [look];
}

/** The arc of the part in hand and the grip of its aim, which its label leaves free [px]. */
function arcRects(scene: Scene, view: View, selection: string | undefined) {
  const part = scene.parts.find(({ path }) => path === selection);
  const round = ({ x, y }: Point, r: number) => ({ x: x - r, y: y - r, width: 2 * r, height: 2 * r });
  return [...(part?.handle ? [part.handle] : []), ...(part?.grips ?? [])].flatMap((handle) => {
    if (handle.axis === "aim") return [round(aimGrip(handle, view), 12)];
    return handle.axis === "arc" ? [round(view.toScreen(handle.at), arcGeometry(view.scale).radius + 4)] : [];
  });
}

function keyOf(event: React.KeyboardEvent, kind: "key" | "keyUp") {
  const focus = (event.target as Element).closest("[data-path]")?.getAttribute("data-path");
  return {
    kind,
    key: event.key,
    at: event.timeStamp,
    shift: event.shiftKey,
    alt: event.altKey,
    ...(focus ? { focus } : {}),
  };
}

/** The keyboard follows the part that an edit has put into the hand. */
function useFocus(
  frame: React.RefObject<HTMLElement | null>,
  sheet: { takeFocus(): string | undefined },
  scene: Scene,
) {
  const { takeFocus } = sheet;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the part stands in the page once the new scene does
  useEffect(() => {
    const path = takeFocus();
    if (path !== undefined) focusPart(frame.current, path);
  }, [scene, takeFocus, frame]);
}

function focusPart(frame: HTMLElement | null, path: string): void {
  frame?.querySelector<SVGElement>(`.tw-target[data-path="${CSS.escape(path)}"]`)?.focus({ preventScroll: true });
}
