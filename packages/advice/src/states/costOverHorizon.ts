/** Returns what it costs to buy and to run, purchase + years * a year's cost; undefined where the two are in different currencies,
 *  which nobody can add without a rate of the day.
 *  purchase [prices' currency]   yearly [running's currency]   years [a]   currencies of prices and of running costs, ISO 4217
 *  -> [prices' currency] or undefined. Source: definition; no interest, no change of the tariff.
 *  Example: costOverHorizon(468, 129.83, 5, { prices: "EUR", running: "EUR" })  ->  1117.15
 *  Example: costOverHorizon(468, 71.2, 5, { prices: "EUR", running: "USD" })  ->  undefined */
export function costOverHorizon(
  purchase: number,
  yearly: number,
  years: number,
  currencies: { readonly prices: string; readonly running: string },
): number | undefined {
  return currencies.prices === currencies.running ? purchase + years * yearly : undefined;
}
