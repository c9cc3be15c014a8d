import { CircuitElement } from "./elements/circuitElement.ts";
import { DrainElement } from "./elements/drainElement.ts";
import type { FlowElement } from "./elements/flowElement.ts";
import { siphonElement } from "./elements/siphonElement.ts";
import { spillElement } from "./elements/spillElement.ts";
import { blockageElement, evaporationElement, speedElement, topOffElement } from "./elements/supplyElements.ts";
import { weirElement } from "./elements/weirElement.ts";
import type { TransientModel } from "./model.ts";
import { type Modes, startingModes } from "./modes.ts";
import type { OdeSystem } from "./ode/index.ts";
import { type StateLayout, stateLayout } from "./stateLayout.ts";

/** A model ready to run: its flows as an ordinary differential equation for as long as its modes stand. */
export interface HybridSystem extends OdeSystem {
  readonly model: TransientModel;
  readonly layout: StateLayout;
  readonly modes: Modes;
  readonly drains: readonly DrainElement[];
  readonly circuits: readonly CircuitElement[];
}

/** Returns a model as a system dy/dt = f(y), f the sum of its elements, with its Jacobian taken element by element: each
 *  depends on a few quantities only, so a whole Jacobian costs little more than two evaluations.
 *  model TransientModel   -> HybridSystem
 *  Source: continuity of volume in every vessel. */
export function hybridSystem(model: TransientModel): HybridSystem {
  const layout = stateLayout(model);
  const modes = startingModes(model);
  const drains = model.drains.map((_, i) => new DrainElement(model, layout, modes, i));
  const circuits = model.circuits.map((_, i) => new CircuitElement(model, layout, modes.circuits[i], i));
  const spills = model.vessels.flatMap((_, i) => spillElement(model, layout, i) ?? []);
  const elements: FlowElement[] = [
    ...model.weirs.map((weir) => weirElement(model, weir)),
    ...(model.siphons ?? []).map((siphon, i) => siphonElement(model, siphon, modes, i)),
    ...spills,
    ...drains,
    ...circuits,
    ...model.evaporation.map((entry) => evaporationElement(model, layout, entry)),
    ...(model.topOff ? [topOffElement(model, model.topOff, modes)] : []),
    ...model.circuits.map((_, i) => speedElement(model, layout, modes, i)),
    blockageElement(model, layout, modes),
  ];
  const before = new Float64Array(layout.size);
  const after = new Float64Array(layout.size);
  const steps = differenceSteps(model, layout);
  return {
    model,
    layout,
    modes,
    drains,
    circuits,
    size: layout.size,
    // The sum of all volumes, what has left the system included.
    invariants: [Float64Array.from({ length: layout.size }, (_, i) => (i < layout.volumes ? 1 : 0))],
    derivative(y, out) {
      out.fill(0);
      for (const element of elements) element.add(y, out);
    },
    jacobian(y, _f0, out) {
      out.fill(0);
      for (const element of elements) {
        const { changes } = element;
        for (const row of changes) before[row] = 0;
        element.add(y, before);
        for (const column of element.dependsOn()) {
          const kept = y[column];
          y[column] = kept + steps[column];
          const step = y[column] - kept;
          for (const row of changes) after[row] = 0;
          if (element.addNear) element.addNear(y, after);
          else element.add(y, after);
          y[column] = kept;
          for (const row of changes) out[row * layout.size + column] += (after[row] - before[row]) / step;
        }
      }
    },
  };
}

/** Steps for difference quotients: a tenth of a micrometre of level, as little of a pipe, a speed or a blockage: crests that water
 *  just tops and pipes that just run bend sharply. */
function differenceSteps(model: TransientModel, layout: StateLayout): Float64Array {
  const steps = new Float64Array(layout.size).fill(1e-7);
  model.vessels.forEach((vessel, i) => {
    steps[i] = 1e-7 * vessel.area;
  });
  model.drains.forEach((drain, i) => {
    steps[layout.drain + i] = 1e-7 * drain.content;
  });
  model.circuits.forEach((circuit, i) => {
    steps[layout.circuit + i] = 1e-7 * circuit.content;
  });
  return steps;
}
