import { checkDesign } from "@tidewright/design";
import type { App } from "../app.ts";
import { badInput } from "../doors/refusal.ts";
import { shopCatalogue } from "./shopCatalogue.ts";

/** Refuses a document that cannot be read as a design, with every problem it has.
 *  app, whose shop's pumps it may refer to; document as sent under "document"
 *  Throws: `Refused` 422. */
export async function checkDocument(app: App, document: unknown): Promise<void> {
  const reading = checkDesign(document, await shopCatalogue(app.store));
  if (!reading.ok) throw badInput(reading.problems.map((each) => ({ ...each, path: `/document${each.path}` })));
}
