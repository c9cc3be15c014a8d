import type { Catalogue } from "@tidewright/catalogue";

/** Returns the currency of a catalogue's prices: that of its pumps, which is the same for all rows. */
export function catalogueCurrency(catalogue: Catalogue): string {
  return catalogue.pumps[0]?.currency ?? "EUR";
}
