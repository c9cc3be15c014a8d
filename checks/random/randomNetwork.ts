import { type NetworkLink, type NetworkModel, type NetworkNode, pumpAtSpeed, pumpCurve } from "@tidewright/engine";
import { type RandomNumbers, randomNumbers } from "./randomNumbers.ts";

/** A sound network of its own for every whole number: a tree with up to as many loops, of pipes, valves (some closed), pumps,
 *  check valves and devices, over twelve orders of resistance. Every link loses head: two levels joined without loss have
 *  no answer. */
export function randomNetwork(start: number): NetworkModel {
  const random = randomNumbers(start);
  const nodes: NetworkNode[] = [];
  const links: NetworkLink[] = [];
  const tanks = random.whole(1, 3);
  // One in ten stands entirely at rest but for its pumps.
  const level = random.chance(0.1) ? 1 : undefined;
  for (let i = 0; i < tanks; i++) nodes.push({ id: `t${i}`, kind: "fixedHead", head: level ?? random.between(-2, 5) });
  const junctions = random.whole(1, 12);
  const demands = random.chance(0.4);
  for (let i = 0; i < junctions; i++) {
    const demand = demands && random.chance(0.3) ? random.orders(1e-6, 2e-3) : 0;
    const to = `j${i}`;
    const { id: from } = random.pick(nodes);
    nodes.push({ id: to, kind: "junction", elevation: random.between(-1, 2), demand });
    links.push(randomLink(random, links.length, random.chance(0.8) ? [from, to] : [to, from]));
  }
  for (let extra = random.whole(0, junctions); extra > 0; extra--) {
    const from = random.pick(nodes).id;
    const to = random.pick(nodes).id;
    if (from !== to) links.push(randomLink(random, links.length, [from, to]));
  }
  return { liquid: { density: 1023, kinematicViscosity: 9.4e-7 }, nodes, links };
}

function randomLink(random: RandomNumbers, index: number, [from, to]: readonly [string, string]): NetworkLink {
  const ends = { id: `l${index}`, from, to, checkValve: random.chance(0.12) };
  const kind = random.between(0, 1);
  if (kind < 0.5)
    return {
      ...ends,
      kind: "pipe",
      length: random.orders(0.01, 50),
      diameter: random.orders(0.003, 0.15),
      roughness: random.pick([0, 1.5e-6, 1e-4]),
      minorLoss: random.chance(0.2) ? 0 : random.orders(0.01, 100),
      laminarLoss: random.chance(0.2) ? 800 : 0,
    };
  if (kind < 0.7)
    return {
      ...ends,
      kind: "valve",
      diameter: random.orders(0.01, 0.06),
      lossCoefficient: random.chance(0.2) ? Number.POSITIVE_INFINITY : random.orders(1e-3, 1e9),
    };
  if (kind < 0.85) return { ...ends, kind: "pump", pump: randomPump(random), reverseFlow: random.chance(0.1) };
  return { ...ends, kind: "device", coefficient: random.orders(1, 1e12) };
}

function randomPump(random: RandomNumbers) {
  const head = random.between(0.5, 8);
  const flow = random.orders(1e-4, 5e-3);
  const points = random.pick([
    [
      { flow: 0, head },
      { flow, head: 0 },
    ],
    [
      { flow: 0, head },
      { flow: flow / 2, head: head * random.between(0.55, 0.9) },
      { flow, head: 0 },
    ],
    [
      { flow: 0, head },
      { flow: 0.3 * flow, head: 0.95 * head },
      { flow: 0.6 * flow, head: head * random.between(0.55, 0.8) },
      { flow: 0.8 * flow, head: 0.4 * head },
      { flow, head: 0.1 * head },
    ],
  ]);
  return pumpAtSpeed([{ speedRatio: 1, curve: pumpCurve(points) }], random.between(0.3, 1));
}
