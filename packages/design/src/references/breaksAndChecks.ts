import type { Loop } from "../schema/loops.ts";
import type { Part } from "../schema/parts.ts";

const checkValves: readonly (string | undefined)[] = ["swingCheck", "springCheck", "footValve"];

/** Whether a fitting lets water through one way only. */
export function isCheckValve(fitting: string | undefined): boolean {
  return checkValves.includes(fitting);
}

/** Returns whether a loop has a check valve anywhere: in its run, its suction, or at a pump.
 *  loop Loop   -> boolean
 *  Findings: none. Throws: never.
 *  Valid: any loop that the schema allows.
 *  Source: own construction.
 *  Example: hasCheckValve({ pumps: [{}], run: [{ kind: "fitting", fitting: "swingCheck" }] })  ->  true */
export function hasCheckValve({ run, suction, pumps }: Loop): boolean {
  if (pumps.some((pump) => pump.checkValve === true)) return true;
  return hasPart([...(suction ?? []), ...run], (part) => part.kind === "fitting" && isCheckValve(part.fitting));
}

/** Returns whether an outlet of a loop has a siphon break.
 *  loop Loop   -> boolean
 *  Findings: none. Throws: never.
 *  Valid: any loop that the schema allows.
 *  Source: own construction.
 *  Example: hasSiphonBreak({ pumps: [{}], run: [{ kind: "outlet", to: "display" }] })  ->  false */
export function hasSiphonBreak({ run }: Loop): boolean {
  return hasPart(run, (part) => part.kind === "outlet" && part.siphonBreak !== undefined);
}

function hasPart(run: readonly Part[], wanted: (part: Part) => boolean): boolean {
  return run.some(
    (part) => wanted(part) || (part.kind === "tee" && part.branches.some((branch) => hasPart(branch, wanted))),
  );
}
