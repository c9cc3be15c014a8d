import "../quietZod.ts";
import { safetyLevers, safetySweep, whatIf } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import type { FilmAnswer, FilmRequest } from "./filmProtocol.ts";

const tell = (answer: FilmAnswer) => self.postMessage(answer);

/** Answers one request; a broken invariant becomes an answer too, because a silent worker would look like a slow one. */
function answer(request: FilmRequest): FilmAnswer {
  const { id, design } = request;
  try {
    if (request.kind === "whatIf")
      return { kind: "whatIf", id, result: whatIf(design, demoCatalogue, request.scenario) };
    if (request.kind === "sweep") {
      const progress = (done: number, of: number) => tell({ kind: "progress", id, done, of });
      return { kind: "sweep", id, result: safetySweep(design, demoCatalogue, { progress }) };
    }
    return { kind: "levers", id, result: safetyLevers(design, demoCatalogue, request.sweep) };
  } catch (error) {
    return { kind: "fault", id, asked: request.kind, message: error instanceof Error ? error.message : String(error) };
  }
}

self.onmessage = (event: MessageEvent<FilmRequest>) => tell(answer(event.data));
