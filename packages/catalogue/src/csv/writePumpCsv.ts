import Papa from "papaparse";
import type { PumpRow } from "../pumps/pump.ts";
import { spellNumber, writeQuantity } from "./cellUnits.ts";
import { writeCurve } from "./curveText.ts";
import { type ColumnName, headingText, pumpColumns } from "./pumpColumns.ts";

/** A CSV text of these pumps that `readPumpCsv` reads back to exactly the same rows, every number to the last bit.
 *  pumps: PumpRow[] in SI   -> text, comma-separated, rows ended by line feed, heading names with units
 *    Flows are in L/h, heads in m, bores in mm; the rare number that has no exact form there is written in SI with its
 *    unit, as in 0.0002777777777777778 m3/s.
 *  Findings: none. Throws: never.
 *  Valid: pumps without errors under `checkCatalogue`, with texts free of blanks at both ends.
 *  Source: own table layout on RFC 4180.
 *  Example: readPumpCsv(writePumpCsv(demoCatalogue.pumps)).pumps.length  ->  72                                */
export function writePumpCsv(pumps: readonly PumpRow[]): string {
  const speeds = [...new Set(pumps.flatMap((pump) => pump.curves.map((curve) => curve.speedRatio)))];
  if (!speeds.includes(1)) speeds.push(1);
  speeds.sort((a, b) => b - a);
  const powerSpeeds = speeds.filter((speed) =>
    pumps.some((pump) => pump.curves.some((curve) => curve.speedRatio === speed && curve.power !== undefined)),
  );
  const heading = [
    ...pumpColumns.map(headingText),
    ...speeds.map((speed) => `curve ${spell(speed)} (L/h@m)`),
    ...powerSpeeds.map((speed) => `power ${spell(speed)} (L/h@W)`),
  ];
  const rows = pumps.map((pump) => {
    const curveAt = (speed: number) => pump.curves.find((curve) => curve.speedRatio === speed);
    return [
      ...pumpColumns.map((column) => plainCell(pump, column.name)),
      ...speeds.map((speed) => writeCurve(curveAt(speed)?.points.map((p) => [p.flow, p.head]) ?? [], "head")),
      ...powerSpeeds.map((speed) => writeCurve(curveAt(speed)?.power?.map((p) => [p.flow, p.power]) ?? [], "power")),
    ];
  });
  return `${Papa.unparse([heading, ...rows], { newline: "\n" })}\n`;
}

function spell(speedRatio: number): string {
  const short = speedRatio.toFixed(2);
  return Number(short) === speedRatio ? short : String(speedRatio);
}

function plainCell(pump: PumpRow, name: ColumnName): string {
  switch (name) {
    case "id":
    case "maker":
    case "model":
    case "control":
    case "chart":
      return pump[name];
    case "placements":
      return pump.placements.join("+");
    case "minimum speed":
      return spellNumber(pump.minimumSpeed);
    case "controller":
      return pump.controller === undefined ? "" : pump.controller.included ? "included" : "separate";
    case "controller ref":
      return pump.controller?.ref ?? "";
    case "controller label":
      return pump.controller?.label ?? "";
    case "controller price":
      return spellNumber(pump.controller?.price);
    case "rated power":
      return writeQuantity(pump.ratedPower, "power");
    case "power factor":
      return spellNumber(pump.powerFactor);
    case "inlet bore":
      return writeQuantity(pump.inletBore, "bore");
    case "outlet bore":
      return writeQuantity(pump.outletBore, "bore");
    case "inlet connection":
      return pump.connection.inlet;
    case "outlet connection":
      return pump.connection.outlet;
    case "voltage":
      return spellNumber(pump.voltage);
    case "frequency":
      return spellNumber(pump.frequency);
    case "sound":
      return spellNumber(pump.soundLevel);
    case "price":
      return spellNumber(pump.price);
    case "warranty":
      return spellNumber(pump.warrantyMonths);
    case "maximum temperature":
      return pump.maximumTemperature === undefined ? "" : writeQuantity(pump.maximumTemperature, "temperature");
    case "external cooling":
      return pump.externalCooling ?? "";
    case "self-priming":
      return pump.selfPriming ? "yes" : "no";
    case "best efficiency flow":
      return pump.bestEfficiencyFlow === undefined ? "" : writeQuantity(pump.bestEfficiencyFlow, "flow");
    case "note":
      return pump.note ?? "";
    case "source":
      return pump.source.title;
    case "source where":
      return pump.source.where ?? "";
    case "source status":
      return pump.source.status;
  }
}
