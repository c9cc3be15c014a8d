import type { Assessment, Lever, Ranking, RankOptions } from "@tidewright/advice";
import type { Catalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { catalogueTeller } from "../catalogue/catalogueTeller.ts";
import { currentCatalogue } from "../catalogue/currentCatalogue.ts";
import { type LatestWins, latestWins } from "./latestWins.ts";
import type { EngineAnswer, EngineRequest } from "./protocol.ts";

type Ask<Kind extends EngineRequest["kind"]> = Omit<Extract<EngineRequest, { kind: Kind }>, "id">;

/** Who is told when an answer comes; each answer comes with the very document it is about. An answer that was reckoned with
 *  another catalogue than the one in force is dropped: whoever watches the catalogue asks again. */
export interface EngineListeners {
  assessed(design: Design, result: Assessment, took: number): void;
  ranked(design: Design, result: Ranking, took: number): void;
  levered(design: Design, result: readonly Lever[], took: number): void;
  fault(asked: EngineRequest["kind"], message: string): void;
}

/** The page's end of the two workers. */
export interface EngineClient {
  assess(design: Design): void;
  rank(design: Design, options: RankOptions): void;
  levers(design: Design): void;
}

/** Starts two workers, so that ranking never stands in the way of an edit, and returns the page's end of them.
 *  listeners who is told of answers   -> EngineClient; per kind of question only the newest is kept waiting. */
export function startEngine(listeners: EngineListeners): EngineClient {
  const start = () => new Worker(new URL("./engine.worker.ts", import.meta.url), { type: "module" });
  const quick = start();
  const thorough = start();
  // Documents stay on this side, so an answer is paired with the object that was asked about and not with a copy.
  const asked = new Map<number, { readonly design: Design; readonly catalogue: Catalogue }>();
  const tellCatalogue = catalogueTeller();
  let last = 0;

  const line = <Kind extends EngineRequest["kind"]>(worker: Worker): LatestWins<Ask<Kind>> =>
    latestWins((ask) => {
      last += 1;
      asked.set(last, { design: ask.design, catalogue: tellCatalogue(worker) });
      worker.postMessage({ ...ask, id: last });
    });
  const lines = {
    assess: line<"assess">(quick),
    rank: line<"rank">(thorough),
    levers: line<"levers">(thorough),
  };

  const hear = (event: MessageEvent<EngineAnswer>) => {
    const answer = event.data;
    const about = asked.get(answer.id);
    asked.delete(answer.id);
    lines[answer.kind === "fault" ? answer.asked : answer.kind].done();
    if (about === undefined || about.catalogue !== currentCatalogue()) return;
    const { design } = about;
    if (answer.kind === "assess") listeners.assessed(design, answer.result, answer.took);
    else if (answer.kind === "rank") listeners.ranked(design, answer.result, answer.took);
    else if (answer.kind === "levers") listeners.levered(design, answer.result, answer.took);
    else listeners.fault(answer.asked, answer.message);
  };
  for (const worker of [quick, thorough]) {
    worker.onmessage = hear;
    worker.onerror = (event) =>
      listeners.fault("assess", event.message || "the engine could not be loaded; reload the page");
  }

  return {
    assess: (design) => lines.assess.ask({ kind: "assess", design }),
    rank: (design, options) => lines.rank.ask({ kind: "rank", design, options }),
    levers: (design) => lines.levers.ask({ kind: "levers", design }),
  };
}
