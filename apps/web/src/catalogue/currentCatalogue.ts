import { type Catalogue, type PriceFactors, type PumpRow, readOwnPumps, withOwnPumps } from "@tidewright/catalogue";
import { useSyncExternalStore } from "react";
import { programAt } from "./catalogueMessage.ts";
import { type OwnPumpRow, presentRows, watchRows } from "./shopRows.ts";
import { presentTerms, watchTerms } from "./shopTerms.ts";

interface InForce {
  readonly rows: readonly OwnPumpRow[];
  readonly prices: PriceFactors;
  readonly own: readonly PumpRow[];
  /** What comes with the program, at the shop's prices. */
  readonly program: Catalogue;
  readonly catalogue: Catalogue;
}

const asListed: PriceFactors = {};
let inForce: InForce | undefined;

function present(): InForce {
  const rows = presentRows();
  const prices = presentTerms()?.priceMultipliers ?? asListed;
  // Rows may be there before this file is: the page asks for them while its code is under way.
  if (inForce === undefined || inForce.rows !== rows || !sameFactors(inForce.prices, prices)) {
    // A row of a restored backup or of a newer server may be none that can be computed with; the others stand.
    const own = inForce?.rows === rows ? inForce.own : readOwnPumps(rows).pumps;
    const program = programAt(prices);
    inForce = { rows, prices, own, program, catalogue: withOwnPumps(program, own) };
  }
  return inForce;
}

/** Another of the shop's terms may have changed, which must not set everything to work that prices designs. */
function sameFactors(one: PriceFactors, other: PriceFactors): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}

/** The catalogue that designs are checked and reckoned with at this moment: the shop's own pumps, then those that come with
 *  the program at the shop's prices. The same object until one of the two changes, so that it can be compared. */
export const currentCatalogue = (): Catalogue => present().catalogue;

/** The shop's own pumps of that catalogue, for a worker that has the rest itself. */
export const currentOwnPumps = (): readonly PumpRow[] => present().own;

/** The shop's prices as factors of those that come with the program, for the same. */
export const currentPriceFactors = (): PriceFactors => present().prices;

/** Tells of every change of the catalogue in force; returns how to stop it. */
export function watchCatalogue(listener: () => void): () => void {
  let last = currentCatalogue();
  const heard = () => {
    const now = currentCatalogue();
    if (now === last) return;
    last = now;
    listener();
  };
  const stops = [watchRows(heard), watchTerms(heard)];
  return () => {
    for (const stop of stops) stop();
  };
}

/** Returns what comes with the program, at the shop's prices, and renders again when those change. */
export function useProgramCatalogue(): Catalogue {
  const now = () => present().program;
  return useSyncExternalStore(watchCatalogue, now, now);
}

/** Returns the catalogue in force and renders again when it changes. */
export function useCatalogue(): Catalogue {
  return useSyncExternalStore(watchCatalogue, currentCatalogue, currentCatalogue);
}
