/** `assess` of the demonstration job, with and without its curve pictures, over one cold solve of its return network. */
import { type AssessOptions, assess } from "@tidewright/advice";
import { demoCatalogue, findPipeSeries } from "@tidewright/catalogue";
import { type Design, loopModel } from "@tidewright/design";
import { compileNetwork, newNetworkState, seaWater, solveCompiled } from "@tidewright/engine";
import { demoDesign } from "./demoDesign.ts";
import { figures, printTable, race } from "./measure.ts";

const given = demoDesign();

/** The job anew, with the bores of its main run written out and wider by some micrometres. All copies are made alike, as documents are
 *  that come through one reader. */
function copy(wider: number): Design {
  const made = structuredClone(given);
  for (const part of made.loops[0]?.run ?? [])
    if (part.kind === "pipe") {
      const bore = findPipeSeries(part.series ?? "")?.innerDiameter ?? 0.03;
      part.bore = { value: 1000 * bore + 0.001 * wider, unit: "mm" };
    }
  return made;
}

const design = copy(0);
const loop = design.loops[0];
if (!loop) throw new Error("the demonstration job has no loop");
const net = compileNetwork(loopModel(loop, 0, demoCatalogue, seaWater(35, 25.5), "crane", 0).model);
const state = newNetworkState(net);

/** Documents that share no object with each other: few, as one fresh from its reader is still in the cache. */
const copies = Array.from({ length: 4 }, () => copy(0));
/** With other bores their tees differ, so that no compiled network of one serves another; more of them than networks are kept. */
const others = Array.from({ length: 40 }, (_, i) => copy(i + 1));
let turn = 0;
/** The stand moved by a tenth of a millimetre, as in a drag: the rest of the document stays as it is. */
const dragged = (): Design => ({
  ...design,
  display: { ...design.display, standHeight: { value: 850 + (++turn % 100) / 10, unit: "mm" } },
});
const without = { curves: false };

const fresh = (options: AssessOptions) => assess(copies[++turn % copies.length] as Design, demoCatalogue, options);
// Two races: what compiles networks leaves garbage, which would fall on the others' turns.
const times = new Map([
  ...race({
    "assess, a fresh document": () => fresh(without),
    "assess, the same again": () => assess(design, demoCatalogue, without),
    "one cold network solve": () => solveCompiled(net, state),
  }),
  ...race({
    "assess, one field edited": () => assess(dragged(), demoCatalogue, without),
    "assess, fresh, no network known": () => assess(others[++turn % others.length] as Design, demoCatalogue, without),
    "assess with curves, a fresh document": () => fresh({}),
  }),
]);
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
