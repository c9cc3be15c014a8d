import type { Catalogue, ControllerRow } from "../catalogue.ts";
import { demoDevices } from "../parts/devices.ts";
import { fittings } from "../parts/fittings.ts";
import { valves } from "../parts/valves.ts";
import { pipeSeries } from "../pipes/allPipeSeries.ts";
import { demoPumps } from "./demoPumps.ts";

/** Controllers that the demonstration pumps need and that are sold on their own; prices in EUR.
 *  Result: readonly array of ControllerRow.
 *  Findings: none. Throws: never.
 *  Valid: the demonstration catalogue.
 *  Source: invented.
 *  Example: demoControllers.length  ->  4                                                                      */
export const demoControllers: readonly ControllerRow[] = [
  { id: "ferrow-dial", label: "Ferrow speed dial", price: 79 },
  { id: "ostwick-box", label: "Ostwick speed box", price: 45 },
  { id: "tarnhelm-panel", label: "Tarnhelm control panel", price: 149 },
  { id: "tarnhelm-wave", label: "Tarnhelm wave panel", price: 119 },
];

/** The demonstration catalogue: 72 invented pumps, devices, controllers, and all pipe, fittings and valves; SI, EUR.
 *  Result: Catalogue.
 *  Findings: none; it passes `checkCatalogue` without an error. Throws: never.
 *  Valid: for demonstration and tests; no row describes a real product.
 *  Source: pumps, devices and prices invented; pipe, fittings and valves as their rows say.
 *  Example: demoCatalogue.pumps.length  ->  72                                                                 */
export const demoCatalogue: Catalogue = {
  pumps: demoPumps,
  devices: demoDevices,
  controllers: demoControllers,
  pipeSeries,
  fittings,
  valves,
};
