import { checkDesign, checkKeptDesign } from "@tidewright/design";
import type { App } from "../app.ts";
import { badInput } from "../doors/refusal.ts";
import { shopCatalogue } from "./shopCatalogue.ts";

/** Refuses a document that cannot be read as a design, with every problem it has.
 *  app, whose shop's pumps it may refer to; document as sent under "document"; before what reads the document that it was
 *  made from, whose pumps it may keep though they are gone from the catalogue (decision 0024)
 *  Throws: `Refused` 422. */
export async function checkDocument(app: App, document: unknown, before?: () => Promise<unknown>): Promise<void> {
  const catalogue = await shopCatalogue(app.store);
  let reading = checkDesign(document, catalogue);
  // Most documents name no pump that is gone, and are checked without reading another one.
  if (!reading.ok && before !== undefined) reading = checkKeptDesign(document, catalogue, [await before()]);
  if (!reading.ok) throw badInput(reading.problems.map((each) => ({ ...each, path: `/document${each.path}` })));
}
