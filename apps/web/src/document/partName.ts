import { findDevice, findFitting, findPipeSeries, findPump, findValve } from "@tidewright/catalogue";
import type { Part } from "@tidewright/design";
import { currentCatalogue } from "../catalogue/currentCatalogue.ts";
import { words } from "../words/useWords.ts";

/** Returns the words for one part of a run as its catalogue row has them: "32 mm PN 16", "90° elbow × 3". */
export function partName(part: Part): string {
  const { say, known } = words();
  switch (part.kind) {
    case "pipe":
      return part.series === undefined
        ? say("parts.pipeOwn")
        : known(findPipeSeries(part.series)?.label ?? part.series);
    case "fitting": {
      const label = known(findFitting(part.fitting)?.label ?? part.fitting);
      return part.count !== undefined && part.count > 1 ? `${label} × ${part.count}` : label;
    }
    case "valve":
      return known(findValve(part.valve)?.label ?? part.valve);
    case "device":
      return known(findDevice(currentCatalogue(), part.ref)?.label ?? part.ref);
    case "outlet":
      return say("parts.outletTo", { place: placeWords(part.to) });
    case "tee":
      return say("parts.teeInto", { count: String(part.branches.length) });
  }
}

/** Returns the words for a place: "the display", "the overflow box", "sump chamber return". */
export function placeWords(place: string): string {
  const { say } = words();
  if (place === "display") return say("parts.place.display");
  if (place === "overflowBox") return say("parts.place.overflowBox");
  return say("parts.place.chamber", { name: place.replace(/^sump\./, "") });
}

/** Returns the maker and model of a pump by its catalogue id, or the id itself. */
export function pumpName(ref: string | undefined): string {
  if (ref === undefined) return words().say("parts.noPump");
  const pump = findPump(currentCatalogue(), ref);
  return pump === undefined ? ref : `${pump.maker} ${pump.model}`;
}

/** Returns the words for a value that the document keeps as one word: "ventedStandpipe", "inSump". */
export function valueWords(value: string): string {
  const key = `parts.value.${value}`;
  const { knows, say } = words();
  return knows(key) ? say(key) : value;
}
