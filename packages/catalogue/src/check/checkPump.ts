import { type CatalogueProblem, shown } from "../catalogueProblem.ts";
import type { PumpRow } from "../pumps/pump.ts";
import { type Complain, checkCurves, litres } from "./checkCurves.ts";

const specificVoltages = [
  [5, 60],
  [100, 130],
  [200, 250],
] as const;

/** Everything that cannot be, or is hard to believe, in one pump; complete.
 *  pump: PumpRow in SI   row: its place, for the messages   -> CatalogueProblem[], errors and doubts
 *    Errors: missing texts, numbers that are not finite or have the wrong sign, heads that do not fall, flows that do
 *    not rise, fewer than 2 or more than 50 points, speed ratios out of order, a slower curve above a faster one,
 *    more hydraulic than electrical power, a controllable pump without a word about its controller.
 *    Doubts: efficiency above 75 %, shut-off head off the affinity law by more than 35 %, unusual voltage, frequency,
 *    sound, bore, outlet speed above 8 m/s, power curve above the rated power.
 *  Findings: as above. Throws: never.
 *  Valid: any row. Limits of doubt are common practice, no source.
 *  Source: water power rho g Q H (Crane TP-410) against electrical power; affinity laws (ISO 9906).
 *  Example: checkPump(findPump(demoCatalogue, "ferrow-c40"), 1)  ->  []                                        */
export function checkPump(pump: PumpRow, row: number): CatalogueProblem[] {
  const problems: CatalogueProblem[] = [];
  const id = shown(pump.id);
  const complain: Complain = (column, value, problem, fix, severity = "error") => {
    problems.push({ list: "pumps", row, id, column, value: shown(value), problem, fix, severity });
  };
  checkNames(pump, complain);
  checkNumbers(pump, complain);
  checkControl(pump, complain);
  checkCurves(pump, complain);
  checkSize(pump, complain);
  return problems;
}

/** Ids are used in documents and links, so they keep to letters, digits, dot, underscore and hyphen. */
export const idPattern = /^[A-Za-z0-9][A-Za-z0-9._-]*$/;

function checkNames(pump: PumpRow, complain: Complain): void {
  if (!idPattern.test(pump.id)) {
    complain("id", pump.id, "holds something other than letters, digits, . _ -", "write it like ferrow-c40");
  }
  if (pump.maker.trim() === "") complain("maker", pump.maker, "is empty", "name the maker");
  if (pump.model.trim() === "") complain("model", pump.model, "is empty", "name the model");
  if (pump.placements.length === 0) {
    complain("placements", "", "says nowhere to put the pump", "join inSump, external, inTank by +");
  }
  if (new Set(pump.placements).size !== pump.placements.length) {
    complain("placements", pump.placements.join("+"), "names a place twice", "name each place once");
  }
  if (pump.externalCooling !== undefined && !pump.placements.includes("external")) {
    complain(
      "external cooling",
      pump.externalCooling,
      "is given for a pump that never stands outside",
      "remove it",
      "doubt",
    );
  }
}

function checkNumbers(pump: PumpRow, complain: Complain): void {
  const need = (column: string, value: number, holds: boolean, problem: string, fix: string) => {
    if (!(Number.isFinite(value) && holds)) complain(column, value, problem, fix);
    return Number.isFinite(value) && holds;
  };
  const doubt = (column: string, value: number, problem: string, fix: string) =>
    complain(column, value, problem, fix, "doubt");

  need("rated power", pump.ratedPower, pump.ratedPower > 0, "is not above zero", "give watts at full speed");
  const factor = pump.powerFactor;
  need(
    "power factor",
    factor,
    factor > 0 && factor <= 1,
    "is not above 0 and up to 1",
    "small motors have 0.5 to 0.95",
  );
  for (const [column, bore] of [
    ["inlet bore", pump.inletBore],
    ["outlet bore", pump.outletBore],
  ] as const) {
    const mm = bore * 1000;
    if (
      need(column, mm, bore > 0, "is not above zero", "give the inner diameter in mm") &&
      (bore < 0.004 || bore > 0.3)
    ) {
      doubt(column, mm, "is unusual: it is outside 4 to 300 mm", "check the unit");
    }
  }
  const volts = pump.voltage;
  if (need("voltage", volts, volts > 0, "is not above zero", "give volts, such as 230, 120 or 24")) {
    const usual = specificVoltages.some(([low, high]) => volts >= low && volts <= high);
    if (!usual) doubt("voltage", volts, "is an unusual supply voltage", "230, 120 and 24 V are usual");
  }
  const hertz = pump.frequency;
  if (need("frequency", hertz, hertz >= 0, "is below zero", "give 50, 60, or 0 for direct current")) {
    if (![0, 50, 60].includes(hertz)) doubt("frequency", hertz, "is an unusual mains frequency", "give 50, 60 or 0");
  }
  const sound = pump.soundLevel;
  if (
    need("sound", sound, sound >= 0, "is below zero", "give dB(A) at 1 m and full speed") &&
    (sound < 15 || sound > 90)
  ) {
    doubt("sound", sound, "is hard to believe: it is outside 15 to 90 dB(A)", "check that it is dB(A) at 1 m");
  }
  if (need("price", pump.price, pump.price >= 0, "is below zero", "give the price in EUR") && pump.price === 0) {
    doubt("price", 0, "is zero", "give the price in EUR");
  }
  need("warranty", pump.warrantyMonths, pump.warrantyMonths >= 0, "is below zero", "give months");
  const hottest = pump.maximumTemperature;
  if (hottest !== undefined) {
    const sane = need("maximum temperature", hottest, true, "is not a finite number", "give degrees Celsius");
    if (sane && (hottest < 20 || hottest > 100)) {
      doubt("maximum temperature", hottest, "is outside 20 to 100 C", "check the unit");
    }
  }
}

function checkControl(pump: PumpRow, complain: Complain): void {
  const least = pump.minimumSpeed;
  if (!(least > 0 && least <= 1)) {
    complain("minimum speed", least, "is not above 0 and up to 1", "give the lowest speed over the full speed");
  }
  if (pump.control === "constant") {
    if (least > 0 && least < 1)
      complain("minimum speed", least, "a constant pump has one speed", "write 1 or controllable");
    if (pump.controller !== undefined) {
      complain("controller", pump.controller.ref ?? "included", "a constant pump has no controller", "remove it");
    }
    if (pump.curves.length > 1) {
      complain("control", pump.control, "a constant pump has curves at several speeds", "write controllable");
    }
    return;
  }
  if (least === 1)
    complain("minimum speed", 1, "a controllable pump cannot slow down", "give its lowest speed", "doubt");
  const controller = pump.controller;
  if (controller === undefined) {
    complain(
      "controller",
      "",
      "nothing is said about its controller",
      "write included, or separate with a ref and a price",
    );
    return;
  }
  if (!controller.included && (controller.ref === undefined || controller.price === undefined)) {
    complain(
      "controller",
      controller.ref ?? "separate",
      "a separately sold controller needs a ref and a price",
      "fill in controller ref and controller price",
    );
  }
  const price = controller.price;
  if (price !== undefined && !(Number.isFinite(price) && price >= 0)) {
    complain("controller price", price, "is below zero or no number", "give the price in EUR");
  }
}

function checkSize(pump: PumpRow, complain: Complain): void {
  const flows = pump.curves[0]?.points.map((point) => point.flow) ?? [];
  const most = flows[flows.length - 1];
  if (most === undefined || !Number.isFinite(most)) return;
  const best = pump.bestEfficiencyFlow;
  if (best !== undefined && !(best > 0 && best < most)) {
    complain(
      "best efficiency flow",
      litres(best),
      "does not lie on the curve",
      `give a flow between 0 and ${litres(most)}`,
    );
  }
  const speed = most / ((Math.PI / 4) * pump.outletBore ** 2);
  if (pump.outletBore > 0 && speed > 8) {
    complain(
      "outlet bore",
      `${(pump.outletBore * 1000).toPrecision(3)} mm`,
      `the largest flow would leave at ${speed.toFixed(1)} m/s`,
      "check the bore and the unit of flow",
      "doubt",
    );
  }
  const power = pump.curves[0]?.power?.reduce((largest, point) => Math.max(largest, point.power), 0);
  if (power !== undefined && pump.ratedPower > 0 && power > 1.1 * pump.ratedPower) {
    complain(
      "rated power",
      pump.ratedPower,
      `the power curve reaches ${power} W`,
      "check which of the two is right",
      "doubt",
    );
  }
}
