import type { Assessment, SafetySweep } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { catalogueTeller } from "../catalogue/catalogueTeller.ts";
import type { EngineAnswer, EngineRequest } from "../engine/protocol.ts";
import type { FilmAnswer, FilmRequest } from "../film/filmProtocol.ts";

/** What is known of a design so far: its numbers, and what happens over time. */
export interface Reckoned {
  readonly assessment: Assessment | undefined;
  readonly sweep: SafetySweep | undefined;
  /** True where our own code failed. */
  readonly fault: boolean;
}

/** Reckons a design beside the page and tells each answer when it is there; returns how to stop. */
export function reckon(design: Design, tell: (reckoned: Reckoned) => void): () => void {
  let known: Reckoned = { assessment: undefined, sweep: undefined, fault: false };
  const learn = (more: Partial<Reckoned>) => {
    known = { ...known, ...more };
    tell(known);
  };
  tell(known);
  const tellCatalogue = catalogueTeller();
  const engine = new Worker(new URL("../engine/engine.worker.ts", import.meta.url), { type: "module" });
  const film = new Worker(new URL("../film/film.worker.ts", import.meta.url), { type: "module" });
  engine.onmessage = ({ data }: MessageEvent<EngineAnswer>) => {
    if (data.kind === "assess") {
      learn({ assessment: data.result });
      // One at a time: on a phone the drawing must not wait for what happens over time.
      tellCatalogue(film);
      film.postMessage({ kind: "sweep", id: 1, design } satisfies FilmRequest);
    } else if (data.kind === "fault") learn({ fault: true });
  };
  engine.onerror = () => learn({ fault: true });
  film.onmessage = ({ data }: MessageEvent<FilmAnswer>) => {
    if (data.kind === "sweep") learn({ sweep: data.result });
  };
  tellCatalogue(engine);
  engine.postMessage({ kind: "assess", id: 1, design } satisfies EngineRequest);
  return () => {
    engine.terminate();
    film.terminate();
  };
}
