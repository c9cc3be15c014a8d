import "../quietZod.ts";
import { safetyLevers, safetySweep, whatIf } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { type CatalogueMessage, catalogueOf } from "../catalogue/catalogueMessage.ts";
import type { FilmAnswer, FilmRequest } from "./filmProtocol.ts";

let catalogue = demoCatalogue;

const tell = (answer: FilmAnswer) => self.postMessage(answer);

/** Answers one request; a broken invariant becomes an answer too, because a silent worker would look like a slow one. */
function answer(request: FilmRequest): FilmAnswer {
  const { id, design } = request;
  try {
    if (request.kind === "whatIf") return { kind: "whatIf", id, result: whatIf(design, catalogue, request.scenario) };
    if (request.kind === "sweep") {
      const progress = (done: number, of: number) => tell({ kind: "progress", id, done, of });
      return { kind: "sweep", id, result: safetySweep(design, catalogue, { progress }) };
    }
    return { kind: "levers", id, result: safetyLevers(design, catalogue, request.sweep) };
  } catch (error) {
    return { kind: "fault", id, asked: request.kind, message: error instanceof Error ? error.message : String(error) };
  }
}

self.onmessage = ({ data }: MessageEvent<FilmRequest | CatalogueMessage>) => {
  if (data.kind === "catalogue") catalogue = catalogueOf(data);
  else tell(answer(data));
};
