import type { Dimension } from "@tidewright/units";
import type { Reason, ReasonCode } from "../ranking.ts";
import type { Format } from "./format.ts";

const words: Readonly<Record<ReasonCode, string>> = {
  "meets-aim": "gives the wished flow: {value}",
  "within-wish": "gives {value}, within the wish",
  "below-wish": "gives only {value}; {limit} is the least wished",
  "above-wish": "gives {value}; {limit} is the most wished",
  "too-weak-to-lift": "reaches {value} at most; the system asks for {limit} before anything flows",
  "wrong-place": "is not made for this place",
  "wrong-voltage": "is made for {value}; the mains give {limit}",
  "over-budget": "costs {value}; the budget is {limit}",
  "over-sound": "makes {value}; {limit} is wished",
  "near-shutoff": "works at {value} of its largest flow, close to shut-off",
  "near-runout": "works at {value} of its largest flow, at the end of its curve",
  "beyond-curve": "works beyond the last point its maker gives",
  "needs-controller": "needs a controller for {value}, priced in",
  "efficient-point": "works in the middle of its curve, {value} wire to water",
  "spare-flow": "has {value} in hand for a furred pipe",
  cheapest: "costs least to buy",
  "lowest-cost-over-horizon": "costs least over the years",
  quietest: "is the quietest",
  "least-power": "takes the least power",
  "two-pumps-redundant": "one goes on if the other fails",
  "drain-cannot-carry": "sends {value}; the drains take {limit}",
  "circuit-overload": "would load the circuit to {value}; {limit} is its limit",
  "in-tank-pump": "is a stream pump for the tank",
};

/** Where less than nothing reaches the display, the open branches draw water back down from it past the running pump. */
const backward: Readonly<Partial<Record<ReasonCode, string>>> = {
  "below-wish":
    "cannot lift: {value} of water would run back from the display through the other branches; {limit} up is the least wished",
};

/** Returns a reason as half a sentence whose subject is the pump; a flow below zero is told as water that runs back.
 *  reason Reason   format Format   -> string
 *  Source: own words.
 *  Example: describeReason({ code: "cheapest" }, String)  ->  "costs least to buy"
 *  Example: describeReason({ code: "drain-cannot-carry", value: 2, limit: 1, dimension: "flow" }, String)  ->  "sends 2; the drains take 1" */
export function describeReason(reason: Reason, format: Format): string {
  const write = (value: number | undefined) => {
    if (value === undefined) return "—";
    if (reason.dimension === "money") return `${value.toFixed(0)} EUR`;
    return reason.dimension ? format(value, reason.dimension as Dimension) : String(value);
  };
  const reversed = reason.value !== undefined && reason.value < 0 ? backward[reason.code] : undefined;
  const value = reversed === undefined || reason.value === undefined ? reason.value : -reason.value;
  return (reversed ?? words[reason.code]).replace("{value}", write(value)).replace("{limit}", write(reason.limit));
}
