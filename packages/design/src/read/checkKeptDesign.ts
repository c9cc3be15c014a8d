import { type Catalogue, findPump } from "@tidewright/catalogue";
import { pumpRefs } from "../references/pumpRefs.ts";
import { checkDesign, type DesignReading } from "./checkDesign.ts";

/** Returns a design that was kept before as `checkDesign` does, but for pumps that were taken out of the catalogue since:
 *  a design outlives its pump. A place whose pump is gone is reckoned without one, and `assess` says so.
 *  value what was kept, or what was made of it   catalogue   before documents whose pumps may be gone; the value itself
 *  where left out   -> DesignReading; a pump that is missing and that none of `before` names is a problem as ever
 *  Findings: none. Throws: never.
 *  Valid: any value.
 *  Source: own construction (decision 0024).
 *  Example: checkKeptDesign({ tidewright: 9 }, { pumps: [], devices: [], controllers: [], pipeSeries: [], fittings: [], valves: [] }).problems[0].path  ->  "/tidewright" */
export function checkKeptDesign(
  value: unknown,
  catalogue: Catalogue,
  before: readonly unknown[] = [value],
): DesignReading {
  const gone = new Set(
    before.flatMap(pumpRefs).flatMap(({ ref }) => (findPump(catalogue, ref) === undefined ? [ref] : [])),
  );
  return checkDesign(value, catalogue, gone);
}
