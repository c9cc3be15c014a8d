import type { Catalogue } from "@tidewright/catalogue";

/** Returns the currency of a catalogue's prices: that of its pumps, which is one for all rows.
 *  catalogue   -> ISO 4217 code; EUR where it lists no pump. Source: as the rows say. */
export function priceCurrency({ pumps }: Pick<Catalogue, "pumps">): string {
  return pumps[0]?.currency ?? "EUR";
}
