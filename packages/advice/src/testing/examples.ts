import { readdirSync, readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { type Design, readDesign } from "@tidewright/design";

const folder = new URL("../../../../examples/", import.meta.url);

/** The demonstration jobs and the golden designs, as `example` takes them. */
export const exampleFiles: readonly string[] = ["", "golden/"].flatMap((under) =>
  readdirSync(new URL(under || ".", folder))
    .filter((name) => name.endsWith(".json"))
    .map((name) => under + name),
);

/** Returns a design of `examples/` as a test wants it: a fresh one that it may change at will, read as a file is read.
 *  Throws: with all its problems, where it no longer reads. */
export function example(file: string, change: (design: Design) => void = () => {}): Design {
  const draft = JSON.parse(readFileSync(new URL(file, folder), "utf8")) as Design;
  change(draft);
  const reading = readDesign(JSON.stringify(draft), demoCatalogue);
  if (!reading.ok) throw new Error(`${file}: ${JSON.stringify(reading.problems, null, 1)}`);
  return reading.design;
}
