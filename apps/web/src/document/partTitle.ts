import type { Design } from "@tidewright/design";
import { partForm } from "./partForm.ts";

/** Returns the words for the part of a design that a JSON Pointer leads into: that of "/drains/0/run/1/length" is the
 *  pipe's; what belongs to no part is the job's. */
export function partTitle(design: Design, path: string): string {
  return partForm(design, path)?.title ?? design.name;
}
