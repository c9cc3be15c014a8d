import { type Catalogue, demoCatalogue, type PumpRow, withOwnPumps } from "@tidewright/catalogue";

/** Tells a worker which pumps the shop has besides those that come with the program. */
export interface CatalogueMessage {
  readonly kind: "catalogue";
  readonly pumps: readonly PumpRow[];
}

/** Returns the catalogue that a message tells of. */
export const catalogueOf = ({ pumps }: CatalogueMessage): Catalogue => withOwnPumps(demoCatalogue, pumps);
