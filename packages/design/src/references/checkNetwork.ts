import { valves } from "@tidewright/catalogue";
import type { Problem } from "../problem.ts";
import { listed } from "../read/nearest.ts";
import { type Add, fieldOf, listOf, noteDoubles, numberOf, siOf, textOf } from "./loose.ts";
import { partsWithoutHead } from "./partsWithoutHead.ts";
import { lossPointProblems, pumpPointProblems } from "./pointProblems.ts";
import { unknownName } from "./unknownName.ts";

/** Returns what in a network section does not fit together; complete.
 *  section a NetworkSection, or any value of that shape with mistakes in it   -> Problem[]; paths begin at the section
 *  Findings: none; problems are ids given twice, link ends that are no nodes, links from a node to itself, parts of the
 *  network without a fixed head, pump curves that rise or hold a flow twice, losses that fall, links without any
 *  resistance, valves without a loss. Throws: never.
 *  Valid: entries that the schema does not allow are passed over: `readNetwork` names them and does both.
 *  Source: a flow network has one solution when every part holds a known head; L. A. Rossman et al., EPANET 2.2 Users
 *  Manual (EPA/600/R-20/133), error 233 and its neighbours.
 *  Example: checkNetwork({ nodes: [{ id: "a", kind: "junction" }], links: [] })[0].message  ->  "no fixed head anywhere in the part of the network with \"a\"" */
export function checkNetwork(section: unknown): Problem[] {
  const problems: Problem[] = [];
  const add = (problem: Problem) => {
    problems.push(problem);
  };
  const nodes = listOf(section, "nodes");
  const links = listOf(section, "links");
  noteDoubles(nodes, "id", "/nodes", "node", add);
  noteDoubles(links, "id", "/links", "link", add);
  const ids = new Set(nodes.flatMap((node) => textOf(node, "id") ?? []));
  const rows = [...ids].map((id) => ({ id }));
  links.forEach((link, i) => {
    const path = `/links/${i}`;
    for (const end of ["from", "to"]) {
      const name = textOf(link, end);
      if (name !== undefined && !ids.has(name)) unknownName(name, rows, `${path}/${end}`, "node", add);
    }
    const from = textOf(link, "from");
    if (from !== undefined && from === textOf(link, "to"))
      add({
        path: `${path}/to`,
        message: `the link begins and ends at the same node "${from}"`,
        value: from,
        fix: "let it end at another node",
      });
    linkProblems(link, path, add);
  });
  for (const part of partsWithoutHead(nodes, links))
    add({
      path: "/nodes",
      message: `no fixed head anywhere in the part of the network with ${listed(part, 200)}`,
      value: part,
      fix: "make one of its nodes a fixedHead, or join the part to one",
    });
  return problems;
}

function linkProblems(link: unknown, path: string, add: Add): void {
  const kind = textOf(link, "kind");
  if (kind === "pump") pumpPointProblems(listOf(link, "curve", "points"), `${path}/curve/points`, add);
  if (kind === "device") lossPointProblems(listOf(link, "lossPoints"), `${path}/lossPoints`, add);
  if (kind === "pipe" && siOf(link, "length", "length") === 0 && (numberOf(link, "minorLoss") ?? 0) === 0)
    add({
      path: `${path}/length`,
      message: "the pipe has neither a length nor a minor loss, so it is no pipe",
      value: fieldOf(link, "length"),
      fix: "give its length or its minor loss, or make its two nodes one",
    });
  if (kind === "valve") valveProblems(link, path, add);
}

function valveProblems(link: unknown, path: string, add: Add): void {
  const coefficient = fieldOf(link, "lossCoefficient");
  const name = fieldOf(link, "valve");
  const opening = fieldOf(link, "opening");
  if (coefficient === undefined && name === undefined)
    add({
      path,
      message: "the valve has no loss",
      value: link,
      fix: 'give "lossCoefficient", null for a closed valve, or "valve" with its "opening"',
    });
  if (coefficient !== undefined && (name !== undefined || opening !== undefined))
    add({
      path: `${path}/lossCoefficient`,
      message: "the valve has both a loss coefficient and a type or an opening",
      value: coefficient,
      fix: "keep one of them",
    });
  if (coefficient === undefined && name === undefined && opening !== undefined)
    add({
      path: `${path}/opening`,
      message: "an opening alone gives no loss",
      value: opening,
      fix: `add "valve" with one of ${listed(valves.map((row) => row.id))}`,
    });
  if (typeof name === "string") unknownName(name, valves, `${path}/valve`, "valve", add);
}
