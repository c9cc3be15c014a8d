import type { TransientModel } from "./model.ts";

/** Where each quantity stands in the state vector: water in vessels, drains and circuits [m3], speeds and blockages [-],
 *  then what has left the system [m3]. Everything but speeds and blockages is a volume, and their sum never changes. */
export interface StateLayout {
  readonly vessel: number;
  readonly drain: number;
  readonly circuit: number;
  /** Spilled on the floor, one for each vessel; then the one for evaporation. */
  readonly spilled: number;
  readonly evaporated: number;
  /** Count of volumes: all before this index. */
  readonly volumes: number;
  /** First pump speed of each circuit. */
  readonly speed: readonly number[];
  readonly blocked: number;
  readonly size: number;
}

/** Returns the layout of a model's state. Source: own construction. */
export function stateLayout(model: TransientModel): StateLayout {
  const vessels = model.vessels.length;
  const drain = vessels;
  const circuit = drain + model.drains.length;
  const spilled = circuit + model.circuits.length;
  const evaporated = spilled + vessels;
  const volumes = evaporated + 1;
  let next = volumes;
  const speed = model.circuits.map((entry) => {
    const first = next;
    next += entry.pumps.length;
    return first;
  });
  const blocked = next;
  return {
    vessel: 0,
    drain,
    circuit,
    spilled,
    evaporated,
    volumes,
    speed,
    blocked,
    size: blocked + model.drains.length,
  };
}

/** Water surface of a vessel [m] for a state. */
export function surfaceOf(model: TransientModel, y: Float64Array, vessel: number): number {
  const { floor, area } = model.vessels[vessel];
  return floor + y[vessel] / area;
}
