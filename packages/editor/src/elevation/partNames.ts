import type { Part } from "@tidewright/design";
import type { SymbolName } from "./scene.ts";

/** Returns the drafting symbol for a fitting, valve or other part by the words in its catalogue id.
 *  part one part of a run   -> symbol name
 *  Findings: none. Throws: never.
 *  Valid: any part; a fitting whose id tells nothing gets the plain mark of a joint.
 *  Source: ISO 14617-8 and ISO 10628-2 for valves and check valves; the joint marks are common practice, no source.
 *  Example: symbolOf({ kind: "fitting", fitting: "elbow90" })  ->  "elbow" */
export function symbolOf(part: Part): SymbolName {
  if (part.kind === "valve") return valveSymbol(part.valve);
  if (part.kind === "outlet") return "nozzle";
  if (part.kind === "tee") return "tee";
  if (part.kind !== "fitting") return "fitting";
  const id = part.fitting.toLowerCase();
  if (/check|nonreturn/.test(id)) return "checkValve";
  if (/elbow|bend|sweep|mitre/.test(id)) return "elbow";
  if (/union/.test(id)) return "union";
  if (/bulkhead|tankconnector/.test(id)) return "bulkhead";
  if (/reduc|enlarge|contract|expan|adapter|bush/.test(id)) return "reducer";
  if (/strain|screen|guard/.test(id)) return "strainer";
  if (/valve/.test(id)) return valveSymbol(id);
  return "fitting";
}

function valveSymbol(id: string): SymbolName {
  const words = id.toLowerCase();
  if (/check|nonreturn/.test(words)) return "checkValve";
  if (/butterfly/.test(words)) return "butterflyValve";
  if (/ball/.test(words)) return "ballValve";
  return "valve";
}

/** Returns the words for a part before an assessment has named it: "pipe", "elbow 90 × 3".
 *  part one part of a run   -> words
 *  Findings: none. Throws: never.
 *  Valid: any part.
 *  Source: own construction.
 *  Example: nameOf({ kind: "fitting", fitting: "elbow90", count: 3 })  ->  "elbow 90 × 3" */
export function nameOf(part: Part): string {
  switch (part.kind) {
    case "pipe":
      return part.series ? `pipe ${part.series}` : "pipe";
    case "fitting":
      return part.count && part.count > 1 ? `${spaced(part.fitting)} × ${part.count}` : spaced(part.fitting);
    case "valve":
      return /valve/i.test(part.valve) ? spaced(part.valve) : `${spaced(part.valve)} valve`;
    case "device":
      return spaced(part.ref);
    case "outlet":
      return part.to === "display" ? "outlet" : `outlet to ${placeName(part.to)}`;
    case "tee":
      return "tee";
  }
}

/** Returns the words for a place: "display", "overflow box", or the chamber's id.
 *  Example: placeName("sump.return")  ->  "sump, return" */
function placeName(place: string): string {
  if (place === "overflowBox") return "overflow box";
  return place.replace(".", ", ");
}

/** "elbow90LongRadius" and "elbow-90" read as words. */
function spaced(id: string): string {
  return id
    .replace(/([a-z])([A-Z0-9])/g, "$1 $2")
    .replace(/([0-9])([A-Za-z])/g, "$1 $2")
    .replace(/[-_]/g, " ")
    .toLowerCase();
}
