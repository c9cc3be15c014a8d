import type { Design } from "@tidewright/design";
import { currencyOf } from "@tidewright/units";

/** Returns the currency in which a design's electricity is paid. */
export function tariffCurrency(design: Design): string {
  return currencyOf(design.power.tariff.unit) ?? "EUR";
}
