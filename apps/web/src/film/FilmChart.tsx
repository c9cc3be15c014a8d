import type { WhatIf } from "@tidewright/advice";
import type { Format } from "@tidewright/editor";
import type { Words } from "@tidewright/words";
import { memo, type PointerEvent, type ReactNode, useId, useLayoutEffect, useMemo, useRef } from "react";
import { useWords } from "../words/useWords.ts";
import { readFrame, startFrame } from "./filmFrame.ts";
import { type Played, playhead } from "./filmState.ts";
import { clockText, eventSentence, latestEvent, levelWords } from "./filmWords.ts";
import { type ChartBand, type FilmChartScene, layoutFilmChart } from "./layoutFilmChart.ts";

interface Props {
  readonly played: Played;
  readonly format: Format;
  readonly width: number;
  readonly slim: boolean;
  readonly barOnly: boolean;
}

/** The time bar with its events, and under it every level against its rim; one cursor goes through all. */
export const FilmChart = memo(function FilmChart({ played, format, width, slim, barOnly }: Props): ReactNode {
  const { result, scale } = played;
  const words = useWords();
  const id = useId().replace(/[^a-zA-Z0-9]/g, "");
  const scene = useMemo(
    () => layoutFilmChart({ result, scale, width, slim, barOnly, words }),
    [result, scale, width, slim, barOnly, words],
  );
  const frame = useRef<HTMLDivElement>(null);
  const cursor = useRef<SVGGElement>(null);
  const held = useRef<number | undefined>(undefined);
  useLayoutEffect(() => {
    const paint = chartPainter(frame.current!, cursor.current!, scene, played, format, words);
    paint(playhead.time);
    return playhead.onMove(paint);
  }, [scene, played, format, words]);

  const seek = (event: PointerEvent<HTMLDivElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    playhead.seek(scene.timeAt(((event.clientX - box.left) * scene.width) / box.width));
  };
  return (
    <div
      ref={frame}
      className="film-chart"
      tabIndex={0}
      role="slider"
      aria-label={words.say("film.moment")}
      aria-valuemin={0}
      aria-valuemax={Math.round(scale.duration)}
      aria-valuenow={0}
      onPointerDown={(event) => {
        if (!event.isPrimary || event.button !== 0) return;
        held.current = event.pointerId;
        event.currentTarget.setPointerCapture(event.pointerId);
        playhead.pause();
        seek(event);
      }}
      onPointerMove={(event) => held.current === event.pointerId && seek(event)}
      onPointerUp={() => {
        held.current = undefined;
      }}
      onPointerCancel={() => {
        held.current = undefined;
      }}
    >
      <svg
        width={scene.width}
        height={scene.height}
        viewBox={`0 0 ${scene.width} ${scene.height}`}
        aria-hidden="true"
        focusable="false"
      >
        <defs>
          <pattern id={`${id}-quiet`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <line x1="0" y1="0" x2="0" y2="6" className="film-quietHatch" />
          </pattern>
        </defs>
        <Quiet scene={scene} id={id} />
        {scene.stretched.map(({ x0, x1 }) => (
          <path
            key={x0}
            d={`M${x0},${scene.bar}V${scene.height - 3}M${x1},${scene.bar}V${scene.height - 3}`}
            className="film-quietEdge"
          />
        ))}
        {scene.bands.map((band) => (
          <Band key={band.index} band={band} scene={scene} result={result} format={format} />
        ))}
        <Bar scene={scene} />
        <g ref={cursor} className="film-cursor">
          <path d={`M0,${scene.bar - 10}V${scene.height - 2}`} />
          <path d={`M0,${scene.bar - 9}l-6,-9h12z`} className="film-cursorHead" />
          {scene.bands.map(({ index }) => (
            <circle key={index} r={3.2} data-dot={index} />
          ))}
        </g>
      </svg>
    </div>
  );
});

function Bar({ scene }: { readonly scene: FilmChartScene }) {
  const { x0, x1, bar, ticks, events } = scene;
  return (
    <g>
      <path d={`M${x0},${bar}H${x1}`} className="film-bar" />
      {ticks.map(({ x, text }) => (
        <g key={text}>
          <path d={`M${x},${bar}v4`} className="film-tick" />
          <text x={x} y={bar + 15} textAnchor="middle" className="film-tickText">
            {text}
          </text>
        </g>
      ))}
      {events.map(({ x, bad, count }) => (
        <g key={x} transform={`translate(${x} ${bar})`} className={bad ? "film-event film-bad" : "film-event"}>
          <path d={bad ? "M0,-7L5,2H-5Z" : "M0,-5L4,0L0,5L-4,0Z"} />
          {count > 3 ? <path d="M-4,-9H4" /> : null}
        </g>
      ))}
    </g>
  );
}

/** Stretches that take less of the bar than their time, hatched and named. */
function Quiet({ scene, id }: { readonly scene: FilmChartScene; readonly id: string }) {
  return scene.quiet.map(({ x0, x1, text }) => (
    <g key={x0}>
      <rect x={x0} y={scene.bar} width={x1 - x0} height={scene.height - scene.bar - 3} className="film-quiet" />
      <rect x={x0} y={scene.bar} width={x1 - x0} height={20} fill={`url(#${id}-quiet)`} stroke="none" />
      <path
        d={`M${x0},${scene.bar}V${scene.height - 3}M${x1},${scene.bar}V${scene.height - 3}`}
        className="film-quietEdge"
      />
      {x1 - x0 > 44 ? (
        <text x={(x0 + x1) / 2} y={scene.bar + 15} textAnchor="middle" className="film-quietText">
          {text}
        </text>
      ) : null}
    </g>
  ));
}

function Band(props: {
  readonly band: ChartBand;
  readonly scene: FilmChartScene;
  readonly result: WhatIf;
  readonly format: Format;
}) {
  const { band, scene, result, format } = props;
  const { x0, x1, words: place } = scene;
  const vessel = result.vessels[band.index]!;
  const rises = vessel.highest > vessel.start + 5e-4;
  const words = levelWords(vessel.highest, vessel.rim, vessel.start, format, useWords());
  const wordsAt =
    place === "over"
      ? { name: band.top - 4, figure: band.top - 4 }
      : place === "line"
        ? { name: band.top + 13, figure: band.top + 13 }
        : { name: band.top + 11, figure: band.top + 26 };
  const toRight = band.highest.x < x1 - 150;
  return (
    <g data-band={vessel.place}>
      <text x={place === "over" ? x0 : 20} y={wordsAt.name} className="film-bandName">
        {band.name}
      </text>
      <text
        x={place === "over" ? x1 : place === "line" ? x0 - 12 : 20}
        y={wordsAt.figure}
        textAnchor={place === "beside" ? "start" : "end"}
        className="film-bandFigure"
        data-band-figure={band.index}
      />
      <path d={band.area} className="film-bandWater" />
      {band.over === "" ? null : <path d={band.over} className="film-bandOver" />}
      <path d={band.line} className="film-bandLine" />
      <path d={`M${x0},${band.bottom + 2.5}H${x1}`} className="film-bandFoot" />
      {band.rim === undefined ? null : <path d={`M${x0},${band.rim}H${x1}`} className="film-rim" />}
      {rises ? (
        <g transform={`translate(${band.highest.x} ${band.highest.y})`}>
          <circle r={3} className={words.over ? "film-highest film-over" : "film-highest"} />
          <text
            x={toRight ? 7 : -7}
            y={words.over ? 11 : band.highest.y - (band.rim ?? 0) < 17 ? 13 : -5}
            textAnchor={toRight ? "start" : "end"}
            className={words.over ? "film-highestText film-over" : "film-highestText"}
          >
            {words.margin === "" ? words.change : words.margin}
          </text>
        </g>
      ) : null}
    </g>
  );
}

/** Returns a function that puts the cursor, the dots and the numbers of the bands to a moment. */
function chartPainter(
  frame: HTMLDivElement,
  cursor: SVGGElement,
  scene: FilmChartScene,
  { result, design }: Played,
  format: Format,
  words: Words,
): (t: number) => void {
  const { film } = result;
  if (film === undefined) return () => {};
  const moment = startFrame(film);
  const dots = scene.bands.map((band) => ({
    band,
    dot: cursor.querySelector(`[data-dot="${band.index}"]`)!,
    figure: frame.querySelector(`[data-band-figure="${band.index}"]`)!,
    text: "",
  }));
  let spoken = "";
  return (t) => {
    readFrame(film, t, moment);
    cursor.setAttribute("transform", `translate(${scene.xOf(t).toFixed(1)} 0)`);
    for (const entry of dots) {
      const { band, dot, figure } = entry;
      const level = moment.levels[band.index]!;
      const { rim, start } = result.vessels[band.index]!;
      dot.setAttribute("cy", band.yOf(level).toFixed(1));
      const { margin, change, over } = levelWords(level, rim, start, format, words);
      const text = margin === "" ? change : margin;
      if (text === entry.text) continue;
      entry.text = text;
      figure.textContent = text;
      figure.setAttribute("class", over ? "film-bandFigure film-over" : "film-bandFigure");
    }
    const last = latestEvent(result.events, t);
    const told = `${clockText(t)}${last < 0 ? "" : `, ${eventSentence(result.events[last]!, result, design, words)}`}`;
    if (told === spoken) return;
    spoken = told;
    frame.setAttribute("aria-valuenow", String(Math.round(t)));
    frame.setAttribute("aria-valuetext", told);
  };
}
