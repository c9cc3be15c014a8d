import type { Catalogue, PumpRow } from "@tidewright/catalogue";
import type { Look } from "../output/deliver.ts";
import { money } from "../output/format.ts";
import { tableText } from "../output/table.ts";
import { paragraphs, section } from "./section.ts";

/** Returns the pumps, devices and controllers of a catalogue as tables, and the ids of its pipe, fittings and valves. */
export function catalogueText(catalogue: Catalogue, look: Look): string {
  const { format, width } = look;
  const right = { align: "right" } as const;
  const pumps = tableText(
    [
      { head: "id", flexible: true },
      { head: "largest flow", ...right },
      { head: "largest head", ...right },
      { head: "power", ...right },
      { head: "sound", ...right },
      { head: "price", ...right },
    ],
    catalogue.pumps.map((pump) => [
      pump.id,
      format(largest(pump, "flow"), "flow"),
      format(largest(pump, "head"), "head"),
      format(pump.ratedPower, "power"),
      format(pump.soundLevel, "soundLevel"),
      money(pump.price, pump.currency),
    ]),
    width,
  );
  const devices = tableText(
    [{ head: "id" }, { head: "what it is", flexible: true }, { head: "flow", ...right }, { head: "price", ...right }],
    catalogue.devices.map((device) => [
      device.id,
      device.label,
      `${format(device.flowRange[0], "flow")} to ${format(device.flowRange[1], "flow")}`,
      money(device.price, "EUR"),
    ]),
    width,
  );
  const controllers = tableText(
    [{ head: "id" }, { head: "what it is", flexible: true }, { head: "price", ...right }],
    catalogue.controllers.map((row) => [row.id, row.label, money(row.price, "EUR")]),
    width,
  );
  const ids = (rows: readonly { readonly id: string; readonly label: string }[]) =>
    tableText(
      [{ head: "id" }, { head: "what it is", flexible: true }],
      rows.map((row) => [row.id, row.label]),
      width,
    );
  return paragraphs([
    section("Pumps", pumps, look),
    section("Devices", devices, look),
    section("Controllers", controllers, look),
    section("Pipe", ids(catalogue.pipeSeries), look),
    section("Fittings", ids(catalogue.fittings), look),
    section("Valves", ids(catalogue.valves), look),
  ]);
}

function largest(pump: PumpRow, what: "flow" | "head"): number {
  return Math.max(...pump.curves.flatMap((curve) => curve.points.map((point) => point[what])));
}
