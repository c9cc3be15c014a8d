/** `assess` of the demonstration job, with and without its curve pictures, over one cold solve of its return network. */
import { assess } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { loopModel } from "@tidewright/design";
import { compileNetwork, newNetworkState, seaWater, solveCompiled } from "@tidewright/engine";
import { demoDesign } from "./demoDesign.ts";
import { figures, printTable, race } from "./measure.ts";

const design = demoDesign();
const loop = design.loops[0];
if (!loop) throw new Error("the demonstration job has no loop");
const net = compileNetwork(loopModel(loop, 0, demoCatalogue, seaWater(35, 25.5), "crane", 0).model);
const state = newNetworkState(net);

const times = race({
  "one cold network solve": () => solveCompiled(net, state),
  "assess, no curves": () => assess(design, demoCatalogue, { curves: false }),
  "assess, with curves": () => assess(design, demoCatalogue),
});
const base = times.get("one cold network solve")?.median ?? Number.NaN;
console.log(`${design.name}: ${net.linkCount} links in the return loop`);
printTable([
  ["in one run", "least ms", "median ms", "over one solve"],
  ...[...times].map(([name, { least, median }]) => [
    name,
    figures(least / 1000),
    figures(median / 1000),
    figures(median / base),
  ]),
]);
