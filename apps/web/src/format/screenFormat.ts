import { type Dimension, formatQuantity, toSI, unitLabel, unitSystems, unitsOf } from "@tidewright/units";
import type { Language } from "@tidewright/words";
import type { Settings } from "../state/settings.ts";
import { decimalSign } from "./decimalSign.ts";

/** Words a number in SI in the units of the screen; also says which unit that is. */
export interface ScreenFormat {
  (si: number, dimension: Dimension): string;
  unitOf(dimension: Dimension): string;
  /** The number alone, for a column whose head names the unit. */
  bare(si: number, dimension: Dimension): string;
  /** The unit as a column's head prints it. */
  label(dimension: Dimension): string;
  /** A plain number with so many significant digits. */
  plain(value: number, digits?: number): string;
  /** A share as whole per cent. */
  perCent(share: number): string;
  /** What the reader puts before decimals. */
  readonly decimalSign: "." | ",";
  /** A sum in a currency of its own: there is no conversion between currencies. */
  sum(amount: number, currency: string): string;
}

const year = toSI({ value: 1, unit: "a" }, "time");

/** Returns the format for a choice of units.
 *  settings system and units of one's own; a unit that is not known any more counts as not chosen
 *  language whose decimal sign is written   -> ScreenFormat */
export function screenFormat(
  { system, own }: Pick<Settings, "system" | "own">,
  language: Language = "en",
): ScreenFormat {
  const sign = decimalSign(language);
  const local = (text: string) => (sign === "." ? text : text.replace(/(\d)\.(?=\d)/g, `$1${sign}`));
  const years = new Intl.NumberFormat(language, {
    style: "unit",
    unit: "year",
    unitDisplay: "long",
    maximumSignificantDigits: 3,
    useGrouping: false,
  });
  const units = unitSystems[system];
  // Prices and tariffs are in the currency of catalogue and design whatever the units of the water are.
  const currency = "EUR";
  const unitOf = (dimension: Dimension): string => {
    const chosen = own[dimension];
    if (chosen !== undefined && unitsOf(dimension).some(({ symbol }) => symbol === chosen)) return chosen;
    if (dimension === "money") return currency;
    if (dimension === "ratio") return "%";
    if (dimension === "tariff") return `${currency}/kWh`;
    return units[dimension];
  };
  const format = (si: number, dimension: Dimension): string => {
    // A span of years in minutes helps nobody, so time takes the unit that fits it.
    const unit = dimension === "time" && own.time === undefined ? timeUnit(si) : unitOf(dimension);
    // The sign for a year, "a", is known to few.
    if (unit === "a") return years.format(si / year);
    return local(spaced(formatQuantity(si, dimension, unit)));
  };
  return Object.assign(format, {
    unitOf,
    bare: (si: number, dimension: Dimension) =>
      // Cents say nothing in a comparison of pumps.
      dimension === "money"
        ? String(Math.round(si))
        : local(formatQuantity(si, dimension, unitOf(dimension), { withUnit: false })),
    label: (dimension: Dimension) => unitLabel(unitOf(dimension), dimension),
    plain: (value: number, digits = 3) => local(String(Number(value.toPrecision(digits)))),
    perCent: (share: number) => `${Math.round(share * 100)} %`,
    decimalSign: sign,
    sum: (amount: number, of: string) => local(spaced(formatQuantity(amount, "money", of))),
  });
}

/** The condensed type closes the narrow space up until number and unit run together. */
const spaced = (text: string): string => text.replace("\u202f/", "/").replaceAll("\u202f", "\u00a0");

function timeUnit(seconds: number): string {
  if (seconds >= year) return "a";
  if (seconds >= 7200) return "h";
  return seconds >= 120 ? "min" : "s";
}
