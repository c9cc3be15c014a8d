import { findDevice } from "@tidewright/catalogue";
import { circuitCurrent, continuousLoadLimit } from "@tidewright/engine";
import { toSI } from "@tidewright/units";
import { pumpStates, tankPumpStates } from "../states/pumpStates.ts";
import type { PreparedSystem } from "../system/prepare.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";

/** What the first circuit carries without one loop's pumps, and what it may carry for hours [A]. */
export interface CircuitLoad {
  readonly others: number;
  readonly limit: number;
}

/** Returns the load of the first circuit without the pumps of one loop, reckoned as an assessment does: all pumps, tank pumps and
 *  devices hang on it, besides what is said to.
 *  system PreparedSystem   solved its running state   loop index of the loop whose pumps are left out
 *  -> CircuitLoad [A], or undefined where no circuit is described
 *  Source: engine `circuitCurrent` and `continuousLoadLimit`. */
export function circuitLoadWithout(
  system: PreparedSystem,
  solved: SolvedSystem,
  loop: number,
): CircuitLoad | undefined {
  const { design, catalogue } = system;
  const circuit = design.power.circuits?.[0];
  if (!circuit) return undefined;
  const voltage = toSI(design.power.voltage, "voltage");
  let current = 0;
  for (const pump of pumpStates(system, solved, false)) if (pump.loop !== loop) current += pump.current;
  let rest = circuit.otherLoad ? toSI(circuit.otherLoad, "power") : 0;
  for (const pump of tankPumpStates(system)) rest += pump.electricalPower;
  for (const prepared of system.loops)
    for (const section of prepared.loop.sections) {
      const device = section.parts[0]?.device;
      if (device) rest += findDevice(catalogue, device.id)?.watts ?? 0;
    }
  return {
    others: current + circuitCurrent(rest, voltage),
    limit: continuousLoadLimit(toSI(circuit.rating, "current")),
  };
}
