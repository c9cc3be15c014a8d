import { type Design, valueAt } from "@tidewright/design";
import { boxPlace } from "../plan/boxPlace.ts";
import { typedLength } from "./lengths.ts";
import { type Outcome, refused } from "./outcome.ts";

/** Returns the edits that write down where the overflow box hangs: where the plan shows it as long as nothing is said.
 *  design checked design   -> Outcome
 *  Source: own construction. */
export function giveWall(design: Design): Outcome {
  const { extent, wall, placed } = boxPlace(design);
  if (placed) return refused("drawing.why.nothingHere");
  const along = Math.max(0, wall === "back" ? extent.x0 : extent.y0);
  return {
    ok: true,
    edits: [
      { op: "set", path: "/overflow/box/at", value: { wall, along: typedLength(along, design.display.length.unit) } },
    ],
    select: "/overflow/box",
    label: { key: "drawing.act.giveWall" },
  };
}

/** Returns the edits that give a pump in the display an aim to turn: level and along the tank, as it is drawn.
 *  design   path of the pump   -> Outcome
 *  Source: own construction. */
export function giveAim(design: Design, path: string): Outcome {
  if (!/^\/tankPumps\/\d+$/.test(path) || valueAt(design, path) === undefined)
    return refused("drawing.why.nothingHere");
  const degrees = (value: number) => ({ value, unit: "deg" });
  return {
    ok: true,
    edits: [{ op: "set", path: `${path}/aim`, value: { yaw: degrees(0), pitch: degrees(0) } }],
    select: path,
    label: { key: "drawing.act.giveAim" },
  };
}
