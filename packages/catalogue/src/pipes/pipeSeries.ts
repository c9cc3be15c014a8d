import type { Source } from "../source.ts";

/** Families of pipe that the catalogue carries. */
export type PipeFamily = "sch40" | "sch80" | "pn10" | "pn16" | "hose";

/** One size of one pipe family. Diameters and roughness in m, price in EUR per m (invented).
 *  `innerDiameter` is the average bore to calculate with; `nominalInnerDiameter` is the bore at minimum wall
 *  as many tables print it. For metric pipe and hose the two are equal. */
export interface PipeSeries {
  id: string;
  family: PipeFamily;
  label: string;
  nominal: string;
  outerDiameter: number;
  innerDiameter: number;
  nominalInnerDiameter: number;
  roughness: number;
  pricePerMetre: number;
  source: Source;
}
