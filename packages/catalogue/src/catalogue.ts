import type { DeviceRow } from "./parts/devices.ts";
import type { FittingRow } from "./parts/fittings.ts";
import type { ValveRow } from "./parts/valves.ts";
import type { PipeSeries } from "./pipes/pipeSeries.ts";
import type { PumpRow } from "./pumps/pump.ts";

/** A controller sold on its own. Price in EUR. */
export interface ControllerRow {
  id: string;
  label: string;
  price: number;
}

/** Everything a design may refer to by id: all numbers SI, prices in EUR. */
export interface Catalogue {
  readonly pumps: readonly PumpRow[];
  readonly devices: readonly DeviceRow[];
  readonly controllers: readonly ControllerRow[];
  readonly pipeSeries: readonly PipeSeries[];
  readonly fittings: readonly FittingRow[];
  readonly valves: readonly ValveRow[];
}

// Catalogues are never changed in place, so an index by id can be kept for as long as its list lives. The first row wins.
const indexes = new WeakMap<readonly object[], Map<string, object>>();

function find<Row extends { id: string }>(rows: readonly Row[], id: string): Row | undefined {
  let index = indexes.get(rows) as Map<string, Row> | undefined;
  if (index === undefined) {
    index = new Map();
    for (const row of rows) if (!index.has(row.id)) index.set(row.id, row);
    indexes.set(rows, index);
  }
  return index.get(id);
}

/** The pump with this id, or undefined.
 *  catalogue   id: text   -> PumpRow, SI
 *  Findings: none. Throws: never.
 *  Valid: a catalogue whose lists are not changed in place; of two rows with one id the first is returned.
 *  Source: as the row says.
 *  Example: findPump(demoCatalogue, "ferrow-c40").maker  ->  "Ferrow"                                          */
export function findPump(catalogue: Catalogue, id: string): PumpRow | undefined {
  return find(catalogue.pumps, id);
}

/** The device with this id, or undefined.
 *  catalogue   id: text   -> DeviceRow, SI
 *  Findings: none. Throws: never.
 *  Valid: as findPump.
 *  Source: as the row says.
 *  Example: findDevice(demoCatalogue, "chiller-600").coolingWatts  ->  600                                     */
export function findDevice(catalogue: Catalogue, id: string): DeviceRow | undefined {
  return find(catalogue.devices, id);
}

/** The separately sold controller with this id, or undefined.
 *  catalogue   id: text   -> ControllerRow, price in EUR
 *  Findings: none. Throws: never.
 *  Valid: as findPump.
 *  Source: as the row says.
 *  Example: findController(demoCatalogue, "no-such-controller") === undefined  ->  true                        */
export function findController(catalogue: Catalogue, id: string): ControllerRow | undefined {
  return find(catalogue.controllers, id);
}
