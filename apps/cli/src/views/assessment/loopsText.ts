import type { Assessment } from "@tidewright/advice";
import type { Look } from "../../output/deliver.ts";
import { between } from "../../output/format.ts";
import { tableText } from "../../output/table.ts";

const right = { align: "right" } as const;

/** Returns flows and heads of every loop, then of its outlets and devices. */
export function loopsText({ loops, outlets, devices, turnover }: Assessment, { format, width }: Look): string {
  const circuits = tableText(
    [
      { head: "loop", flexible: true },
      { head: "flow", ...right },
      { head: "lies within", ...right },
      { head: "static", ...right },
      { head: "total head", ...right },
    ],
    loops.map((loop) => [
      loop.name,
      format(loop.flow, "flow"),
      between(format, loop.flowRange, "flow"),
      format(loop.staticHead, "head"),
      format(loop.totalHead, "head"),
    ]),
    width,
  );
  const ends = tableText(
    [
      { head: "outlet or device", flexible: true },
      { head: "flow", ...right },
      { head: "works with", flexible: true },
    ],
    [
      ...outlets.map((outlet) => [
        `${outlet.place} (${outlet.path})`,
        format(outlet.flow, "flow"),
        `jet ${format(outlet.jetVelocity, "velocity")}`,
      ]),
      ...devices.map((device) => [
        `${device.label} (${device.path})`,
        format(device.flow, "flow"),
        between(format, device.flowRange, "flow"),
      ]),
    ],
    width,
  );
  const turnovers = tableText(
    [
      { head: "turnover", flexible: true },
      { head: "found", ...right },
      { head: "wished", ...right },
    ],
    (["return", "total"] as const).map((which) => {
      const { value, wish } = turnover[which];
      const name = which === "return" ? "through the sump" : "all water movement";
      return [name, format(value, "turnover"), wish === undefined ? "no wish" : between(format, wish, "turnover")];
    }),
    width,
  );
  return [circuits, ends, turnovers].filter((each) => each !== "").join("\n\n");
}
