/** The 13-link network: ours against EPANET (epanet-js), both in memory and warm, in one run. */
import {
  compileNetwork,
  convergenceRecord,
  newNetworkState,
  type PipeLink,
  type PumpLink,
  setLink,
  solveCompiled,
} from "@tidewright/engine";
import { openInEpanet } from "./epanetPeer.ts";
import { figures, printTable, race } from "./measure.ts";
import { thirteenLinks, thirteenLinksWithTees } from "./networks.ts";

const model = thirteenLinks();
const peer = await openInEpanet(model, 1e-3);
const net = compileNetwork(model);
const state = newNetworkState(net);
const cold = { tolerance: 1e-9 };
const warm = { tolerance: 1e-9, warm: true };
const display = net.nodeIndex.get("display0") as number;
const level = net.head[display] as number;
const branch = net.linkIndex.get("b20") as number;
const open = model.links[branch] as PipeLink;
const throttled = { ...open, minorLoss: 1.1 * open.minorLoss };
const pump = net.linkIndex.get("pump0") as number;
const running = model.links[pump] as PumpLink;
const slower = { ...running, pump: { ...running.pump, speedRatio: 0.98 } };
const teeNet = compileNetwork(thirteenLinksWithTees());
const teeState = newNetworkState(teeNet);
const teeDisplay = teeNet.nodeIndex.get("display0") as number;
let moves = 0;
let teeMoves = 0;
let turns = 0;
let speeds = 0;

peer.cold();
solveCompiled(net, state);
const theirs = peer.flows();
const apart = Math.max(...theirs.map((flow, l) => Math.abs(flow / (state.flow[l] as number) - 1)));
console.log(`${net.linkCount} links; largest difference of any flow ${figures(100 * apart)} %`);
const steps: Record<string, string> = {};
const note = (name: string) => {
  const { iterations, residual } = name.includes("tee")
    ? convergenceRecord(teeNet, teeState)
    : convergenceRecord(net, state);
  steps[name] = `${iterations} steps, residual ${figures(residual)}`;
};

const ours: Record<string, () => unknown> = {
  "ours, cold, residual 1e-9": () => solveCompiled(net, state, cold),
  "ours, cold, residual 1e-10": () => solveCompiled(net, state),
  "ours, warm, a level moved 1 mm": () => {
    net.head[display] = level + (++moves % 2) * 1e-3;
    return solveCompiled(net, state, warm);
  },
  "ours, warm, a valve turned by 10 %": () => {
    setLink(net, branch, ++turns % 2 ? throttled : open);
    return solveCompiled(net, state, warm);
  },
  "ours, warm, the pump's speed changed by 2 %": () => {
    net.pumps[pump] = ++speeds % 2 ? slower : running;
    return solveCompiled(net, state, warm);
  },
  "ours with tee losses, cold, residual 1e-9": () => solveCompiled(teeNet, teeState, cold),
  "ours with tee losses, warm, a level moved 1 mm": () => {
    teeNet.head[teeDisplay] = level + (++teeMoves % 2) * 1e-3;
    return solveCompiled(teeNet, teeState, warm);
  },
  "ours, compile and solve cold": () => {
    const fresh = compileNetwork(model);
    return solveCompiled(fresh, newNetworkState(fresh), cold);
  },
};
for (const [name, run] of Object.entries(ours)) {
  run();
  if (!name.includes("compile")) note(name);
}
teeNet.head[teeDisplay] = level;
net.pumps[pump] = running;
net.head[display] = level;
setLink(net, branch, open);

const times = race({ "EPANET, cold, accuracy 1e-3": peer.cold, ...ours });
const base = [...times.values()][0];
printTable([
  ["in one run", "least us", "median us", "over EPANET", "how"],
  ...[...times].map(([name, { least, median }]) => [
    name,
    figures(least),
    figures(median),
    figures(median / (base?.median ?? Number.NaN)),
    steps[name] ?? "",
  ]),
]);
