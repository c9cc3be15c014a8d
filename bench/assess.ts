/** `assess` of the demonstration job, with and without its curve pictures, over one cold solve of its return network. */
import { assess } from "@tidewright/advice";
import { demoCatalogue, findPipeSeries } from "@tidewright/catalogue";
import { type Design, loopModel } from "@tidewright/design";
import { compileNetwork, newNetworkState, seaWater, solveCompiled } from "@tidewright/engine";
import { demoDesign } from "./demoDesign.ts";
import { figures, printTable, race } from "./measure.ts";

const design = demoDesign();
const loop = design.loops[0];
if (!loop) throw new Error("the demonstration job has no loop");
const net = compileNetwork(loopModel(loop, 0, demoCatalogue, seaWater(35, 25.5), "crane", 0).model);
const state = newNetworkState(net);

/** Documents that nobody has seen before: no two share an object. */
const copies = Array.from({ length: 24 }, () => structuredClone(design));
/** The same with other bores in the main run: their tees differ, so that no compiled network of one serves another. More of them
 *  than networks are kept. */
const others = Array.from({ length: 60 }, (_, i) => {
  const copy = structuredClone(design);
  for (const part of copy.loops[0]?.run ?? [])
    if (part.kind === "pipe") {
      const bore = part.bore?.value ?? 1000 * (findPipeSeries(part.series ?? "")?.innerDiameter ?? 0.03);
      part.bore = { value: bore + 0.001 * (i + 1), unit: "mm" };
    }
  return copy;
});
let turn = 0;
/** The stand moved by a tenth of a millimetre, as in a drag: the rest of the document stays as it is. */
const dragged = (): Design => ({
  ...design,
  display: { ...design.display, standHeight: { value: 850 + (++turn % 100) / 10, unit: "mm" } },
});
const without = { curves: false };

const times = race({
  "one cold network solve": () => solveCompiled(net, state),
  "assess, a fresh document": () => assess(copies[++turn % copies.length] as Design, demoCatalogue, without),
  "assess, fresh, no network known": () => assess(others[++turn % others.length] as Design, demoCatalogue, without),
  "assess, one field edited": () => assess(dragged(), demoCatalogue, without),
  "assess, the same again": () => assess(design, demoCatalogue, without),
  "assess with curves, a fresh document": () => assess(copies[++turn % copies.length] as Design, demoCatalogue),
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
