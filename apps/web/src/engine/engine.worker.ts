import "../quietZod.ts";
import { assess, levers, rank } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { type CatalogueMessage, catalogueOf } from "../catalogue/catalogueMessage.ts";
import type { EngineAnswer, EngineRequest } from "./protocol.ts";

let catalogue = demoCatalogue;

/** Answers one request; a broken invariant becomes an answer too, because a silent worker would look like a slow one. */
function answer(request: EngineRequest): EngineAnswer {
  const started = performance.now();
  const took = () => performance.now() - started;
  const { id } = request;
  try {
    if (request.kind === "assess") {
      const result = assess(request.design, catalogue);
      return { kind: "assess", id, took: took(), result };
    }
    if (request.kind === "rank") {
      const result = rank(request.design, catalogue, request.options);
      return { kind: "rank", id, took: took(), result };
    }
    const result = levers(request.design, catalogue);
    return { kind: "levers", id, took: took(), result };
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    return { kind: "fault", id, asked: request.kind, message };
  }
}

self.onmessage = ({ data }: MessageEvent<EngineRequest | CatalogueMessage>) => {
  if (data.kind === "catalogue") catalogue = catalogueOf(data);
  else self.postMessage(answer(data));
};
