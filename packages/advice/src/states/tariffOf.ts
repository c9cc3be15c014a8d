import type { Design } from "@tidewright/design";
import { currencyOf, fromSI, toSI } from "@tidewright/units";

/** What a design pays for electricity. */
export interface Tariff {
  /** Price of a kilowatt hour, in `currency`. */
  readonly price: number;
  /** ISO 4217 code. */
  readonly currency: string;
}

/** Returns a design's price of a kilowatt hour in its own currency, whichever unit it was given in.
 *  design Design   -> Tariff. Source: definition of the units. */
export function tariffOf({ power: { tariff } }: Pick<Design, "power">): Tariff {
  const currency = currencyOf(tariff.unit) ?? "EUR";
  return { price: fromSI(toSI(tariff, "tariff"), `${currency}/kWh`, "tariff"), currency };
}
