import { readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { type Design, readDesign } from "@tidewright/design";

/** The demonstration job with two return outlets and a four-branch manifold. */
export function demoDesign(): Design {
  const reading = readDesign(
    readFileSync(new URL("../examples/waiting-room-reef.json", import.meta.url), "utf8"),
    demoCatalogue,
  );
  if (!reading.ok) throw new Error(reading.problems.map((problem) => problem.message).join("; "));
  return reading.design;
}
