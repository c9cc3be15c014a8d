import { currentUnits, energyUnits, frequencyUnits, powerUnits, voltageUnits } from "./electricalUnits.ts";
import { flowUnits, kinematicViscosityUnits, turnoverUnits, velocityUnits } from "./flowUnits.ts";
import { angleUnits, areaUnits, lengthUnits, volumeUnits } from "./lengthUnits.ts";
import { moneyUnits, tariffUnits } from "./moneyUnits.ts";
import { densityUnits, massUnits, ratioUnits, soundLevelUnits, speedFractionUnits, timeUnits } from "./otherUnits.ts";
import { headUnits, pressureUnits } from "./pressureUnits.ts";
import type { Dimension } from "./quantity.ts";
import { salinityUnits } from "./salinityUnits.ts";
import { temperatureUnits } from "./temperatureUnits.ts";
import type { UnitDefinition } from "./unitDefinition.ts";

/** Every unit of every dimension, in the order in which menus show them. */
export const unitTable: Readonly<Record<Dimension, readonly UnitDefinition[]>> = {
  length: lengthUnits,
  area: areaUnits,
  volume: volumeUnits,
  flow: flowUnits,
  head: headUnits,
  pressure: pressureUnits,
  velocity: velocityUnits,
  salinity: salinityUnits,
  temperature: temperatureUnits,
  power: powerUnits,
  energy: energyUnits,
  tariff: tariffUnits,
  soundLevel: soundLevelUnits,
  ratio: ratioUnits,
  angle: angleUnits,
  time: timeUnits,
  voltage: voltageUnits,
  current: currentUnits,
  frequency: frequencyUnits,
  mass: massUnits,
  money: moneyUnits,
  density: densityUnits,
  kinematicViscosity: kinematicViscosityUnits,
  turnover: turnoverUnits,
  speedFraction: speedFractionUnits,
};

/** A dimension as a sentence names it: "25 L is a volume, not a length". */
export const dimensionWords: Readonly<Record<Dimension, string>> = {
  length: "a length",
  area: "an area",
  volume: "a volume",
  flow: "a flow",
  head: "a head",
  pressure: "a pressure",
  velocity: "a velocity",
  salinity: "a salinity",
  temperature: "a temperature",
  power: "a power",
  energy: "an energy",
  tariff: "a tariff",
  soundLevel: "a sound level",
  ratio: "a ratio",
  angle: "an angle",
  time: "a time",
  voltage: "a voltage",
  current: "a current",
  frequency: "a frequency",
  mass: "a mass",
  money: "a sum of money",
  density: "a density",
  kinematicViscosity: "a kinematic viscosity",
  turnover: "a turnover",
  speedFraction: "a fraction of full speed",
};

/** All dimensions, in table order. */
export const dimensions = Object.keys(unitTable) as readonly Dimension[];

/** Units accepted for a dimension, as a message lists them; money would fill a page, so it is described. */
export function acceptedUnits(dimension: Dimension): string {
  if (dimension === "money") return "any ISO 4217 currency code, such as EUR, USD or GBP";
  if (dimension === "tariff") return "any ISO 4217 currency code per kWh or MWh, such as EUR/kWh, USD/kWh or GBP/kWh";
  return unitTable[dimension].map((unit) => unit.symbol).join(", ");
}
