import type { Catalogue } from "@tidewright/catalogue";
import type { Problem } from "../problem.ts";
import { lineProblems } from "./lineProblems.ts";
import { overflowSiphonProblems } from "./overflowSiphonProblems.ts";
import { topOffProblems } from "./topOffProblems.ts";
import { vesselProblems } from "./vesselProblems.ts";
import { wishProblems } from "./wishProblems.ts";

/** Returns what in a design does not fit together: names that are in no catalogue, places that are not there, runs that
 *  end nowhere, parts without a size, sizes that exclude each other; complete.
 *  design a Design, or any document of that shape with mistakes in it   catalogue   gone ids of pumps that may be missing
 *  from it   -> Problem[]; none for a sound design
 *  Findings: none. Throws: never.
 *  Valid: parts that the schema does not allow are passed over: `checkDesign` names them, and with a catalogue does both.
 *  Source: own construction.
 *  Example: checkReferences({ wishes: { totalTurnover: [{ value: 9, unit: "1/h" }, { value: 5, unit: "1/h" }] } }, { pumps: [], devices: [], controllers: [], pipeSeries: [], fittings: [], valves: [] })[0].path  ->  "/wishes/totalTurnover" */
export function checkReferences(
  design: unknown,
  catalogue: Catalogue,
  gone: ReadonlySet<string> = new Set(),
): Problem[] {
  const problems: Problem[] = [];
  const add = (problem: Problem) => {
    problems.push(problem);
  };
  vesselProblems(design, add);
  overflowSiphonProblems(design, add);
  topOffProblems(design, add);
  lineProblems(design, catalogue, add, gone);
  wishProblems(design, add);
  return problems;
}
