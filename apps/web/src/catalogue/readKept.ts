import { findPump } from "@tidewright/catalogue";
import { checkKeptDesign, type DesignReading, pumpRefs } from "@tidewright/design";
import { currentCatalogue } from "./currentCatalogue.ts";
import { areRowsKnown, followShopCatalogue, readKeptRows } from "./shopRows.ts";

/** Longest wait for the shop's pumps where a design names one that is not known; then it opens without that pump, which comes
 *  in when it is heard of [ms]. */
const patience = 10_000;

/** Reads a kept document as a design of the present version. One that names a pump out of no catalogue waits until the shop
 *  has said which pumps it has; where that pump is gone all the same the design opens, and its place stands empty. */
export async function readKept(document: unknown): Promise<DesignReading> {
  const reading = checkKeptDesign(document, currentCatalogue());
  if (reading.ok) await awaitPumpsOf(reading.design);
  return reading;
}

/** Done once every pump that a design names is known, or cannot be. */
export async function awaitPumpsOf(design: unknown): Promise<void> {
  if (lacksNone(design)) return;
  await readKeptRows();
  if (lacksNone(design) || areRowsKnown()) return;
  await Promise.race([followShopCatalogue(), new Promise((done) => setTimeout(done, patience))]);
}

const lacksNone = (design: unknown): boolean =>
  pumpRefs(design).every(({ ref }) => findPump(currentCatalogue(), ref) !== undefined);
