import type { Source } from "../source.ts";
import { astmAverageBore, boreAtMinimumWall } from "./averageBore.ts";
import type { PipeFamily, PipeSeries } from "./pipeSeries.ts";
import { astmTable, hoseTable, metricTable } from "./pipeTables.ts";

const inch = 0.0254;
/** PVC, glass and drawn tubing [m]: Moody 1944. */
const plasticRoughness = 1.5e-6;
/** Smooth rubber or vinyl hose [m]: handbooks from memory say 1e-5 to 7e-5; the geometric middle is taken. */
const hoseRoughness = 2.6e-5;

const astmSource: Source = {
  title: "ASTM D1785, PVC Plastic Pipe, Schedules 40, 80 and 120; roughness: Moody 1944",
  where: "tables of outside diameter and wall thickness; average bore = OD - 2 (minimum wall + half the tolerance)",
  status: "published",
};
const metricSource: Source = {
  title: "EN ISO 1452-2 and EN ISO 15493, PVC-U pressure pipe; roughness: Moody 1944",
  where: "wall = dn / SDR rounded up to 0.1 mm; which SDR is sold as which PN is from memory",
  status: "published",
};
const hoseSource: Source = {
  title: "Hose bores as sold by the metre; roughness 1e-5 to 7e-5 m from memory",
  status: "common practice",
};

function astmSeries(family: "sch40" | "sch80", schedule: string): PipeSeries[] {
  return astmTable.map((row) => {
    const outer = row.outer * inch;
    const wall = (family === "sch40" ? row.wall40 : row.wall80) * inch;
    return {
      id: `${family}-${row.size}`,
      family,
      label: `${row.label} Schedule ${schedule}`,
      nominal: row.label,
      outerDiameter: outer,
      innerDiameter: astmAverageBore(outer, wall),
      nominalInnerDiameter: boreAtMinimumWall(outer, wall),
      roughness: plasticRoughness,
      pricePerMetre: family === "sch40" ? row.price40 : row.price80,
      source: astmSource,
    };
  });
}

function metricSeries(family: "pn10" | "pn16", pressure: string): PipeSeries[] {
  return metricTable.flatMap((row) => {
    const wall = family === "pn16" ? row.wall16 : row.wall10;
    const price = family === "pn16" ? row.price16 : row.price10;
    if (wall === undefined || price === undefined) return [];
    const bore = boreAtMinimumWall(row.outer, wall) / 1000;
    return [
      {
        id: `${family}-${row.outer}`,
        family,
        label: `${row.outer} mm ${pressure}`,
        nominal: `${row.outer} mm`,
        outerDiameter: row.outer / 1000,
        innerDiameter: bore,
        nominalInnerDiameter: bore,
        roughness: plasticRoughness,
        pricePerMetre: price,
        source: metricSource,
      },
    ];
  });
}

function hoseSeries(): PipeSeries[] {
  return hoseTable.map((row) => ({
    id: `hose-${row.bore}`,
    family: "hose",
    label: `${row.bore} mm hose`,
    nominal: `${row.bore} mm bore`,
    outerDiameter: row.outer / 1000,
    innerDiameter: row.bore / 1000,
    nominalInnerDiameter: row.bore / 1000,
    roughness: hoseRoughness,
    pricePerMetre: row.price,
    source: hoseSource,
  }));
}

/** Every pipe size of the catalogue, family by family, each family from small to large; diameters in m.
 *  Result: readonly array of PipeSeries. Ids: sch40-0.5 … sch40-4, sch80-…, pn10-32 … 110, pn16-20 … 110, hose-12 … 50.
 *  Findings: none. Throws: never.
 *  Valid: average bores within 0.0005 in (ASTM) and 0.2 mm (metric) of published tables.
 *  Source: ASTM D1785; EN ISO 1452-2 and EN ISO 15493; hose: common practice, no source; prices invented.
 *  Example: pipeSeries.length  ->  41                                                                          */
export const pipeSeries: readonly PipeSeries[] = [
  ...astmSeries("sch40", "40"),
  ...astmSeries("sch80", "80"),
  ...metricSeries("pn10", "PN 10"),
  ...metricSeries("pn16", "PN 16"),
  ...hoseSeries(),
];

const byId = new Map(pipeSeries.map((series) => [series.id, series]));
const families = new Map<PipeFamily, PipeSeries[]>();
for (const series of pipeSeries) families.set(series.family, [...(families.get(series.family) ?? []), series]);

/** The pipe size with this id, or undefined.
 *  id: text, as in sch40-1 or pn16-32   -> PipeSeries, diameters in m
 *  Findings: none. Throws: never.
 *  Valid: ids of pipeSeries.
 *  Source: as the row says.
 *  Example: findPipeSeries("sch40-1").innerDiameter  ->  0.0261366                                             */
export function findPipeSeries(id: string): PipeSeries | undefined {
  return byId.get(id);
}

/** The next larger size of the same family, or undefined for the largest and for an unknown id.
 *  id: text   -> PipeSeries, diameters in m
 *  Findings: none. Throws: never.
 *  Valid: ids of pipeSeries.
 *  Source: order of the tables.
 *  Example: nextSizeUp("pn16-32").id  ->  "pn16-40"                                                            */
export function nextSizeUp(id: string): PipeSeries | undefined {
  return neighbour(id, 1);
}

/** The next smaller size of the same family, or undefined for the smallest and for an unknown id.
 *  id: text   -> PipeSeries, diameters in m
 *  Findings: none. Throws: never.
 *  Valid: ids of pipeSeries.
 *  Source: order of the tables.
 *  Example: nextSizeDown("sch80-1").id  ->  "sch80-0.75"                                                       */
export function nextSizeDown(id: string): PipeSeries | undefined {
  return neighbour(id, -1);
}

function neighbour(id: string, step: number): PipeSeries | undefined {
  const series = byId.get(id);
  if (series === undefined) return undefined;
  const family = families.get(series.family) ?? [];
  return family[family.indexOf(series) + step];
}
