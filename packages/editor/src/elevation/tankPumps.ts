import { toSI } from "@tidewright/units";
import type { SceneBuilder } from "./builder.ts";
import { metres } from "./frame.ts";
import { mirroredPart, mirroredShape } from "./mirrored.ts";
import type { BoundTarget, Handle, Point, ScenePart, Shape } from "./scene.ts";

/** Adds the pumps that stand in the display, each turned the way it blows as seen from the front.
 *  builder the scene
 *  Findings: none. Throws: never.
 *  Valid: any checked design; what lies across the tank is not seen in an elevation.
 *  Source: own construction. */
export function drawTankPumps(builder: SceneBuilder): void {
  const { display, flow } = builder.frame;
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
    const shape: Shape = { kind: "symbol", path, symbol: "tankPump", at, angle, size: 0.075, share: speed };
    const part: ScenePart = {
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
      grips: gripsOf(builder, i, at, yaw, pitch),
    };
    // Its place is where the document says, whichever way the rest of the picture runs.
    builder.shapes.push(flow < 0 ? mirroredShape(shape, display.x1) : shape);
    builder.parts.push(flow < 0 ? mirroredPart(part, display.x1) : part);
  });
}

/** Least share of a level aim that is drawn, so that one across the tank can still be turned up and down. */
const leastAcross = 0.5;

/** Its place along and up, and its aim up and down; what lies across is for the plan. */
function gripsOf(builder: SceneBuilder, index: number, at: Point, yaw: number, pitch: number): readonly Handle[] {
  const { display } = builder.frame;
  const path = `/tankPumps/${index}`;
  const pump = builder.design.tankPumps![index]!;
  const target = (k: 0 | 2, max: number): BoundTarget => ({
    path: `${path}/at/${k}`,
    unit: pump.at[k].unit,
    value: pump.at[k].value,
    sign: 1,
    min: 0,
    max,
  });
  const across = Math.cos(yaw);
  return [
    {
      part: path,
      label: "pump in the display",
      axis: "place",
      at,
      along: target(0, display.x1),
      up: target(2, display.y1 - display.y0),
    },
    {
      part: path,
      label: "aim of the pump",
      axis: "aim",
      at,
      path: `${path}/aim`,
      yaw: pump.aim?.yaw ?? { value: 0, unit: "deg" },
      pitch,
      across: (across < -1e-9 ? -1 : 1) * Math.max(leastAcross, Math.abs(across)),
    },
  ];
}
