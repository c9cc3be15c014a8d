import { currencies, minorUnitDigits } from "./currencies.ts";
import { linearUnit, type UnitDefinition } from "./unitDefinition.ts";

/** Signs that stand for one currency in the trade. "$" is taken as the US dollar, and the name says so. */
const signs: Readonly<Record<string, string>> = { EUR: "€", USD: "$", GBP: "£", JPY: "¥", INR: "₹" };

/** The trade's most used currencies first, as menus want them. */
const first = ["EUR", "USD", "GBP"];
const ordered = [...currencies].sort(([a], [b]) => rank(a) - rank(b));
function rank(code: string): number {
  const place = first.indexOf(code);
  return place < 0 ? first.length : place;
}

const named = (code: string, name: string): string => (code === "USD" ? `${name} (a plain $ is taken as this)` : name);
const signOf = (code: string): readonly string[] => (signs[code] === undefined ? [] : [signs[code]]);

/** Sums of money: the number stays as written, the unit carries the currency. */
export const moneyUnits: readonly UnitDefinition[] = ordered.map(([code, name]) =>
  linearUnit(code, named(code, name), 1, 1, { aliases: signOf(code), display: { fixed: minorUnitDigits[code] ?? 2 } }),
);

/** Prices of electricity per kilowatt hour, in the currency of the unit. */
export const tariffUnits: readonly UnitDefinition[] = ordered.flatMap(([code, name]) =>
  (
    [
      ["kWh", 1, "kilowatt hour"],
      ["MWh", 1000, "megawatt hour"],
    ] as const
  ).map(([energy, over, words]) =>
    linearUnit(`${code}/${energy}`, `${named(code, name)} per ${words}`, 1, over, {
      aliases: signOf(code).map((sign) => `${sign}/${energy}`),
      display: { significant: 4, decimals: 4 },
    }),
  ),
);

/** Returns the ISO 4217 code in a money or tariff unit: the three letters before the slash, or undefined where there are none.
 *  unit symbol or alias such as "EUR", "EUR/kWh", "€/kWh"   -> currency code or undefined
 *  Findings: none. Throws: never.
 *  Valid: currencies in ISO 4217 list one; "$" is taken as USD and "¥" as JPY.
 *  Source: ISO 4217.
 *  Example: currencyOf("GBP/kWh")  ->  "GBP"
 *  Example: currencyOf("€")  ->  "EUR" */
export function currencyOf(unit: string): string | undefined {
  const head = unit.split("/")[0]?.trim().toUpperCase() ?? "";
  return currencies.find(([code]) => code === head || signs[code] === head)?.[0];
}
