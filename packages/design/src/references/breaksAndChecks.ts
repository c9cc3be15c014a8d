import type { Loop } from "../schema/loops.ts";
import type { Part } from "../schema/parts.ts";

const checkValves: readonly string[] = ["swingCheck", "springCheck", "footValve"];

/** Whether a loop has a check valve anywhere, its suction included. */
export function hasCheckValve({ run, suction, pumps }: Loop): boolean {
  if (pumps.some((pump) => pump.checkValve === true)) return true;
  return hasPart([...(suction ?? []), ...run], (part) => part.kind === "fitting" && checkValves.includes(part.fitting));
}

/** Whether an outlet of a loop has a siphon break. */
export function hasSiphonBreak({ run }: Loop): boolean {
  return hasPart(run, (part) => part.kind === "outlet" && part.siphonBreak !== undefined);
}

function hasPart(run: readonly Part[], wanted: (part: Part) => boolean): boolean {
  return run.some(
    (part) => wanted(part) || (part.kind === "tee" && part.branches.some((branch) => hasPart(branch, wanted))),
  );
}
