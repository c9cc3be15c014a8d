import type { Catalogue } from "./catalogue.ts";
import type { PumpRow } from "./pumps/pump.ts";

/** Returns a catalogue with a shop's own pumps before its others, so that of two with one id the shop's own is found.
 *  catalogue   pumps own ones in SI   -> Catalogue; the very catalogue given where there are none
 *  Findings: none. Throws: never.
 *  Valid: pumps that `readOwnPumps` let through; the catalogue given is not changed.
 *  Source: own construction.
 *  Example: withOwnPumps(demoCatalogue, [{ ...findPump(demoCatalogue, "ferrow-c40"), id: "house-1" }]).pumps.length  ->  73 */
export function withOwnPumps(catalogue: Catalogue, pumps: readonly PumpRow[]): Catalogue {
  return pumps.length === 0 ? catalogue : { ...catalogue, pumps: [...pumps, ...catalogue.pumps] };
}
