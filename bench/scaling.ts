/** How the cost of a link grows with the network: fish rooms, and square grids as the hard case. */
import { compileNetwork, convergenceRecord, newNetworkState, solveCompiled } from "@tidewright/engine";
import { figures, printTable, race } from "./measure.ts";
import { fishRoom, grid } from "./networks.ts";

for (const [title, models] of [
  ["fish rooms", [1, 3, 10, 30, 71].map(fishRoom)],
  ["square grids", [3, 6, 10, 16, 22].map(grid)],
] as const) {
  const rows = models.map((model) => {
    const net = compileNetwork(model);
    const state = newNetworkState(net);
    solveCompiled(net, state);
    const { status, iterations } = convergenceRecord(net, state);
    const times = race(
      {
        solve: () => solveCompiled(net, state),
        compile: () => compileNetwork(model),
      },
      20,
      4,
    );
    const solve = (times.get("solve")?.median ?? Number.NaN) / net.linkCount;
    const compile = (times.get("compile")?.median ?? Number.NaN) / net.linkCount;
    return { links: net.linkCount, status, iterations, solve, compile };
  });
  const first = rows[0];
  if (!first) continue;
  console.log(`\n${title}: cold solve to 1e-10 and compiling, median time of a link over that in the smallest network`);
  printTable([
    ["links", "solve us/link", "ratio", "ratio a step", "compile us/link", "ratio", "steps", ""],
    ...rows.map((row) => [
      String(row.links),
      figures(row.solve),
      figures(row.solve / first.solve),
      figures(row.solve / row.iterations / (first.solve / first.iterations)),
      figures(row.compile),
      figures(row.compile / first.compile),
      String(row.iterations),
      row.status,
    ]),
  ]);
}
