import type { Assessment } from "@tidewright/advice";
import type { Look } from "../../output/deliver.ts";
import { percent } from "../../output/format.ts";
import { tableText } from "../../output/table.ts";

const right = { align: "right" } as const;

/** Returns where each pump works on its curve, then the pumps in the display. */
export function pumpsText({ pumps, tankPumps }: Assessment, { format, width }: Look): string {
  const onCurve = tableText(
    [
      { head: "pump", flexible: true },
      { head: "speed", ...right },
      { head: "flow", ...right },
      { head: "head", ...right },
      { head: "of shut-off", ...right },
      { head: "on curve", ...right },
      { head: "power", ...right },
      { head: "efficiency", ...right },
    ],
    pumps.map((pump) => [
      pump.label,
      percent(pump.speed),
      format(pump.flow, "flow"),
      format(pump.head, "head"),
      format(pump.shutoffHead, "head"),
      pump.beyondLastPoint ? "past its end" : percent(pump.placeOnCurve),
      format(pump.electricalPower, "power"),
      percent(pump.efficiency),
    ]),
    width,
  );
  const inTank = tableText(
    [
      { head: "pump in the display", flexible: true },
      { head: "flow", ...right },
      { head: "power", ...right },
    ],
    tankPumps.map((pump) => [pump.label, format(pump.flow, "flow"), format(pump.electricalPower, "power")]),
    width,
  );
  const note = pumps.length === 0 ? "" : "  On curve: 0 % is shut-off, 100 % the largest flow at this speed.";
  return [onCurve, note, inTank].filter((each) => each !== "").join("\n\n");
}
