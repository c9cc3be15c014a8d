import type { SafetyLever, SafetySweep, Scenario, WhatIf } from "@tidewright/advice";
import type { Catalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { catalogueTeller } from "../catalogue/catalogueTeller.ts";
import { currentCatalogue } from "../catalogue/currentCatalogue.ts";
import { latestWins } from "../engine/latestWins.ts";
import { words } from "../words/useWords.ts";
import type { FilmAnswer, FilmRequest } from "./filmProtocol.ts";

/** Who is told when an answer comes; each answer comes with the very document and scenario it is about, and one that was
 *  reckoned with another catalogue than the one in force is dropped. */
export interface FilmListeners {
  played(design: Design, scenario: Scenario, result: WhatIf): void;
  progress(design: Design, done: number, of: number): void;
  swept(design: Design, result: SafetySweep): void;
  levered(design: Design, result: readonly SafetyLever[]): void;
  fault(asked: FilmRequest["kind"], message: string): void;
}

/** The page's end of the workers that simulate over time. */
export interface FilmClient {
  whatIf(design: Design, scenario: Scenario): void;
  /** Sweeps a document; a sweep of another one that still runs is broken off. */
  sweep(design: Design): void;
  levers(design: Design, sweep: SafetySweep): void;
  /** Breaks off a sweep or a search for levers that is about another document than this, or an older catalogue. */
  dropOthers(design: Design): void;
}

/** Starts a worker for films, at once so that it is warm when asked, and one for sweeps when first needed: a film never waits
 *  for a sweep.
 *  listeners who is told of answers   -> FilmClient */
export function startFilm(listeners: FilmListeners): FilmClient {
  const start = () => {
    const worker = new Worker(new URL("./film.worker.ts", import.meta.url), { type: "module" });
    worker.onmessage = hear;
    worker.onerror = (event) => listeners.fault("whatIf", event.message || words().say("film.notLoaded"));
    return worker;
  };
  // Documents stay on this side, so an answer is paired with the object that was asked about and not with a copy.
  const asked = new Map<number, Asked>();
  const tellCatalogue = catalogueTeller();
  let last = 0;
  let sweeper: Worker | undefined;
  /** What the sweeper is busy with, by id. */
  let busy = new Set<number>();

  const post = (worker: Worker, request: DistributiveOmit<FilmRequest, "id">): number => {
    last += 1;
    const catalogue = tellCatalogue(worker);
    asked.set(last, {
      catalogue,
      design: request.design,
      scenario: "scenario" in request ? request.scenario : undefined,
    });
    worker.postMessage({ ...request, id: last });
    return last;
  };

  function hear(event: MessageEvent<FilmAnswer>): void {
    const answer = event.data;
    const about = asked.get(answer.id);
    if (answer.kind === "progress") {
      if (isCurrent(about)) listeners.progress(about.design, answer.done, answer.of);
      return;
    }
    asked.delete(answer.id);
    busy.delete(answer.id);
    if (answer.kind === "whatIf" || (answer.kind === "fault" && answer.asked === "whatIf")) films.done();
    if (!isCurrent(about)) return;
    if (answer.kind === "fault") listeners.fault(answer.asked, answer.message);
    const { design, scenario } = about;
    if (answer.kind === "sweep") listeners.swept(design, answer.result);
    if (answer.kind === "levers") listeners.levered(design, answer.result);
    if (answer.kind === "whatIf" && scenario !== undefined) listeners.played(design, scenario, answer.result);
  }

  const player = start();
  const films = latestWins<{ readonly design: Design; readonly scenario: Scenario }>((ask) => {
    post(player, { kind: "whatIf", ...ask });
  });

  /** A sweep does not listen while it runs: the only way to break it off is to end its worker. */
  const drop = () => {
    sweeper?.terminate();
    sweeper = undefined;
    for (const id of busy) asked.delete(id);
    busy = new Set();
  };
  const dropOthers = (design: Design) => {
    if ([...busy].some((id) => asked.get(id)?.design !== design || !isCurrent(asked.get(id)))) drop();
  };
  const onSweeper = (request: DistributiveOmit<FilmRequest, "id">) => {
    dropOthers(request.design);
    sweeper ??= start();
    busy.add(post(sweeper, request));
  };

  return {
    whatIf: (design, scenario) => films.ask({ design, scenario }),
    sweep: (design) => onSweeper({ kind: "sweep", design }),
    levers: (design, sweep) => onSweeper({ kind: "levers", design, sweep }),
    dropOthers,
  };
}

/** What was asked, and with which catalogue it is answered. */
interface Asked {
  readonly catalogue: Catalogue;
  readonly design: Design;
  readonly scenario: Scenario | undefined;
}

const isCurrent = (about: Asked | undefined): about is Asked => about?.catalogue === currentCatalogue();

type DistributiveOmit<Union, Key extends string> = Union extends unknown ? Omit<Union, Key> : never;
