import type { Catalogue } from "@tidewright/catalogue";

const rowOf = <Row extends { id: string }>(rows: readonly Row[], id: string): Row | undefined =>
  rows.find((row) => row.id === id);

/** Returns what a metre of pipe costs in a catalogue [EUR/m], 0 where it lists no such pipe. Source: as the row says. */
export const pipePrice = ({ pipeSeries }: Catalogue, id: string): number => rowOf(pipeSeries, id)?.pricePerMetre ?? 0;

/** Returns what a fitting of 25 mm bore costs in a catalogue [EUR], 0 where it lists no such fitting. Source: as the row says. */
export const fittingPriceAt25mm = ({ fittings }: Catalogue, id: string): number =>
  rowOf<{ id: string; priceAt25mm: number }>(fittings, id)?.priceAt25mm ?? 0;

/** Returns what a valve of 25 mm bore costs in a catalogue [EUR], 0 where it lists no such valve. Source: as the row says. */
export const valvePriceAt25mm = ({ valves }: Catalogue, id: string): number =>
  rowOf<{ id: string; priceAt25mm: number }>(valves, id)?.priceAt25mm ?? 0;
