/** How the cost of a link grows with the network: fish rooms, and square grids as the hard case. */
import { compileNetwork, convergenceRecord, newNetworkState, solveCompiled } from "@tidewright/engine";
import { figures, printTable, race } from "./measure.ts";
import { fishRoom, grid } from "./networks.ts";

for (const [title, models] of [
  ["fish rooms", [1, 3, 10, 30, 71].map(fishRoom)],
  ["square grids", [3, 6, 10, 16, 22].map(grid)],
] as const) {
  const cases = models.map((model) => {
    const net = compileNetwork(model);
    const state = newNetworkState(net);
    solveCompiled(net, state);
    return { model, net, state, ...convergenceRecord(net, state) };
  });
  // All sizes take turns; the least of many batches is kept, as the cost that the network itself has.
  const times = race(
    Object.fromEntries(
      cases.flatMap(({ model, net, state }, i) => [
        [`solve ${i}`, () => solveCompiled(net, state)],
        [`compile ${i}`, () => compileNetwork(model)],
      ]),
    ),
    40,
    2,
  );
  const rows = cases.map(({ net, status, iterations }, i) => {
    const each = (task: string) => (times.get(`${task} ${i}`)?.least ?? Number.NaN) / net.linkCount;
    return { links: net.linkCount, status, iterations, solve: each("solve"), compile: each("compile") };
  });
  const first = rows[0];
  if (!first) continue;
  console.log(`\n${title}: cold solve to 1e-10 and compiling, least time of a link over that in the smallest network`);
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
