import { type NetworkModel, type NetworkSolution, pipeHeadLoss, pumpHeadAtSpeed } from "@tidewright/engine";

/** Reads an answer afresh from the model alone: balance at every junction, energy along every link, and whether what is
 *  shut has reason to be. Returns what is wrong, empty when the answer holds. */
export function judge(model: NetworkModel, answer: NetworkSolution): string[] {
  const wrong: string[] = [];
  if (answer.status === "unreachable")
    return demandsAreReachable(model) ? ["says unreachable, yet every demand has a way"] : [];
  if (answer.status !== "converged")
    return [`ends as ${answer.status} after ${answer.iterations} steps, residual ${answer.residual}`];
  if (!(answer.residual < 1e-9)) wrong.push(`residual ${answer.residual}`);
  const head = new Map(model.nodes.map((node, i) => [node.id, answer.heads[i]]));
  const losses = model.links.map((link, i) => lossOf(model, link, answer.flows[i]));
  const scale = headScale(model, losses);
  // Below a litre in three hours nothing moves.
  const flowScale = Math.max(1e-7, ...Array.from(answer.flows, Math.abs));
  for (const node of model.nodes) {
    if (node.kind === "fixedHead") continue;
    let surplus = -(node.demand ?? 0);
    model.links.forEach((link, i) => {
      if (link.to === node.id) surplus += answer.flows[i];
      if (link.from === node.id) surplus -= answer.flows[i];
    });
    if (!(Math.abs(surplus) <= 1e-12 * flowScale)) wrong.push(`${node.id} keeps ${surplus} m3/s`);
  }
  model.links.forEach((link, i) => {
    const drop = (head.get(link.from) as number) - (head.get(link.to) as number);
    if (answer.links[i].shut) {
      if (answer.flows[i] !== 0) wrong.push(`${link.id} is shut and carries ${answer.flows[i]} m3/s`);
      const lift = link.kind === "pump" ? pumpHeadAtSpeed(link.pump, 0) : 0;
      if (!isClosed(link) && drop + lift > 2e-6 * scale)
        wrong.push(`${link.id} is shut against ${drop + lift} m forward`);
    } else {
      if (isOneWay(link) && answer.flows[i] < 0) wrong.push(`${link.id} runs backward`);
      if (isClosed(link)) wrong.push(`${link.id} is a closed valve and not shut`);
      else if (!(Math.abs(drop - losses[i]) <= 2e-9 * scale))
        wrong.push(`${link.id} misses ${drop - losses[i]} m of ${scale} m`);
    }
  });
  return wrong;
}

function isOneWay(link: NetworkModel["links"][number]): boolean {
  return link.checkValve === true || (link.kind === "pump" && link.reverseFlow !== true);
}

function isClosed(link: NetworkModel["links"][number]): boolean {
  return link.kind === "valve" && link.lossCoefficient === Number.POSITIVE_INFINITY;
}

function headScale(model: NetworkModel, losses: readonly number[]): number {
  const known = model.nodes.flatMap((node) => (node.kind === "fixedHead" ? [node.head] : []));
  // Heads near 4 m are numbers known to 4e-16 m, so losses can be no better.
  const rounding = 1e-5 * Math.max(...known.map(Math.abs));
  return Math.max(
    1e-6,
    rounding,
    Math.max(...known) - Math.min(...known),
    ...losses.filter(Number.isFinite).map(Math.abs),
  );
}

/** Head loss from -> to by the formulas the engine exports one by one, not by the solver's own. */
function lossOf(model: NetworkModel, link: NetworkModel["links"][number], flow: number): number {
  const velocityHead = (diameter: number) =>
    ((flow / ((Math.PI / 4) * diameter ** 2)) ** 2 / (2 * 9.80665)) * Math.sign(flow);
  switch (link.kind) {
    case "pipe": {
      // Where V^2 falls below the smallest number there is no Reynolds number to divide by.
      if (Math.abs(flow) < 1e-100) return 0;
      const { kinematicViscosity } = model.liquid;
      const reynolds = (4 * Math.abs(flow)) / (Math.PI * link.diameter * kinematicViscosity);
      const local = (link.minorLoss + (link.laminarLoss ?? 0) / reynolds) * velocityHead(link.diameter);
      if (link.length === 0) return local;
      const { headLoss } = pipeHeadLoss({ ...link, flow: Math.abs(flow), kinematicViscosity });
      return Math.sign(flow) * headLoss + local;
    }
    case "valve":
      return flow === 0 ? 0 : link.lossCoefficient * velocityHead(link.diameter);
    case "pump":
      return -pumpHeadAtSpeed(link.pump, flow);
    case "device":
      return link.coefficient * flow * Math.abs(flow);
  }
}

/** Whether water can come from a known head to every demand along links that let it pass that way. */
function demandsAreReachable(model: NetworkModel): boolean {
  const reached = new Set(model.nodes.filter((node) => node.kind === "fixedHead").map((node) => node.id));
  for (let before = -1; before !== reached.size; ) {
    before = reached.size;
    for (const link of model.links) {
      if (isClosed(link)) continue;
      if (reached.has(link.from)) reached.add(link.to);
      if (!isOneWay(link) && reached.has(link.to)) reached.add(link.from);
    }
  }
  return model.nodes.every((node) => node.kind === "fixedHead" || !(node.demand ?? 0) || reached.has(node.id));
}
