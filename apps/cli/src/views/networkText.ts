import type { NetworkAnswer } from "@tidewright/design";
import type { Look } from "../output/deliver.ts";
import { counted } from "../output/format.ts";
import { tableText } from "../output/table.ts";
import { section } from "./section.ts";

/** Returns the answer of a network as tables of nodes and links. */
export function networkText(answer: NetworkAnswer, look: Look): string {
  const { format, styles, width } = look;
  const steps = counted(answer.iterations, "iteration");
  const told = `${answer.status} after ${steps}, residual ${answer.residual.toExponential(1)}`;
  const nodes = tableText(
    [
      { head: "node", flexible: true },
      { head: "head", align: "right" },
      { head: "pressure", align: "right" },
    ],
    answer.nodes.map(({ id, head, pressure }) => [id, format(head, "head"), format(pressure, "pressure")]),
    width,
  );
  const links = tableText(
    [
      { head: "link", flexible: true },
      { head: "flow", align: "right" },
      { head: "velocity", align: "right" },
      { head: "head loss", align: "right" },
    ],
    answer.links.map(({ id, flow, velocity, headLoss }) => [
      id,
      format(flow, "flow"),
      format(velocity ?? Number.NaN, "velocity"),
      format(headLoss, "head"),
    ]),
    width,
  );
  const verdict = answer.status === "converged" ? told : styles.red(`Not solved: ${told}`);
  return [verdict, section("Nodes", nodes, look), section("Links", links, look)].join("\n\n");
}
