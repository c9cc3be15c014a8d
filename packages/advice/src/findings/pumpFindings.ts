import { findPump } from "@tidewright/catalogue";
import { toSI } from "@tidewright/units";
import type { Finding } from "../finding.ts";
import { levelOf } from "../system/levels.ts";
import { collect } from "./collect.ts";
import { limits } from "./limits.ts";
import type { Subject } from "./subject.ts";

/** Pumps: where they stand, how they run, what they need. */
export function pumpFindings({ system, solved, state }: Subject): Finding[] {
  const { found, add } = collect();
  const voltage = toSI(system.design.power.voltage, "voltage");
  state.pumps.forEach((pump) => {
    const prepared = system.loops[pump.loop];
    const index = Number(pump.path.split("/").at(-1));
    const said = system.design.loops[pump.loop]?.pumps[index];
    const row = prepared?.loop.pumps[index]?.row;
    const data = { name: pump.label };
    if (!prepared || !said) return;
    if (!row) {
      const one = `loop ${system.design.loops[pump.loop]?.name ?? ""}`;
      add("pump/missing", "warning", pump.path, "wish", { data: { name: said.ref ?? "", one } });
      return;
    }
    if (pump.flow <= 0) {
      add("flow/no-lift", "danger", pump.path, "maker", {
        value: pump.shutoffHead,
        limit: pump.head,
        dimension: "head",
        data,
      });
    } else {
      if (pump.placeOnCurve < limits.nearShutoff.value)
        add("pump/near-shutoff", "warning", pump.path, "nearShutoff", {
          value: pump.placeOnCurve,
          limit: limits.nearShutoff.value,
          dimension: "ratio",
          data,
        });
      if (pump.beyondLastPoint)
        add("pump/beyond-curve", "warning", pump.path, "maker", {
          value: pump.placeOnCurve,
          limit: 1,
          dimension: "ratio",
          data,
        });
      else if (pump.placeOnCurve > limits.nearRunout.value)
        add("pump/near-runout", "warning", pump.path, "nearRunout", {
          value: pump.placeOnCurve,
          limit: limits.nearRunout.value,
          dimension: "ratio",
          data,
        });
    }
    if (!row.placements.includes(said.placed))
      add("pump/wrong-place", "danger", pump.path, "maker", { data: { ...data, placed: said.placed } });
    if (said.placed === "external") {
      const surface = levelOf(solved.levels, prepared.loop.sourcePlace);
      const elevation = prepared.loop.pumps[index]?.elevation ?? 0;
      if (elevation > surface && !row.selfPriming)
        add("pump/not-flooded", "danger", pump.path, "caution", {
          value: elevation - surface,
          limit: 0,
          dimension: "length",
          data,
        });
      const bore = prepared.loop.suctionBore;
      if (bore !== undefined && bore < 0.98 * row.inletBore)
        add("pump/suction-too-small", "warning", `${prepared.loop.path}/suction`, "maker", {
          value: bore,
          limit: row.inletBore,
          dimension: "length",
          data,
        });
    }
    if (pump.npshAvailable < limits.npshMargin.value)
      add("pump/npsh-low", "warning", pump.path, "npshMargin", {
        value: pump.npshAvailable,
        limit: limits.npshMargin.value,
        dimension: "head",
        data,
      });
    if (said.speed !== undefined && said.speed < 1) {
      if (row.control === "constant")
        add("pump/not-controllable", "warning", pump.path, "maker", {
          value: said.speed,
          limit: 1,
          dimension: "ratio",
          data,
        });
      else if (said.speed < row.minimumSpeed)
        add("pump/below-minimum-speed", "warning", pump.path, "maker", {
          value: said.speed,
          limit: row.minimumSpeed,
          dimension: "ratio",
          data,
        });
    }
    if (row.control === "controllable" && row.controller && !row.controller.included && said.controller !== true)
      add("pump/missing-controller", "warning", pump.path, "maker", {
        data: { ...data, controller: row.controller.label ?? "controller" },
      });
    // Low-voltage pumps bring their own supply; mains pumps must match the mains.
    if (row.voltage > 60 && Math.abs(row.voltage - voltage) > 0.15 * voltage)
      add("pump/wrong-voltage", "danger", pump.path, "maker", {
        value: row.voltage,
        limit: voltage,
        dimension: "voltage",
        data,
      });
  });
  // A pump of the display that is gone has no state, and would be missed in silence.
  system.design.tankPumps?.forEach(({ ref }, i) => {
    if (findPump(system.catalogue, ref) === undefined)
      add("pump/missing", "warning", `/tankPumps/${i}`, "wish", { data: { name: ref, place: "display" } });
  });
  for (const prepared of system.loops) {
    const parallel = prepared.loop.pumps.length > 1 && system.design.loops[prepared.index]?.arrangement !== "series";
    // A valve in the shared line keeps the display's water up; only one at each pump keeps a standing pump from taking the other's.
    const checked = system.design.loops[prepared.index]?.pumps.every((pump) => pump.checkValve === true) === true;
    if (parallel && !checked)
      add("pump/no-check-valve", "notice", prepared.loop.path, "service", {
        data: { name: system.design.loops[prepared.index]?.name ?? "" },
      });
  }
  return found;
}
