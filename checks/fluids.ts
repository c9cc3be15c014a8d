import { spawnSync } from "node:child_process";
import {
  churchill,
  colebrook,
  craneFullyTurbulentFactor,
  haaland,
  suddenContractionLoss,
  suddenExpansionLoss,
  swameeJain,
} from "@tidewright/engine";
import { pythonWithFluids } from "../tools/pythonWithFluids.ts";
import { checksOf } from "./check.ts";

const reynolds = [4e3, 1e4, 3e4, 1e5, 1e6, 1e8];
const roughnesses = [0, 1e-6, 1e-4, 1e-3, 1e-2, 0.05];
const bores = [0.0158, 0.02093, 0.02664, 0.04089, 0.0525, 0.10226];
const pairs = [
  [0.0266, 0.0409],
  [0.0213, 0.0525],
  [0.03, 0.031],
] as const;

const program = `
import json, sys, fluids
from fluids.friction import Colebrook, Haaland, Swamee_Jain_1976, Churchill_1977, ft_Crane
from fluids.fittings import diffuser_sharp, contraction_sharp
q = json.load(sys.stdin)
grid = [(r, e) for r in q["reynolds"] for e in q["roughnesses"]]
print(json.dumps({
  "version": fluids.__version__,
  "colebrook": [Colebrook(r, e) for r, e in grid],
  "haaland": [Haaland(r, e) for r, e in grid],
  "swameeJain": [Swamee_Jain_1976(r, e) for r, e in grid],
  "churchill": [Churchill_1977(r, e) for r, e in grid],
  "crane": [ft_Crane(d) for d in q["bores"]],
  "expansion": [diffuser_sharp(a, b) for a, b in q["pairs"]],
  "contraction": [contraction_sharp(b, a) for a, b in q["pairs"]],
}))
`;

type Answer = Readonly<
  Record<"colebrook" | "haaland" | "swameeJain" | "churchill" | "crane" | "expansion" | "contraction", number[]>
> & { readonly version: string };

/** Friction and fittings as the Python library fluids computes them now; undefined where it is not installed. */
export function fluidsChecks() {
  const python = pythonWithFluids();
  if (python === undefined) return undefined;
  const input = JSON.stringify({ reynolds, roughnesses, bores, pairs });
  const run = spawnSync(python, ["-c", program], { input, encoding: "utf8" });
  if (run.status !== 0) throw new Error(`fluids failed: ${run.stderr}`);
  const answer = JSON.parse(run.stdout) as Answer;
  const grid = reynolds.flatMap((re) => roughnesses.map((e) => [re, e] as const));
  const common = (what: string, tolerance: number, why: string) => ({
    source: `fluids ${answer.version}, ${what}`,
    tag: "other program" as const,
    tolerance,
    why,
  });
  const factors = (what: keyof Answer, ours: (re: number, e: number) => number, tolerance: number, why: string) =>
    checksOf(
      common(what, tolerance, why),
      grid.map(
        ([re, e], i) => [`${what} at Re ${re}, e/D ${e}`, (answer[what] as number[])[i], () => ours(re, e)] as const,
      ),
    );
  return [
    ...factors("colebrook", colebrook, 1e-11, "both solve the formula to rounding"),
    ...factors("haaland", haaland, 1e-12, "the same explicit formula"),
    ...factors("swameeJain", swameeJain, 1e-5, "fluids writes (6.97/Re)^0.9, which is 5.7400/Re^0.9 to five figures"),
    ...factors("churchill", churchill, 1e-9, "the same formula, with sixteenth powers"),
    ...checksOf(
      common("ft_Crane", 0.001, "fluids takes Clamond's solution at its own Re"),
      bores.map((bore, i) => [`fT at ${bore} m`, answer.crane[i], () => craneFullyTurbulentFactor(bore)] as const),
    ),
    ...checksOf(
      common("diffuser_sharp", 1e-12, "the same formula"),
      pairs.map(
        ([a, b], i) => [`expansion ${a} to ${b} m`, answer.expansion[i], () => suddenExpansionLoss(a, b)] as const,
      ),
    ),
    ...checksOf(
      common("contraction_sharp, after Rennels", 1e-9, "the same formula"),
      pairs.map(
        ([a, b], i) =>
          [`contraction ${b} to ${a} m`, answer.contraction[i], () => suddenContractionLoss(b, a, "rennels")] as const,
      ),
    ),
  ];
}
