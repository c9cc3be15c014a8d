import type { Catalogue } from "./catalogue.ts";

/** What a shop's prices are of the catalogue's, by maker or by kind of part. */
export type PriceFactors = Readonly<Record<string, number>>;

/** Kinds of parts that have a price, as a factor may name them; a pump's own controller counts among controllers. */
export const pricedKinds = ["pump", "controller", "device", "pipe", "fitting", "valve"] as const;
/** A kind of parts that has a price. */
export type PricedKind = (typeof pricedKinds)[number];

const folded = (name: string): string => name.trim().toLocaleLowerCase("en");

/** Returns a catalogue at a shop's prices: price = catalogue's price x factor, to the cent; the factor is that of the part's maker,
 *  that of its kind where the maker has none, and 1 where neither has. The two are never multiplied with each other: a shop that
 *  says 0.9 for a maker sells that maker's parts at nine tenths of the catalogue's price, whatever it says of the kind.
 *  catalogue, prices in EUR   factors by maker or by kind (see `pricedKinds`), in letters large or small   -> Catalogue, prices in
 *  EUR; the very catalogue given where no factor touches a price
 *  Findings: none. Throws: never; a factor that is not finite or not above zero counts as none, a name that nothing bears as well.
 *  Valid: the catalogue that comes with the program; a shop's own pumps are at its own prices already and go in afterwards, with
 *  `withOwnPumps`. Controllers listed apart, pipe, fittings and valves have no maker. The catalogue given is not changed.
 *  Source: own decision, docs/decisions/0027.
 *  Example: findPump(withShopPrices(demoCatalogue, { Ferrow: 0.9, pump: 1.15 }), "ferrow-c40").price  ->  210.6
 *  Example: findPump(withShopPrices(demoCatalogue, { pump: 1.15 }), "ferrow-c40").price  ->  269.1
 *  Example: withShopPrices(demoCatalogue, { "No Such Maker": 2 }) === demoCatalogue  ->  true */
export function withShopPrices(catalogue: Catalogue, factors: PriceFactors): Catalogue {
  const named = new Map<string, number>();
  for (const [name, factor] of Object.entries(factors))
    if (Number.isFinite(factor) && factor > 0) named.set(folded(name), factor);
  const touched =
    pricedKinds.some((kind) => named.has(kind)) ||
    [...catalogue.pumps, ...catalogue.devices].some(({ maker }) => named.has(folded(maker)));
  if (!touched) return catalogue;
  const at = (price: number, kind: PricedKind, maker?: string): number => {
    const factor = (maker === undefined ? undefined : named.get(folded(maker))) ?? named.get(kind);
    // What stays as it is keeps its figures, and what changes has no more of them than money has.
    return factor === undefined || factor === 1 ? price : Math.round(price * factor * 100) / 100;
  };
  const plumbing = <Row extends { priceAt25mm: number }>(rows: readonly Row[], kind: PricedKind): readonly Row[] =>
    rows.map((row) => ({ ...row, priceAt25mm: at(row.priceAt25mm, kind) }));
  return {
    ...catalogue,
    pumps: catalogue.pumps.map((row) => {
      const { controller } = row;
      const price = at(row.price, "pump", row.maker);
      if (controller?.price === undefined) return { ...row, price };
      return { ...row, price, controller: { ...controller, price: at(controller.price, "controller", row.maker) } };
    }),
    devices: catalogue.devices.map((row) => ({ ...row, price: at(row.price, "device", row.maker) })),
    controllers: catalogue.controllers.map((row) => ({ ...row, price: at(row.price, "controller") })),
    pipeSeries: catalogue.pipeSeries.map((row) => ({ ...row, pricePerMetre: at(row.pricePerMetre, "pipe") })),
    fittings: plumbing(catalogue.fittings, "fitting"),
    valves: plumbing(catalogue.valves, "valve"),
  };
}
