import type { Assessment } from "@tidewright/advice";
import { memo, type ReactNode, useId, useLayoutEffect, useMemo, useRef } from "react";
import { Hatches } from "../drawing/Hatches.tsx";
import "../drawing/elevation.css";
import {
  type Format,
  fitView,
  labelType,
  obstaclesOf,
  type PipeShape,
  type PlacedLabel,
  type Point,
  placeLabels,
  symbolStrokes,
  type View,
} from "@tidewright/editor";
import { ShapeLayer } from "../drawing/ShapeLayer.tsx";
import { useWords } from "../words/useWords.ts";
import { type FilmScene, type FilmVessel, filmParts, filmScene } from "./filmScene.ts";
import { type Played, playhead } from "./filmState.ts";
import { paintFilm } from "./paintFilm.ts";
import { SafeLine, safeLinePart, safeLinePath } from "./SafeLine.tsx";

interface Props {
  readonly played: Played;
  readonly assessment: Assessment;
  readonly format: Format;
  readonly width: number;
  readonly height: number;
  /** Highest safe line in the return chamber, above the sump's floor, where the sweep knows it [m]. */
  readonly safeLevel: number | undefined;
  readonly stillness: boolean;
}

type Keep = (name: string) => (element: SVGElement | null) => void;

/** The side elevation at the moment of the playhead. React draws it once a film; every frame writes a few attributes. */
export const FilmDrawing = memo(function FilmDrawing(props: Props): ReactNode {
  const { played, assessment, format, width, height, safeLevel, stillness } = props;
  const { design, result } = played;
  const words = useWords();
  const id = useId().replace(/[^a-zA-Z0-9]/g, "");
  const scene = useMemo(() => filmScene(design, assessment, result, words), [design, assessment, result, words]);
  const view = useMemo(() => filmView(scene, width, height), [scene, width, height]);
  const labels = useMemo(() => {
    const safe = safeLinePart(scene, safeLevel, words);
    const parts = [...filmParts(scene, result, view.width < 560, words), ...(safe ? [safe] : [])];
    return placeLabels({
      scene: { ...scene.scene, parts },
      view,
      format,
      obstacles: obstaclesOf(scene.scene, view),
      keepFree: result.spilled > 0 ? [floorTextRect(scene, view)] : [],
    });
  }, [scene, result, view, format, safeLevel, words]);
  const elements = useRef(new Map<string, SVGElement>());
  const keep: Keep = (name) => (element) => {
    if (element === null) elements.current.delete(name);
    else elements.current.set(name, element);
  };
  useLayoutEffect(() => {
    const { film } = result;
    if (film === undefined) return;
    const moves = () => playhead.playing && !stillness;
    const paint = paintFilm({ film, result, scene, view, format, words, elements: elements.current, moves });
    paint(playhead.time);
    return playhead.onMove(paint);
  }, [result, scene, view, format, words, stillness]);

  return (
    <div className="tw-elevation film-drawing">
      <svg
        width={view.width}
        height={view.height}
        viewBox={`0 0 ${view.width} ${view.height}`}
        role="img"
        aria-label={words.say("film.elevation", { design: design.name })}
      >
        <Hatches id={id} scene={scene.scene} view={view} />
        <Waters vessels={scene.vessels} over={false} view={view} id={id} keep={keep} />
        <ShapeLayer scene={scene.bodies} view={view} selection={undefined} id={id} />
        <Waters vessels={scene.vessels} over view={view} id={id} keep={keep} />
        <Surfaces scene={scene} view={view} keep={keep} />
        <Jets scene={scene} view={view} keep={keep} />
        <ShapeLayer scene={scene.pipes} view={view} selection={undefined} id={id} />
        <Lines scene={scene} view={view} id={id} keep={keep} />
        <ShapeLayer scene={scene.marks} view={view} selection={undefined} id={id} />
        <Arrows scene={scene} view={view} keep={keep} />
        <Spills scene={scene} view={view} keep={keep} />
        <SafeLine scene={scene} view={view} level={safeLevel} />
        <Labels labels={labels} keep={keep} />
        <rect x={5.5} y={5.5} width={view.width - 11} height={view.height - 11} className="tw-sheet" />
        <text x={view.width - 14} y={view.height - 14} textAnchor="end" className="tw-sheetSmall">
          {words.say("film.scale", { scale: String(Math.round(pointsPerMetre / view.scale)) })}
        </text>
      </svg>
    </div>
  );
});

/** Picture points of the screen in one metre of the sheet, at 96 to the inch. */
const pointsPerMetre = 96 / 0.0254;
/** A film has its bar and its chart below it and leaves out the title block; this much of its strip remains [px]. */
const foot = 22;

function filmView({ scene }: FilmScene, width: number, height: number): View {
  const { foot: block } = fitView(scene.bounds, { width, height });
  const view = fitView(scene.bounds, { width, height: height + block - foot });
  return { ...view, height, foot };
}

interface LayerProps {
  readonly scene: FilmScene;
  readonly view: View;
  readonly keep: Keep;
}

function Waters(props: {
  readonly vessels: readonly FilmVessel[];
  readonly over: boolean;
  readonly view: View;
  readonly id: string;
  readonly keep: Keep;
}) {
  const { vessels, over, view, id, keep } = props;
  return vessels.map(({ extent, path, over: above }, i) => {
    if (above !== over) return null;
    const left = view.toScreen({ x: extent.x0, y: 0 }).x;
    const right = view.toScreen({ x: extent.x1, y: 0 }).x;
    return (
      <rect
        key={path}
        ref={keep(`water-${i}`)}
        x={left}
        width={right - left}
        fill={`url(#${id}-${over ? "deepWater" : "water"})`}
        data-water={path}
      />
    );
  });
}

/** Surfaces with their level marks, and sheets of water over the crests. */
function Surfaces({ scene, view, keep }: LayerProps) {
  const xOf = (x: number) => view.toScreen({ x, y: 0 }).x;
  return (
    <>
      {scene.crests.map(({ at }, i) => (
        <path key={`${at.x} ${at.y}`} ref={keep(`crest-${i}`)} className="tw-nappe" />
      ))}
      {scene.vessels.map(({ path, surface, mark }, i) => (
        <g key={path} ref={keep(`surface-${i}`)}>
          {surface.map(([x0, x1]) => (
            <path key={x0} d={`M${xOf(x0)},0H${xOf(x1)}`} className="tw-surface" />
          ))}
          <g transform={`translate(${xOf(mark)} 0)`}>
            <path d="M0,-1L-4.5,-8.5H4.5Z" className="tw-levelMark" />
            <path d="M-5,3H5M-2.6,5.6H2.6" className="tw-surfaceTick" />
          </g>
        </g>
      ))}
    </>
  );
}

function Jets({ scene, view, keep }: LayerProps) {
  return scene.jets.map(({ shape }, i) => (
    <path
      key={shape.path}
      ref={keep(`jet-${i}`)}
      d={`${lineOf(shape.points, view)}Z`}
      className="tw-jet film-jet"
      opacity={0}
    />
  ));
}

/** Water in each line: a column up to where it stands, or a film on the wall of a pipe that air shares. */
function Lines({ scene, view, id, keep }: LayerProps & { readonly id: string }) {
  const wide = ({ bore }: PipeShape) => Math.max(2, bore * view.scale);
  return scene.lines.map(({ kind, index, pipes }) => {
    const name = `${kind}-${index}`;
    const strokes = (className: string, share: number) =>
      pipes.map((pipe, i) => (
        <path
          // biome-ignore lint/suspicious/noArrayIndexKey: a part may be drawn in pieces; their order never changes
          key={`${pipe.path} ${i}`}
          d={lineOf(pipe.points, view)}
          className={className}
          strokeWidth={wide(pipe) * share}
          strokeLinecap={pipe.square ? "square" : undefined}
        />
      ));
    return (
      <g key={name} className="tw-pipes">
        <clipPath id={`${id}-${name}`}>
          <rect ref={keep(`clip-${name}`)} x={0} width={view.width} height={view.height} />
        </clipPath>
        <g ref={keep(`film-${name}`)} display="none">
          {strokes("tw-pipeWater", 1)}
          {strokes("tw-pipeInside", 0.5)}
        </g>
        <g clipPath={`url(#${id}-${name})`}>{strokes("tw-pipeWater", 1)}</g>
      </g>
    );
  });
}

/** Dashes that run along the pipes, and an arrow on each run that turns round where water runs back. */
function Arrows({ scene, view, keep }: LayerProps) {
  return scene.runs.map(({ base, pipes, arrow, bore }, i) => {
    const at = view.toScreen(arrow);
    const size = Math.max(10, bore * 1.5 * view.scale);
    return (
      <g key={base}>
        <path
          ref={keep(`dash-${i}`)}
          d={pipes.map(({ points }) => lineOf(points, view)).join("")}
          className="film-dash"
          strokeWidth={Math.max(1, bore * view.scale * 0.16)}
        />
        <g ref={keep(`arrow-${i}`)} className="film-arrow" data-arrow={base}>
          <g transform={`translate(${at.x} ${at.y}) rotate(${(-arrow.angle * 180) / Math.PI}) scale(${size} ${-size})`}>
            <g ref={keep(`turn-${i}`)}>
              {symbolStrokes("flowArrow").map(({ d }) => (
                <path key={d} d={d} />
              ))}
            </g>
          </g>
        </g>
      </g>
    );
  });
}

/** Room for the words on what lies on the floor: under it, in the middle [px]. */
function floorTextRect({ scene: { bounds } }: FilmScene, view: View) {
  const { x, y } = view.toScreen({ x: (bounds.x0 + bounds.x1) / 2, y: -0.035 });
  return { x: x - 60, y, width: 120, height: 20 };
}

/** Water over a rim: down the outside of the glass, and spread on the floor. */
function Spills({ scene, view, keep }: LayerProps) {
  const { bounds } = scene.scene;
  const outside = 0.016;
  const floor = view.toScreen({ x: 0, y: 0 }).y;
  const middle = view.toScreen({ x: (bounds.x0 + bounds.x1) / 2, y: 0 }).x;
  const half = ((bounds.x1 - bounds.x0) / 2) * view.scale;
  const chambers = scene.vessels.filter(({ place }) => place.startsWith("sump."));
  const words = floorTextRect(scene, view);
  return (
    <g className="film-spill">
      {scene.vessels.map(({ path, place, extent, spills }, i) => {
        if (!spills) return null;
        // Between two chambers there is no outside.
        const left = !place.startsWith("sump.") || path === chambers[0]?.path;
        const right = !place.startsWith("sump.") || path === chambers.at(-1)?.path;
        const sheet = (x: number, way: number) => {
          const edge = view.toScreen({ x: x + way * outside, y: extent.y1 });
          const inner = view.toScreen({ x, y: extent.y1 });
          const foot = Math.max(floor, edge.y);
          return `M${inner.x},${inner.y - 2}Q${edge.x},${edge.y - 3} ${edge.x},${edge.y + 8}V${foot}`;
        };
        return (
          <path
            key={path}
            ref={keep(`spill-${i}`)}
            d={[left ? sheet(extent.x0, -1) : "", right ? sheet(extent.x1, 1) : ""].join("")}
            className="film-fall"
            display="none"
          />
        );
      })}
      <g ref={keep("floor")} className="film-floor" display="none">
        <g transform={`translate(${middle} ${floor})`}>
          <path
            ref={keep("puddle")}
            d={`M${-half},0Q${-half},-5 ${-half + 14},-5H${half - 14}Q${half},-5 ${half},0Z`}
          />
        </g>
        <text
          ref={keep("floorText")}
          x={words.x + words.width / 2}
          y={words.y + words.height - 5}
          textAnchor="middle"
        />
      </g>
    </g>
  );
}

/** Labels as on the running drawing, their numbers written by the painter. */
function Labels({ labels, keep }: { readonly labels: readonly PlacedLabel[]; readonly keep: Keep }) {
  return (
    <g>
      {labels.map(({ path, leader, anchor }) =>
        leader ? (
          <g key={path}>
            <path d={`M${anchor.x},${anchor.y}L${leader.x},${leader.y}`} className="tw-leader" />
            <circle cx={anchor.x} cy={anchor.y} r={1.7} className="tw-ink" />
          </g>
        ) : null,
      )}
      {labels.map(({ path, rect, lines, align }) => {
        const x = align === "end" ? rect.x + rect.width - labelType.pad : rect.x + labelType.pad;
        const y = (line: number) => rect.y + labelType.pad + labelType.line * line + 9;
        const fixed = path === safeLinePath;
        return (
          <g key={path} ref={keep(`label-${path}`)} className="film-label" data-film-label={path}>
            <text x={x} y={y(0)} textAnchor={align} className="tw-labelName">
              {lines[0]}
            </text>
            <text
              ref={fixed ? undefined : keep(`margin-${path}`)}
              x={x}
              y={y(1)}
              textAnchor={align}
              className="tw-labelFigure"
            >
              {fixed ? lines[1] : ""}
            </text>
            {lines.length > 2 ? (
              <text ref={keep(`change-${path}`)} x={x} y={y(2)} textAnchor={align} className="tw-labelName" />
            ) : null}
          </g>
        );
      })}
    </g>
  );
}

function lineOf(points: readonly Point[], view: View): string {
  return `M${points
    .map((point) => {
      const { x, y } = view.toScreen(point);
      return `${x.toFixed(1)},${y.toFixed(1)}`;
    })
    .join("L")}`;
}
