/** Water over time on the demonstration job: each scenario and the whole sweep, over one `assess` of the same job in the same run. */
import { assess, safetySweep, scenariosOf, whatIf } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { demoDesign } from "./demoDesign.ts";
import { figures, printTable, race } from "./measure.ts";

const design = demoDesign();
const scenarios = scenariosOf(design);
const find = (kind: string) => {
  const found = scenarios.find((scenario) => scenario.kind === kind);
  if (!found) throw new Error(`the demonstration job has no scenario "${kind}"`);
  return found;
};
const cut = find("powerCut");
const day = { ...find("strainerFurs") };
const tenDays = find("topOffFails");

const times = race(
  {
    "assess, no curves": () => assess(design, demoCatalogue, { curves: false }),
    "power cut, 30 min": () => whatIf(design, demoCatalogue, cut, false),
    "power cut, 30 min, with its film": () => whatIf(design, demoCatalogue, cut, true),
    "power cut and restart, 60 min": () => whatIf(design, demoCatalogue, find("restart"), false),
    "a strainer furs, 24 h": () => whatIf(design, demoCatalogue, day, false),
    "top-off fails, 10 days": () => whatIf(design, demoCatalogue, tenDays, false),
    [`whole sweep, ${scenarios.length} scenarios and answers`]: () => safetySweep(design, demoCatalogue),
  },
  12,
);
const base = times.get("assess, no curves")?.median ?? Number.NaN;
console.log(`${design.name}: water over time`);
printTable([
  ["in one run", "least ms", "median ms", "over one assess"],
  ...[...times].map(([name, { least, median }]) => [
    name,
    figures(least / 1000),
    figures(median / 1000),
    figures(median / base),
  ]),
]);
console.log(`aims: 30 min power cut below 20 ms, whole sweep below 1000 ms`);
