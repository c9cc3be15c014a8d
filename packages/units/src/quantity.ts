/** What a quantity measures; each dimension has one base unit (see siUnit) and its own list of accepted units. */
export type Dimension =
  | "length"
  | "area"
  | "volume"
  | "flow"
  | "head"
  | "pressure"
  | "velocity"
  | "salinity"
  | "temperature"
  | "power"
  | "energy"
  | "tariff"
  | "soundLevel"
  | "ratio"
  | "angle"
  | "time"
  | "voltage"
  | "current"
  | "frequency"
  | "mass"
  | "money"
  | "density"
  | "kinematicViscosity"
  | "turnover"
  | "speedFraction";

/** A number with the unit it was written in, as files hold it: `{ "value": 25, "unit": "mm" }`. */
export interface Quantity {
  /** The number as written [in `unit`]. */
  value: number;
  /** Symbol or alias of the unit. */
  unit: string;
}

/** Either the value read, or one problem in plain words that names what was given and how to mend it. */
export type Parsed<T> = { ok: true; value: T } | { ok: false; problem: string };

/** A unit as lists and menus show it. */
export interface UnitInfo {
  /** Canonical symbol, as files hold it ("m3", "C"). */
  readonly symbol: string;
  /** Symbol as screens and papers print it ("m³", "°C"); empty where a bare number is printed. */
  readonly label: string;
  /** Name in words, with what the unit assumes. */
  readonly name: string;
  /** Other spellings accepted on input. */
  readonly aliases: readonly string[];
}

/** What a conversion may need besides the number. */
export interface ConversionOptions {
  /** Density of the working liquid [kg/m3]; only between head and pressure. Default 1025. */
  readonly density?: number;
}
