import type { SizedPart } from "@tidewright/design";
import type { Finding } from "../finding.ts";
import { collect } from "./collect.ts";
import { limits } from "./limits.ts";
import type { Subject } from "./subject.ts";

/** Pipes, outlets, devices, and what service needs. */
export function lineFindings({ system, state }: Subject): Finding[] {
  const { found, add } = collect();
  for (const part of state.parts) {
    if (part.kind !== "pipe") continue;
    const speed = Math.abs(part.velocity);
    if (part.side === "drain") continue;
    const limit = part.side === "suction" ? limits.suctionPipeSpeed : limits.pressurePipeSpeed;
    const numbers = { value: speed, limit: limit.value, dimension: "velocity", data: { name: part.label } };
    if (speed > limit.value)
      add(
        "pipe/fast",
        speed > 1.7 * limit.value ? "warning" : "notice",
        part.path,
        part.side === "suction" ? "suctionPipeSpeed" : "pressurePipeSpeed",
        numbers,
      );
    else if (speed > 0 && speed < limits.slowPipeSpeed.value)
      add("pipe/slow", "notice", part.path, "slowPipeSpeed", { ...numbers, limit: limits.slowPipeSpeed.value });
    if (part.reynolds > 2000 && part.reynolds < limits.turbulent.value)
      add("pipe/uncertain-regime", "notice", part.path, "turbulent", {
        value: part.reynolds,
        limit: limits.turbulent.value,
        data: { name: part.label },
      });
  }
  for (const outlet of state.outlets)
    if (outlet.flow < -1e-9)
      add("flow/no-lift", "danger", outlet.path, "geometry", {
        value: outlet.flow,
        limit: 0,
        dimension: "flow",
        data: { name: `the outlet to ${outlet.place}` },
      });
  for (const outlet of state.outlets)
    if (outlet.jetVelocity > limits.jetSpeed.value)
      add("outlet/jet-fast", "warning", outlet.path, "jetSpeed", {
        value: outlet.jetVelocity,
        limit: limits.jetSpeed.value,
        dimension: "velocity",
      });
  for (const device of state.devices) {
    const [low, high] = device.flowRange;
    const data = { name: device.label };
    if (device.flow < low)
      add("device/flow-low", "warning", device.path, "maker", {
        value: device.flow,
        limit: low,
        dimension: "flow",
        data,
      });
    else if (device.flow > high)
      add("device/flow-high", "warning", device.path, "maker", {
        value: device.flow,
        limit: high,
        dimension: "flow",
        data,
      });
  }
  for (const drain of system.drains) bulkheads(drain.parts, add);
  for (const { loop, index } of system.loops) {
    bulkheads(
      loop.sections.flatMap((section) => section.parts),
      add,
    );
    const parts = loop.sections.flatMap((section) => section.parts);
    const name = system.design.loops[index]?.name ?? "";
    const opens = parts.some((part) => part.fitting === "union" || part.valve !== undefined);
    if (!opens) add("service/no-union", "notice", loop.path, "service", { data: { name } });
    if (
      loop.suctionBore !== undefined &&
      !loop.sections.some((section) => section.side === "suction" && section.parts.some((part) => part.valve))
    )
      add("service/no-valve", "notice", `${loop.path}/suction`, "service", { data: { name } });
  }
  return found;
}

/** A bulkhead narrower than the pipe after it throttles the whole line. */
function bulkheads(parts: readonly SizedPart[], add: ReturnType<typeof collect>["add"]): void {
  parts.forEach((part, i) => {
    if (part.fitting !== "bulkhead") return;
    const pipe = parts.slice(i + 1).find((after) => after.kind === "pipe");
    if (pipe && part.diameter < 0.95 * pipe.diameter)
      add("pipe/bulkhead-undersized", "warning", part.path, "geometry", {
        value: part.diameter,
        limit: pipe.diameter,
        dimension: "length",
      });
  });
}
