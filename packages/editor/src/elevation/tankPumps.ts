import { toSI } from "@tidewright/units";
import type { SceneBuilder } from "./builder.ts";
import { metres } from "./frame.ts";

/** Adds the pumps that stand in the display, each turned the way it blows as seen from the front.
 *  builder the scene
 *  Findings: none. Throws: never.
 *  Valid: any checked design; what lies across the tank is not seen in an elevation.
 *  Source: own construction. */
export function drawTankPumps(builder: SceneBuilder): void {
  const { display } = builder.frame;
  builder.design.tankPumps?.forEach((pump, i) => {
    const path = `/tankPumps/${i}`;
    const state = builder.assessment?.tankPumps.find((one) => one.path === path);
    const at = {
      x: Math.min(Math.max(metres(pump.at[0]), 0.03), display.x1 - 0.03),
      y: Math.min(Math.max(display.y0 + metres(pump.at[2]), display.y0 + 0.03), display.y1 - 0.03),
    };
    const yaw = pump.aim ? toSI(pump.aim.yaw, "angle") : 0;
    const pitch = pump.aim ? toSI(pump.aim.pitch, "angle") : 0;
    const angle = Math.atan2(Math.sin(pitch), Math.cos(pitch) * Math.cos(yaw) || 1e-9);
    const speed = pump.speed ?? 1;
    builder.shapes.push({ kind: "symbol", path, symbol: "tankPump", at, angle, size: 0.075, share: speed });
    builder.parts.push({
      path,
      name: pump.name ?? state?.label ?? pump.ref.replace(/-/g, " "),
      anchor: at,
      figures: state
        ? [
            { value: state.flow, dimension: "flow" },
            { value: state.electricalPower, dimension: "power" },
          ]
        : [{ value: speed, dimension: "share", after: "speed" }],
      rank: 3,
      lean: -Math.PI / 2,
      handle: {
        part: path,
        label: "speed",
        axis: "arc",
        at,
        targets: [{ path: `${path}/speed`, value: speed, sign: 1 }],
        min: 0,
        max: 1,
      },
    });
  });
}
