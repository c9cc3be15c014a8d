import { type Catalogue, demoCatalogue, type PumpRow, readOwnPumps, withOwnPumps } from "@tidewright/catalogue";
import { useSyncExternalStore } from "react";
import { type OwnPumpRow, presentRows, watchRows } from "./shopRows.ts";

interface InForce {
  readonly rows: readonly OwnPumpRow[];
  readonly own: readonly PumpRow[];
  readonly catalogue: Catalogue;
}

let inForce: InForce | undefined;

function present(): InForce {
  const rows = presentRows();
  // Rows may be there before this file is: the page asks for them while its code is under way.
  if (inForce?.rows !== rows) {
    // A row of a restored backup or of a newer server may be none that can be computed with; the others stand.
    const own = readOwnPumps(rows).pumps;
    inForce = { rows, own, catalogue: withOwnPumps(demoCatalogue, own) };
  }
  return inForce;
}

/** The catalogue that designs are checked and reckoned with at this moment: the shop's own pumps, then those that come with
 *  the program. The same object until the shop's pumps change, so that it can be compared. */
export const currentCatalogue = (): Catalogue => present().catalogue;

/** The shop's own pumps of that catalogue, for a worker that has the rest itself. */
export const currentOwnPumps = (): readonly PumpRow[] => present().own;

/** Returns the catalogue in force and renders again when it changes. */
export function useCatalogue(): Catalogue {
  return useSyncExternalStore(watchRows, currentCatalogue, currentCatalogue);
}
