import { type ReactNode, useEffect, useState, useSyncExternalStore } from "react";
import { useWords } from "../words/useWords.ts";
import { type Speed, speeds } from "./course.ts";
import { playFilm, playhead, setShorten, setSpeed, toEvent, useFilm } from "./filmState.ts";

/** Play and pause, event to event, how fast. With reduced motion nothing runs: the button goes on to the next event. */
export function FilmControls({ stillness, children }: { readonly stillness: boolean; readonly children: ReactNode }) {
  const playing = useSyncExternalStore(playhead.onPlay, () => playhead.playing);
  const speed = useFilm((state) => state.speed);
  const { say } = useWords();
  return (
    <div className="film-controls">
      <div className="film-keys">
        <IconButton label={say("film.previous")} path="M13 4 7 10l6 6M5 4v12" onClick={() => toEvent(-1)} />
        {stillness ? (
          <button type="button" className="action action-strong film-play" onClick={() => toEvent(1)}>
            {say("film.onToNext")}
          </button>
        ) : (
          <button
            type="button"
            className="action action-strong film-play"
            data-film-play
            onClick={() => (playing ? playhead.pause() : pressPlay())}
          >
            <svg viewBox="0 0 20 20" width="16" height="16" aria-hidden="true">
              <path
                d={playing ? "M6.5 4v12M13.5 4v12" : "M6 3.5 16 10 6 16.5Z"}
                fill={playing ? "none" : "currentColor"}
              />
            </svg>
            {say(playing ? "film.pause" : "film.play")}
          </button>
        )}
        <IconButton label={say("film.next")} path="m7 4 6 6-6 6M15 4v12" onClick={() => toEvent(1)} />
      </div>
      {children}
      {stillness ? null : (
        <fieldset className="film-speeds">
          <legend className="visually-hidden">{say("film.howFast")}</legend>
          {speeds.map((value) => (
            <SpeedButton
              key={value}
              value={value}
              label={value === "fit" ? say("film.allIn") : `${value}×`}
              pressed={speed === value}
            />
          ))}
        </fieldset>
      )}
    </div>
  );
}

/** Whether quiet stretches take less of the bar than their time; it stands at the bar that it is about. */
export function ShortenBox() {
  const shorten = useFilm((state) => state.shorten);
  const { say } = useWords();
  return (
    <label className="film-shorten">
      <input type="checkbox" checked={shorten} onChange={(event) => setShorten(event.target.checked)} />
      {say("film.shorten")}
    </label>
  );
}

function SpeedButton(props: { readonly value: Speed; readonly label: string; readonly pressed: boolean }) {
  const { say } = useWords();
  return (
    <button
      type="button"
      aria-pressed={props.pressed}
      aria-label={typeof props.value === "number" ? say("film.timesAsFast", { speed: props.value }) : props.label}
      onClick={() => setSpeed(props.value)}
    >
      {props.label}
    </button>
  );
}

function IconButton(props: { readonly label: string; readonly path: string; readonly onClick: () => void }) {
  return (
    <button type="button" className="icon-button" aria-label={props.label} onClick={props.onClick}>
      <svg viewBox="0 0 20 20" width="18" height="18" aria-hidden="true">
        <path d={props.path} />
      </svg>
    </button>
  );
}

/** Starts the film and measures from the press to the first frame painted with a moved level, as "film-start". */
export function pressPlay(): void {
  const start = performance.now();
  const from = playhead.time;
  playFilm();
  const stop = playhead.onMove((t) => {
    if (t === from) return;
    stop();
    // A message posted from a frame callback is heard right after that frame has been painted.
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      performance.measure("film-start", { start, end: performance.now() });
      port1.close();
    };
    port2.postMessage(undefined);
  });
}

const query = typeof matchMedia === "undefined" ? undefined : matchMedia("(prefers-reduced-motion: reduce)");

/** Returns true for those who ask the system for less motion; renders again when they change their mind. */
export function useStillness(): boolean {
  const [still, setStill] = useState(query?.matches ?? false);
  useEffect(() => {
    const listen = (event: MediaQueryListEvent) => setStill(event.matches);
    query?.addEventListener("change", listen);
    return () => query?.removeEventListener("change", listen);
  }, []);
  return still;
}
