import type { Design } from "@tidewright/design";
import { valueAt } from "@tidewright/design";
import { words } from "../words/useWords.ts";
import type { PartList } from "./fields.ts";

/** Returns a new entry for a list that the drawing does not add to by itself: a circuit, a zone, a first pipe.
 *  design   list   -> value that makes sense as it is */
export function newEntry(design: Design, list: PartList): unknown {
  const { say } = words();
  const number = ((valueAt(design, list.path) ?? []) as readonly unknown[]).length + 1;
  switch (list.of) {
    case "circuit":
      return { name: `${say("drawing.list.circuit")} ${number}`, rating: { value: 16, unit: "A" } };
    case "zone":
      return { name: `${say("drawing.list.zone")} ${number}`, animals: "mixedReef" };
    default:
      return { kind: "pipe", series: "pn16-32", length: { value: 300, unit: "mm" } };
  }
}
