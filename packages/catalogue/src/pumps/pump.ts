import type { Source } from "../source.ts";

/** Where a pump may stand: under water in the sump, dry beside it, or in the display as a stream pump. */
export type Placement = "inSump" | "external" | "inTank";

/** Controller of a controllable pump: in the box, or bought separately under `ref`. Price in the catalogue's currency. */
export interface PumpController {
  included: boolean;
  ref?: string;
  price?: number;
  label?: string;
}

/** One point of a head curve: flow [m3/s], head [m]. */
export interface CurvePoint {
  flow: number;
  head: number;
}

/** One point of a power curve: flow [m3/s], electrical power [W]. */
export interface PowerPoint {
  flow: number;
  power: number;
}

/** What the maker prints for one speed: speed ratio [-], 1 at full speed; points in rising flow and falling head. */
export interface SpeedCurve {
  speedRatio: number;
  points: CurvePoint[];
  power?: PowerPoint[];
}

/** One pump of the catalogue, all numbers SI but for temperature in C, sound in dB(A) and warranty in months.
 *  `curves`: full speed first, then falling speed ratios. `minimumSpeed` [-]: 1 for a constant pump.
 *  `ratedPower` [W] at full speed. `inletBore`, `outletBore` [m]. `voltage` [V]; `frequency` [Hz], 0 for direct current
 *  through the maker's own mains adapter. `soundLevel` [dB(A)] at full speed and 1 m. `price` in EUR.
 *  `chart`: "points" printed by the maker, "reading" taken off a picture and so less sure. */
export interface PumpRow {
  id: string;
  maker: string;
  model: string;
  placements: Placement[];
  control: "constant" | "controllable";
  controller?: PumpController;
  minimumSpeed: number;
  curves: SpeedCurve[];
  ratedPower: number;
  powerFactor: number;
  inletBore: number;
  outletBore: number;
  connection: { inlet: string; outlet: string };
  voltage: number;
  frequency: number;
  soundLevel: number;
  price: number;
  currency: "EUR";
  warrantyMonths: number;
  maximumTemperature?: number;
  externalCooling?: "air" | "water";
  selfPriming: boolean;
  bestEfficiencyFlow?: number;
  chart: "points" | "reading";
  note?: string;
  source: Source;
}
