import { describeScenario, describeVerdict, verdictFacts } from "@tidewright/advice";
import { type KeyboardEvent, type RefObject, useEffect, useMemo, useRef, useState, useSyncExternalStore } from "react";
import "./film.css";
import { Glyph } from "../bench/Glyph.tsx";
import { useFormat } from "../format/useFormat.ts";
import { useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { FilmChart } from "./FilmChart.tsx";
import { FilmControls, pressPlay, ShortenBox, useStillness } from "./FilmControls.tsx";
import { FilmDrawing } from "./FilmDrawing.tsx";
import { closeFilm, openFilm, type Played, playhead, stepFilm, toEvent, useFilm } from "./filmState.ts";
import { clockText, eventSentence, latestEvent, verdictSeverity } from "./filmWords.ts";
import { scenariosFor } from "./ownScenarios.ts";

/** Below this the drawing is not worth looking at [px]. */
const leastDrawing = 150;
/** On one column the drawing is as high as this share of its width. */
const aspect = 0.8;

/** What happens when something fails, on the same drawing: scenario, elevation, controls, chart. */
export function FilmStage({ wide }: { readonly wide: boolean }) {
  const design = useBench((state) => state.history.present);
  const assessed = useBench((state) => state.assessed);
  const scenarioId = useFilm((state) => state.scenarioId);
  const kept = useFilm((state) => state.played);
  const sweep = useFilm((state) => state.sweep);
  const fault = useFilm((state) => state.fault);
  const stillness = useStillness();
  const format = useFormat();
  const { say } = useWords();
  const box = useRef<HTMLDivElement>(null);
  const size = useSize(box);
  // A film belongs to one document and one scenario: it is never shown for another.
  const played = kept?.design === design && kept.scenario.id === scenarioId ? kept : undefined;
  const assessment = assessed?.design === design ? assessed.assessment : undefined;
  const safe = sweep?.design === design ? sweep.result.answers.highestSafeOperatingLevel : undefined;
  useFilmKeys(stillness);
  const low = useScreen(lowScreen);
  const short = useScreen(shortScreen);
  const squeezed = useBench((state) => state.drawerOpen);
  const height = wide ? size.height : Math.max(leastDrawing, Math.round(size.width * aspect));
  return (
    <section className="film" aria-label={say("film.label")}>
      <header className="film-head">
        <ScenarioChoice />
        <VerdictLine played={played} fault={fault} />
        <button type="button" className="action film-close" aria-label={say("film.back")} onClick={closeFilm}>
          <span className="film-close-words">{say("film.back")}</span>
          <span className="film-close-mark" aria-hidden="true">
            ×
          </span>
        </button>
      </header>
      <div className="film-picture" ref={box}>
        {played === undefined || assessment === undefined || size.width === 0 ? (
          <p className="quiet film-wait">{fault === undefined ? say("film.simulating") : ""}</p>
        ) : (
          <FilmDrawing
            played={played}
            assessment={assessment}
            format={format}
            width={size.width}
            height={Math.max(leastDrawing, height)}
            safeLevel={safe}
            stillness={stillness}
          />
        )}
      </div>
      <FilmControls stillness={stillness}>
        <Moment played={played} />
      </FilmControls>
      {played === undefined || size.width === 0 ? null : (
        <div className="film-chart-box">
          <FilmChart
            played={played}
            format={format}
            width={size.width}
            slim={wide && (low || squeezed)}
            barOnly={wide && squeezed && short}
          />
          <ShortenBox />
        </div>
      )}
    </section>
  );
}

function ScenarioChoice() {
  const design = useBench((state) => state.history.present);
  const scenarioId = useFilm((state) => state.scenarioId);
  const own = useFilm((state) => state.own);
  const words = useWords();
  const scenarios = useMemo(() => scenariosFor(design, own), [design, own]);
  return (
    <label className="film-choice">
      <span className="visually-hidden">{words.say("film.whatFails")}</span>
      <select className="select" value={scenarioId} onChange={(event) => openFilm(design, event.target.value)}>
        {scenarios.map((scenario) => (
          <option key={scenario.id} value={scenario.id}>
            {describeScenario(scenario, words)}
          </option>
        ))}
      </select>
    </label>
  );
}

function VerdictLine({ played, fault }: { readonly played: Played | undefined; readonly fault: string | undefined }) {
  const format = useFormat();
  const words = useWords();
  if (fault !== undefined)
    return (
      <p className="field-problem film-verdict" role="alert">
        {words.say("film.fault", { fault })}
      </p>
    );
  if (played === undefined) return <p className="quiet film-verdict">{words.say("film.simulating")}</p>;
  const { result, design } = played;
  const severity = verdictSeverity[result.verdict];
  return (
    <p className={`film-verdict film-verdict-${result.verdict}`} data-verdict={result.verdict}>
      {severity === undefined ? null : <Glyph severity={severity} />}{" "}
      {describeVerdict(verdictFacts(result), design, format, words)}
    </p>
  );
}

/** The moment shown and what happened last, read out when it changes. */
function Moment({ played }: { readonly played: Played | undefined }) {
  const clock = useRef<HTMLSpanElement>(null);
  const [last, setLast] = useState(-1);
  const playing = useSyncExternalStore(playhead.onPlay, () => playhead.playing);
  const words = useWords();
  useEffect(() => {
    if (played === undefined) return;
    const tell = (t: number) => {
      if (clock.current !== null) clock.current.textContent = clockText(t);
      setLast(latestEvent(played.result.events, t));
    };
    tell(playhead.time);
    return playhead.onMove(tell);
  }, [played]);
  const event = played?.result.events[last];
  return (
    <p className="film-moment">
      <span className="film-clock" ref={clock} data-film-clock />
      <span className="film-event-words" aria-live="polite" data-film-event>
        {played === undefined
          ? ""
          : event === undefined
            ? words.say("film.running")
            : eventSentence(event, played.result, played.design, words)}
      </span>
      <span className="visually-hidden">{words.say(playing ? "film.playing" : "film.paused")}</span>
    </p>
  );
}

/** Share of the time bar that an arrow key moves. */
const keyStep = 0.01;

/** Space plays and pauses, arrows step, with shift from event to event, Home and End go to the ends, Escape closes. */
function useFilmKeys(stillness: boolean): void {
  useEffect(() => {
    const press = (event: globalThis.KeyboardEvent) => {
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
      if (document.querySelector("dialog[open]") !== null) return;
      const target = event.target instanceof HTMLElement ? event.target : document.body;
      // Fields keep their keys, buttons keep the space bar, and a tab list keeps its arrows.
      if (target.matches("input:not([type=checkbox]), textarea, select, [role=tab], [contenteditable]")) return;
      if (target.matches('[role="slider"]') && !target.matches(".film-chart")) return;
      if (target.closest(".tw-elevation [data-path]") !== null) return;
      if (event.key === " " && target.matches("button, input, a, summary")) return;
      // Up and down scroll the page unless the time bar itself has the focus.
      if (/^Arrow(Up|Down)$/.test(event.key) && !target.matches(".film-chart")) return;
      if (!act(event, stillness)) return;
      event.preventDefault();
    };
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  }, [stillness]);
}

function act(event: globalThis.KeyboardEvent | KeyboardEvent, stillness: boolean): boolean {
  switch (event.key) {
    case " ":
      if (stillness) toEvent(1);
      else if (playhead.playing) playhead.pause();
      else pressPlay();
      return true;
    case "ArrowRight":
    case "ArrowUp":
      if (event.shiftKey) toEvent(1);
      else stepFilm(keyStep);
      return true;
    case "ArrowLeft":
    case "ArrowDown":
      if (event.shiftKey) toEvent(-1);
      else stepFilm(-keyStep);
      return true;
    case "Home":
      playhead.pause();
      playhead.seek(0);
      return true;
    case "End":
      stepFilm(1);
      return true;
    case "Escape":
      closeFilm();
      return true;
    default:
      return false;
  }
}

/** On lower screens than this the drawing needs the height that wide bands would take. */
const lowScreen = typeof matchMedia === "undefined" ? undefined : matchMedia("(max-height: 50rem)");
/** On lower screens than this an open table leaves room for the drawing or for the bands, not for both. */
const shortScreen = typeof matchMedia === "undefined" ? undefined : matchMedia("(max-height: 66rem)");

function useScreen(query: MediaQueryList | undefined): boolean {
  return useSyncExternalStore(
    (listener) => {
      query?.addEventListener("change", listener);
      return () => query?.removeEventListener("change", listener);
    },
    () => query?.matches ?? false,
  );
}

function useSize(element: RefObject<HTMLElement | null>): { readonly width: number; readonly height: number } {
  const [size, setSize] = useState({ width: 0, height: 0 });
  useEffect(() => {
    if (element.current === null) return;
    const observer = new ResizeObserver(([entry]) => {
      const { width = 0, height = 0 } = entry?.contentRect ?? {};
      setSize({ width: Math.floor(width), height: Math.floor(height) });
    });
    observer.observe(element.current);
    return () => observer.disconnect();
  }, [element]);
  return size;
}
