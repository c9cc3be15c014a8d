import {
  type Catalogue,
  demoCatalogue,
  type PriceFactors,
  type PumpRow,
  withOwnPumps,
  withShopPrices,
} from "@tidewright/catalogue";

/** Tells a worker which pumps the shop has besides those that come with the program, and what it sells those for. */
export interface CatalogueMessage {
  readonly kind: "catalogue";
  readonly pumps: readonly PumpRow[];
  readonly prices: PriceFactors;
}

/** Returns what comes with the program at a shop's prices. */
export const programAt = (prices: PriceFactors): Catalogue => withShopPrices(demoCatalogue, prices);

/** Returns the catalogue that a message tells of. */
export const catalogueOf = ({ pumps, prices }: CatalogueMessage): Catalogue => withOwnPumps(programAt(prices), pumps);
