import type { Catalogue } from "@tidewright/catalogue";
import { checkDesign, type DesignReading } from "./checkDesign.ts";
import { readJson } from "./readJson.ts";

/** Returns the design of a JSON text, brought up to the current version, or the complete list of its problems.
 *  text at most `longestDocument` characters   catalogue where given, references and geometry are checked as well
 *  -> DesignReading
 *  Findings: none; problems as `readJson` and `checkDesign`. Throws: never.
 *  Valid: any text.
 *  Source: own construction; RFC 8259.
 *  Example: readDesign("").problems[0].message  ->  "the document is empty"
 *  Example: readDesign("{\"tidewright\": 1,}").problems[0].fix  ->  "remove the comma" */
export function readDesign(text: string, catalogue?: Catalogue): DesignReading {
  const read = readJson(text);
  return read.ok ? checkDesign(read.value, catalogue) : read;
}
