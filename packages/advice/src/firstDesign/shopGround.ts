import { currencyOf, type Quantity, unitsOf } from "@tidewright/units";

/** What a shop has said once for all its jobs, as far as a first design takes it over; whatever is absent was not said. */
export interface ShopGround {
  /** Its price of a kilowatt hour. */
  readonly tariff?: Quantity;
  /** What it reckons in, ISO 4217. */
  readonly currency?: string;
  /** Its papers are in inches and US gallons: its sockets are taken for those of North America. */
  readonly us?: boolean;
}

/** Settings of a shop as they are kept; a unit of its papers by dimension. */
interface SaidByShop {
  readonly currency: string;
  readonly tariff: Quantity | null;
  readonly units: Readonly<Record<string, string>>;
}

const usLengths = new Set(["in", "ft", "ft-in"]);

/** Returns what a first design takes over of a shop's settings.
 *  settings currency ISO 4217, tariff or null, units of papers by dimension   -> ShopGround
 *  Findings: none. Throws: never; a tariff in a unit that nobody knows counts as not said.
 *  Valid: units count as those of the United States where lengths are in inches or feet, or a volume or flow is in US gallons, and
 *  nothing is in imperial gallons.
 *  Source: own construction.
 *  Example: shopGroundOf({ currency: "EUR", tariff: { value: 0.31, unit: "EUR/kWh" }, units: {} }).us  ->  false
 *  Example: shopGroundOf({ currency: "USD", tariff: null, units: { volume: "US gal" } }).us  ->  true */
export function shopGroundOf({ currency, tariff, units }: SaidByShop): ShopGround {
  const chosen = Object.values(units);
  const us =
    (usLengths.has(units.length ?? "") || chosen.some((unit) => unit.startsWith("US "))) &&
    !chosen.some((unit) => unit.startsWith("imp "));
  const known = tariff !== null && unitsOf("tariff").some(({ symbol }) => symbol === tariff.unit);
  return {
    us,
    ...(known && tariff !== null ? { tariff } : {}),
    ...(currencyOf(currency) === undefined ? {} : { currency }),
  };
}
