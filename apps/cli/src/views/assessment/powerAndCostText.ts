import type { Assessment } from "@tidewright/advice";
import { toSI } from "@tidewright/units";
import type { Look } from "../../output/deliver.ts";
import { money } from "../../output/format.ts";
import { tableText } from "../../output/table.ts";

const year = toSI({ value: 1, unit: "a" }, "time");

/** Returns what the system draws, warms, sounds like and costs. */
export function powerAndCostText({ power, heat, sound, cost }: Assessment, { format, width }: Look): string {
  const years = `${Number((cost.horizon / year).toFixed(1))} years`;
  const wish = sound.wish === undefined ? "" : ` (wish ${format(sound.wish, "soundLevel")})`;
  const chiller = heat.chillerCapacity > 0 ? ` (chiller takes ${format(heat.chillerCapacity, "power")})` : "";
  const rows = [
    ["power drawn", format(power.watts, "power")],
    ["energy a year", format(power.annualEnergy, "energy")],
    ["running cost a year", money(power.annualCost, power.tariffCurrency)],
    ["heat into the water", `${format(heat.intoWater, "power")}${chiller}`],
    ["sound at 1 m", `${format(sound.level, "soundLevel")}${wish}`],
    ...power.circuits.map((circuit) => [
      `circuit ${circuit.name}`,
      `${format(circuit.current, "current")} of ${format(circuit.limit, "current")} that may run for long`,
    ]),
    ["price of pumps and what they need", money(cost.pumps, cost.currency)],
    ["price of all that is listed", money(cost.purchase, cost.currency)],
    [
      `price and running cost over ${years}`,
      cost.total === undefined
        ? `not added: ${cost.currency} and ${power.tariffCurrency}`
        : money(cost.total, cost.currency),
    ],
  ];
  return tableText(
    [
      { head: "", flexible: true },
      { head: "", align: "right" },
    ],
    rows,
    width,
  );
}
