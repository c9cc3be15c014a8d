import { type SafetyLever, type SafetySweep, type Scenario, scenariosOf, type WhatIf } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { watchCatalogue } from "../catalogue/currentCatalogue.ts";
import { joinSweep } from "../state/bench.ts";
import { createStore, useStore } from "../state/store.ts";
import { courseOf, type Speed } from "./course.ts";
import { type FilmClient, startFilm } from "./filmClient.ts";
import { type OwnDocument, ownId, scenariosFor } from "./ownScenarios.ts";
import { createPlayhead } from "./playhead.ts";
import { evenScale, shortenedScale, type TimeScale } from "./timeScale.ts";
import { worstMoment } from "./worstMoment.ts";

/** A scenario played on the very document that it names, with its time bar. */
export interface Played {
  readonly design: Design;
  readonly scenario: Scenario;
  readonly result: WhatIf;
  readonly scale: TimeScale;
}

/** Everything about water over time that the page shows. Answers carry the document they are about. */
export interface FilmState {
  /** True while the drawing shows a film. */
  readonly open: boolean;
  readonly scenarioId: string;
  readonly played: Played | undefined;
  readonly sweep: { readonly design: Design; readonly result: SafetySweep } | undefined;
  readonly sweeping: { readonly design: Design; readonly done: number; readonly of: number } | undefined;
  readonly levers: { readonly design: Design; readonly list: readonly SafetyLever[] } | undefined;
  /** Scenarios of one's own, as they were opened. */
  readonly own: readonly OwnDocument[];
  readonly speed: Speed;
  /** Quiet stretches take less of the bar than their time. */
  readonly shorten: boolean;
  readonly fault: string | undefined;
}

const store = createStore<FilmState>({
  open: false,
  scenarioId: "powerCut",
  played: undefined,
  sweep: undefined,
  sweeping: undefined,
  levers: undefined,
  own: [],
  speed: "fit",
  shorten: true,
  fault: undefined,
});

/** Returns what `select` takes from the film's state and renders again when it changes; `select` must not make new objects. */
export function useFilm<Part>(select: (state: FilmState) => Part): Part {
  return useStore(store, select);
}

/** True while the drawing shows a film, for those who need it once. */
export const isFilmOpen = (): boolean => store.get().open;

/** Id of the scenario last chosen. */
export const chosenScenario = (): string => store.get().scenarioId;

const still = { duration: 0, next: (t: number) => t };

/** The moment that the film shows. */
export const playhead = createPlayhead(() => {
  const { played, speed } = store.get();
  return played === undefined ? still : courseOf(played.scale, speed);
});

// Other pumps or prices are in force: what was played with those of before counts no more.
watchCatalogue(() => {
  store.patch({ played: undefined, sweep: undefined, sweeping: undefined, levers: undefined, fault: undefined });
});

let client: FilmClient | undefined;
/** What to do with the playhead when the film that was asked for is there. */
let arrival: "start" | "worst" | "keep" = "start";

function engine(): FilmClient {
  client ??= startFilm({
    played(design, scenario, result) {
      const { scenarioId, shorten } = store.get();
      if (scenario.id !== scenarioId || result.film === undefined) return;
      const scale = scaleFor(result, shorten);
      store.patch({ played: { design, scenario, result, scale }, fault: undefined });
      if (arrival === "worst") playhead.seek(worstMoment(result));
      else if (arrival === "start") playhead.seek(firstMoment(result));
      else playhead.seek(playhead.time);
      arrival = "keep";
    },
    progress: (design, done, of) => store.patch({ sweeping: { design, done, of } }),
    swept(design, result) {
      store.patch({ sweep: { design, result }, sweeping: undefined, fault: undefined });
      joinSweep(design, result);
      engine().levers(design, result);
    },
    levered: (design, list) => store.patch({ levers: { design, list } }),
    fault: (_asked, message) => store.patch({ fault: message, sweeping: undefined }),
  });
  return client;
}

const scaleFor = (result: WhatIf, shorten: boolean): TimeScale =>
  shorten && result.film !== undefined
    ? shortenedScale(
        result.film,
        // A top-off that comes and goes is daily life and nothing to dwell on.
        result.events.filter(({ code }) => code !== "topOff/on" && code !== "topOff/off"),
        result.reached,
      )
    : evenScale(result.reached);

/** Where a film begins: at what is done first, since nothing moves before. */
function firstMoment({ events }: WhatIf): number {
  return events[0]?.t ?? 0;
}

/** Asks for the film of the chosen scenario on a document, if it is not there yet; a scenario that the document does not know
 *  gives way to the first that it does. */
export function wantFilm(design: Design): void {
  const { played, scenarioId } = store.get();
  if (played?.design === design && played.scenario.id === scenarioId) return;
  const known = scenariosFor(design, store.get().own);
  const scenario = known.find(({ id }) => id === scenarioId) ?? known[0]!;
  if (scenario.id !== scenarioId) {
    arrival = "start";
    store.patch({ scenarioId: scenario.id });
  }
  engine().whatIf(design, scenario);
}

/** Asks for the safety table of a document, if it is not there yet. */
export function wantSweep(design: Design): void {
  const { sweep, sweeping } = store.get();
  if (sweep?.design === design || sweeping?.design === design) return;
  store.patch({ sweeping: { design, done: 0, of: scenariosOf(design).length } });
  engine().sweep(design);
}

/** Ends work on documents other than this one. */
export function forgetOthers(design: Design): void {
  if (store.get().sweeping === undefined || store.get().sweeping?.design === design) return;
  store.patch({ sweeping: undefined });
  client?.dropOthers(design);
}

/** Opens the film of a scenario on a document, at its start or at its worst moment. */
export function openFilm(design: Design, scenarioId: string, at: "start" | "worst" = "start"): void {
  playhead.pause();
  arrival = at;
  store.patch({ open: true, scenarioId });
  const { played } = store.get();
  if (played?.design !== design || played.scenario.id !== scenarioId) {
    wantFilm(design);
    return;
  }
  playhead.seek(at === "worst" ? worstMoment(played.result) : firstMoment(played.result));
  arrival = "keep";
}

/** Keeps a scenario of one's own; one of the same file name takes the place of the earlier. Returns its id. */
export function addScenario(document: OwnDocument): string {
  const { own, played } = store.get();
  const at = own.findIndex(({ file }) => file === document.file);
  const place = at < 0 ? own.length : at;
  const id = ownId(place);
  store.patch({
    own: [...own.slice(0, place), document, ...own.slice(place + 1)],
    // What was played under this id may have been another course of events.
    ...(played?.scenario.id === id ? { played: undefined } : {}),
  });
  return id;
}

/** Puts the running drawing back. */
export function closeFilm(): void {
  playhead.pause();
  store.patch({ open: false });
}

/** Plays, from the start where the film is at its end; the quiet lead before the first event is passed over. */
export function playFilm(): void {
  const { played } = store.get();
  if (played === undefined) return;
  const first = firstMoment(played.result);
  if (playhead.time >= played.scale.duration || playhead.time < first) playhead.seek(first);
  playhead.play();
}

/** Goes to the next event after the moment shown, or the one before it; to the end or the start where there is none. */
export function toEvent(way: 1 | -1): void {
  const { played } = store.get();
  if (played === undefined) return;
  playhead.pause();
  const { time } = playhead;
  // What happens within the same blink is one step.
  const blink = played.scale.duration * 1e-6;
  const moments = played.result.events.map(({ t }) => t);
  const next =
    way > 0
      ? (moments.find((t) => t > time + blink) ?? played.scale.duration)
      : (moments.filter((t) => t < time - blink).at(-1) ?? 0);
  playhead.seek(next);
}

/** Moves by a share of the time bar. */
export function stepFilm(share: number): void {
  const { played } = store.get();
  if (played === undefined) return;
  playhead.pause();
  playhead.seek(played.scale.toTime(played.scale.toShare(playhead.time) + share));
}

/** Changes how fast the film plays. */
export function setSpeed(speed: Speed): void {
  store.patch({ speed });
}

/** Draws quiet stretches shortened or true to time. */
export function setShorten(shorten: boolean): void {
  const { played } = store.get();
  store.patch({ shorten, ...(played ? { played: { ...played, scale: scaleFor(played.result, shorten) } } : {}) });
  playhead.seek(playhead.time);
}
