import type { Catalogue, PipeSeries } from "@tidewright/catalogue";
import { practice } from "./practice.ts";

/** Returns the sizes of return pipe of the customer's kind from the smallest that keeps the speed at the aimed flow on, small to large.
 *  catalogue   us inch sizes   flow [m3/s]   -> PipeSeries[], at least one. Source: V = Q / A; limit common practice, no source. */
export function returnPipes(catalogue: Catalogue, us: boolean, flow: number): PipeSeries[] {
  const family = us ? "sch40" : "pn16";
  const all = catalogue.pipeSeries.filter((series) => series.family === family);
  const fitting = all.filter(
    ({ innerDiameter }) => flow / ((Math.PI / 4) * innerDiameter ** 2) <= practice.returnSpeed,
  );
  return fitting.length > 0 ? fitting : all.slice(-1);
}
