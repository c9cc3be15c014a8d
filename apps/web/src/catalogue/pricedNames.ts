import { demoCatalogue, type PricedKind, pricedKinds } from "@tidewright/catalogue";

// Read on demand by a page that needs no catalogue otherwise.

const makers = new Map(
  [...demoCatalogue.pumps, ...demoCatalogue.devices].map(({ maker }) => [maker.toLocaleLowerCase("en"), maker]),
);

/** What a factor on prices is named after: a kind of parts, a maker in the catalogue's spelling, or neither. */
export type PricedName =
  | { readonly of: "kind"; readonly name: PricedKind }
  | { readonly of: "maker"; readonly name: string }
  | { readonly of: "nothing"; readonly name: string };

/** Returns what a name means among prices, in letters large or small.
 *  text as typed or kept   kindWords what the reader calls each kind, besides its name in the settings   -> PricedName */
export function pricedName(text: string, kindWords: (kind: PricedKind) => string): PricedName {
  const name = text.trim();
  const folded = name.toLocaleLowerCase("en");
  const kind = pricedKinds.find((each) => each === folded || kindWords(each).toLocaleLowerCase("en") === folded);
  if (kind !== undefined) return { of: "kind", name: kind };
  const maker = makers.get(folded);
  return maker === undefined ? { of: "nothing", name } : { of: "maker", name: maker };
}
