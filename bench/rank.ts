/** Ranks 10,000 pumps for the demonstration job, against the bound of one exact network solve a pump. */
import { rank } from "@tidewright/advice";
import { demoCatalogue, type PumpRow } from "@tidewright/catalogue";
import { loopModel, pumpHydraulics } from "@tidewright/design";
import { compileNetwork, newNetworkState, seaWater, solveCompiled } from "@tidewright/engine";
import { demoDesign } from "./demoDesign.ts";
import { figures, printTable, race } from "./measure.ts";

const count = 10_000;
const design = demoDesign();

/** The demonstration pumps over and over, flows and heads stretched by factors between 0.6 and 1.6 that never repeat together. */
const pumps = Array.from({ length: count }, (_, i): PumpRow => {
  const row = demoCatalogue.pumps[i % demoCatalogue.pumps.length] as PumpRow;
  const flowFactor = 0.6 + ((i * 0.6180339887) % 1);
  const headFactor = 0.6 + ((i * 0.7548776662) % 1);
  return {
    ...row,
    id: `${row.id}-${i}`,
    curves: row.curves.map((curve) => ({
      ...curve,
      points: curve.points.map(({ flow, head }) => ({ flow: flow * flowFactor, head: head * headFactor })),
      ...(curve.power ? { power: curve.power.map(({ flow, power }) => ({ flow: flow * flowFactor, power })) } : {}),
    })),
  };
});
const catalogue = { ...demoCatalogue, pumps };

const loop = design.loops[0];
if (!loop) throw new Error("the demonstration job has no loop");
const net = compileNetwork(loopModel(loop, 0, demoCatalogue, seaWater(35, 25.5), "crane", 0).model);
const state = newNetworkState(net);
solveCompiled(net, state);
const display = net.junctionCount + 1;
const head = net.head[display] as number;

const answer = rank(design, catalogue, { pairs: false });
console.log(
  `${answer.considered} pumps: ${answer.candidates.length} candidates, ${answer.rejections.length} rejected, ${answer.candidates.filter((candidate) => candidate.paretoFront).length} on the front`,
);
const times = race(
  {
    "10,000 exact solves of the network, warm": () => {
      for (let i = 0; i < count; i++) {
        net.head[display] = head + 1e-3 * (i % 7);
        solveCompiled(net, state, { warm: true });
      }
    },
    "10,000 exact solves of the network, cold": () => {
      for (let i = 0; i < count; i++) solveCompiled(net, state);
    },
    "preparing 10,000 pump curves": () => {
      for (const row of pumps) pumpHydraulics({ ...row });
    },
    "rank, curves prepared": () => rank(design, catalogue, { pairs: false }),
    "rank, fresh catalogue": () =>
      rank(design, { ...catalogue, pumps: pumps.map((row) => ({ ...row })) }, { pairs: false }),
  },
  15,
  1,
);
const base = times.get("10,000 exact solves of the network, cold")?.median ?? Number.NaN;
printTable([
  ["in one run", "least ms", "median ms", "over cold solves"],
  ...[...times].map(([name, { least, median }]) => [
    name,
    figures(least / 1000),
    figures(median / 1000),
    figures(median / base),
  ]),
]);
