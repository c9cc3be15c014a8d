import {
  checkQuantity,
  type Dimension,
  formatFeetAndInches,
  parseQuantity,
  type Quantity,
  toSI,
  unitLabel,
} from "@tidewright/units";
import type { ScreenFormat } from "./screenFormat.ts";

/** Returns a quantity as it was typed: number and unit, no digit lost. */
export function typedText(quantity: Quantity, dimension: Dimension): string {
  if (quantity.unit === "ft-in") return feetText(quantity);
  const label = checkQuantity(quantity, dimension).ok ? unitLabel(quantity.unit, dimension) : quantity.unit;
  if (label === "") return String(quantity.value);
  return `${quantity.value}${label.startsWith("/") ? "" : " "}${label}`;
}

/** Feet and inches are printed to sixteenths; a value between them keeps its decimals instead of being rounded. */
function feetText(quantity: Quantity): string {
  const metres = toSI(quantity, "length");
  const text = formatFeetAndInches(metres);
  const back = parseQuantity(text.replace("−", "-"), "length");
  const same = back.ok && Math.abs(toSI(back.value, "length") - metres) < 1e-9;
  return same ? text : `${quantity.value} ft`;
}

/** A quantity read from text, or why it cannot be. */
export type QuantityReading =
  | { readonly ok: true; readonly quantity: Quantity }
  | { readonly ok: false; readonly problem: string };

/** Returns what a person typed as a quantity; a bare number takes the unit that stood there before. */
export function readQuantity(text: string, dimension: Dimension, unit: string): QuantityReading {
  const parsed = parseQuantity(text, dimension, unit);
  return parsed.ok ? { ok: true, quantity: parsed.value } : parsed;
}

/** Returns a quantity one step up or down in its own unit: a step is one in its last written digit, but never below 0.001. */
export function stepped(quantity: Quantity, by: number): Quantity {
  if (quantity.unit === "ft-in") return { ...quantity, value: Math.round((quantity.value + by / 12 / 4) * 48) / 48 };
  const decimals = Math.min(3, (String(quantity.value).split(".")[1] ?? "").length);
  const step = 10 ** -decimals;
  return { ...quantity, value: Number((quantity.value + by * step).toFixed(decimals)) };
}

/** Returns the same quantity in the unit of the screen, or undefined where it was typed in that unit. */
export function alsoInUnits(
  quantity: Quantity | undefined,
  dimension: Dimension,
  format: ScreenFormat,
): string | undefined {
  if (quantity === undefined || dimension === "money" || dimension === "tariff" || dimension === "time")
    return undefined;
  const checked = checkQuantity(quantity, dimension);
  if (!checked.ok || checked.value.unit === format.unitOf(dimension)) return undefined;
  return format(toSI(checked.value, dimension), dimension);
}
