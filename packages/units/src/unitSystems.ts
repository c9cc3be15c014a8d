import type { Dimension } from "./quantity.ts";

/** The unit to show for each dimension. */
export type UnitSystem = Readonly<Record<Dimension, string>>;

const metric: UnitSystem = {
  length: "mm",
  area: "m2",
  volume: "L",
  flow: "L/h",
  head: "m",
  pressure: "kPa",
  velocity: "cm/s",
  salinity: "ppt",
  temperature: "C",
  power: "W",
  energy: "kWh",
  tariff: "EUR/kWh",
  soundLevel: "dB(A)",
  ratio: "1",
  angle: "deg",
  time: "min",
  voltage: "V",
  current: "A",
  frequency: "Hz",
  mass: "kg",
  money: "EUR",
  density: "kg/m3",
  kinematicViscosity: "mm2/s",
  turnover: "1/h",
  speedFraction: "%",
};

const us: UnitSystem = {
  ...metric,
  length: "in",
  area: "ft2",
  volume: "US gal",
  flow: "US gal/h",
  head: "ft",
  pressure: "psi",
  velocity: "ft/s",
  temperature: "F",
  tariff: "USD/kWh",
  mass: "lb",
  money: "USD",
  density: "lb/ft3",
  kinematicViscosity: "cSt",
};

const imperial: UnitSystem = {
  ...us,
  volume: "imp gal",
  flow: "imp gal/h",
  temperature: "C",
  tariff: "GBP/kWh",
  money: "GBP",
};

/** Returns the three ready-made choices of display unit: metric, US customary and imperial; any one may be changed alone.
 *  no arguments   -> { metric, us, imperial }, each a record of unit symbols, one per dimension
 *  Findings: none. Throws: never.
 *  Valid: money and tariff name a usual currency; show a sum in the currency it was given in.
 *  Source: common practice, no source.
 *  Example: unitSystems.us.flow  ->  "US gal/h" */
export const unitSystems: { metric: UnitSystem; us: UnitSystem; imperial: UnitSystem } = { metric, us, imperial };
