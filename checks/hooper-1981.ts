import { fittingLossSpread } from "@tidewright/engine";
import { checksOf } from "./check.ts";

const at = (kind: Parameters<typeof fittingLossSpread>[0], method: "hooper" | "darby") => () =>
  fittingLossSpread(kind, 0.02664, 3e4).byMethod[method] ?? Number.NaN;

const rows = [
  ["elbow90", 0.808, 0.727],
  ["elbow90Bend", 0.515, 0.482],
  ["elbow90Sweep", 0.417, 0.396],
  ["elbow45", 0.407, 0.386],
  ["teeRun", 0.202, 0.462],
  ["teeBranch", 1.384, 1.387],
  ["ballValve", 0.205, 0.087],
  ["gateValve", 0.205, 0.191],
  ["globeValve", 7.86, 7.87],
  ["swingCheck", 2.98, 2.35],
] as const;

/** Two- and three-constant fittings at 1 in and Re 3e4. */
export const hooper1981 = [
  ...checksOf(
    {
      source: "W. B. Hooper, Chemical Engineering, 24 Aug 1981, constants as in fluids 1.0.22",
      tag: "other program",
      tolerance: 0.006,
      why: "three printed figures of the expected K",
    },
    rows.map(([kind, hooper]) => [`Hooper's K of ${kind}`, hooper, at(kind, "hooper")] as const),
  ),
  ...checksOf(
    {
      source: "P. M. Silverberg and R. Darby, Chemical Engineering 106(7) (1999), constants as in fluids 1.0.22",
      tag: "other program",
      tolerance: 0.006,
      why: "three printed figures of the expected K",
    },
    rows.map(([kind, , darby]) => [`Darby's K of ${kind}`, darby, at(kind, "darby")] as const),
  ),
];
