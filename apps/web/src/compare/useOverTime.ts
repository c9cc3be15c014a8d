import type { SafetySweep } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { useEffect, useState } from "react";
import { catalogueTeller } from "../catalogue/catalogueTeller.ts";
import type { FilmAnswer, FilmRequest } from "../film/filmProtocol.ts";

/** What happens over time to each document of which it is known. */
export type OverTime = ReadonlyMap<Design, SafetySweep>;

const nothing: OverTime = new Map();

/** Plays every scenario of some documents beside the page, one document after the other.
 *  designs the same list for as long as they are the same, and another one where the catalogue is another   -> OverTime */
export function useOverTime(designs: readonly Design[]): OverTime {
  const [known, setKnown] = useState(nothing);
  useEffect(() => {
    setKnown(nothing);
    if (designs.length === 0) return;
    const film = new Worker(new URL("../film/film.worker.ts", import.meta.url), { type: "module" });
    film.onmessage = ({ data }: MessageEvent<FilmAnswer>) => {
      const design = designs[data.id];
      if (data.kind === "sweep" && design !== undefined) setKnown((before) => new Map(before).set(design, data.result));
    };
    catalogueTeller()(film);
    for (const [id, design] of designs.entries()) film.postMessage({ kind: "sweep", id, design } satisfies FilmRequest);
    return () => film.terminate();
  }, [designs]);
  return known;
}
