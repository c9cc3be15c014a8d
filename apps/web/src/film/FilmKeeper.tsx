import { useEffect } from "react";
import { useCatalogue } from "../catalogue/currentCatalogue.ts";
import { presentDesign, useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import {
  chosenScenario,
  closeFilm,
  forgetOthers,
  isFilmOpen,
  playhead,
  useFilm,
  wantFilm,
  wantSweep,
} from "./filmState.ts";
import { showFilm } from "./showFilm.ts";

/** Quiet time before the film of a document is simulated unasked, so that it is there when play is pressed [ms]. */
const idleTime = 400;
/** Quiet time before everything that can go wrong is simulated unasked [ms]. */
const sweepTime = 1500;

/** Keeps the film in step with the document, and opens it at the press of W. */
export function FilmKeeper() {
  const design = useBench((state) => state.history.present);
  const assessed = useBench((state) => state.assessed?.design === state.history.present);
  const open = useFilm((state) => state.open);
  const catalogue = useCatalogue();
  // biome-ignore lint/correctness/useExhaustiveDependencies: a film with other pumps is another film
  useEffect(() => {
    // A film of another document ends with it.
    playhead.pause();
    if (!assessed) return;
    if (open) {
      wantFilm(design);
      return;
    }
    const timer = setTimeout(() => wantFilm(design), idleTime);
    return () => clearTimeout(timer);
  }, [design, assessed, open, catalogue]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: as above
  useEffect(() => {
    forgetOthers(design);
    if (!assessed) return;
    // What can go wrong is found unasked too, once no hand has moved anything for a while.
    let timer: ReturnType<typeof setTimeout>;
    const wait = () => {
      // A film that plays has the machine to itself.
      timer = setTimeout(() => (playhead.playing ? wait() : wantSweep(design)), sweepTime);
    };
    wait();
    return () => clearTimeout(timer);
  }, [design, assessed, catalogue]);
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.key !== "w" || event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
      if (event.target instanceof HTMLElement && event.target.matches("input, select, textarea, [contenteditable]"))
        return;
      if (document.querySelector("dialog[open]") !== null) return;
      event.preventDefault();
      toggleFilm();
    };
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  }, []);
  return null;
}

/** Opens the film of the scenario last chosen, or puts the running drawing back. */
function toggleFilm(): void {
  if (isFilmOpen()) closeFilm();
  else showFilm(presentDesign(), chosenScenario());
}

/** The way to the film from the bar at the top. */
export function FilmButton() {
  const open = useFilm((state) => state.open);
  const { say } = useWords();
  return (
    <button
      type="button"
      className="tool film-tool"
      aria-pressed={open}
      aria-keyshortcuts="w"
      title={say("film.toolTitle")}
      onClick={toggleFilm}
    >
      {say("film.tool")}
    </button>
  );
}
