import {
  type NetworkLink,
  type NetworkModel,
  type NetworkNode,
  type PipeLink,
  pumpAtSpeed,
  pumpCurve,
} from "@tidewright/engine";

const liquid = { density: 1023.3, kinematicViscosity: 1.05e-6 };

function pipe(id: string, from: string, to: string, length: number, diameter: number, minorLoss: number): PipeLink {
  return { id, kind: "pipe", from, to, length, diameter, roughness: 1.5e-6, minorLoss };
}

function pump(id: string, from: string, to: string, shutoff: number, last: number): NetworkLink {
  const points = [
    { flow: 0, head: shutoff },
    { flow: last / 2, head: 0.75 * shutoff },
    { flow: last, head: 0 },
  ];
  return { id, kind: "pump", from, to, pump: pumpAtSpeed([{ speedRatio: 1, curve: pumpCurve(points) }], 1) };
}

/** Thirteen links: a pump in the sump, its riser, a four-branch manifold, two outlets to the display and two back to the sump. */
export function thirteenLinks(): NetworkModel {
  return fishRoom(1);
}

/** The same with the losses of the manifold's three tees, by how the flow splits. */
export function thirteenLinksWithTees(): NetworkModel {
  const tees = [
    { node: "m10", run: ["rise0", "m120"], branch: "b10", runDiameter: 0.0351, branchDiameter: 0.0266 },
    { node: "m20", run: ["m120", "m230"], branch: "b20", runDiameter: 0.0266, branchDiameter: 0.0266 },
    { node: "m30", run: ["m230", "m340"], branch: "b30", runDiameter: 0.0266, branchDiameter: 0.0158 },
  ] as const;
  return { ...thirteenLinks(), tees };
}

/** As many systems of twelve or thirteen links side by side, drawing from one sump; each feeds its own display. From the second
 *  on a cross pipe joins neighbouring manifolds, so that the room is one network with loops. */
export function fishRoom(systems: number): NetworkModel {
  const nodes: NetworkNode[] = [{ id: "sump", kind: "fixedHead", head: 0 }];
  const links: NetworkLink[] = [];
  for (let s = 0; s < systems; s++) {
    const at = (name: string) => `${name}${s}`;
    nodes.push({ id: at("display"), kind: "fixedHead", head: 1.35 });
    for (const name of ["riser", "m1", "m2", "m3", "m4", "e1", "e2", "e3", "e4"])
      nodes.push({ id: at(name), kind: "junction", elevation: 0.5 });
    links.push(
      pump(at("pump"), "sump", at("riser"), 4, 0.0022),
      pipe(at("rise"), at("riser"), at("m1"), 1.6, 0.0351, 3.2),
      pipe(at("m12"), at("m1"), at("m2"), 0.15, 0.0266, 0.4),
      pipe(at("m23"), at("m2"), at("m3"), 0.15, 0.0266, 0.4),
      pipe(at("m34"), at("m3"), at("m4"), 0.15, 0.0266, 0.4),
      pipe(at("b1"), at("m1"), at("e1"), 0.9, 0.0266, 1.9),
      pipe(at("b2"), at("m2"), at("e2"), 1.1, 0.0266, 1.9),
      pipe(at("b3"), at("m3"), at("e3"), 0.6, 0.0158, 6),
      pipe(at("b4"), at("m4"), at("e4"), 0.8, 0.0158, 9),
      pipe(at("o1"), at("e1"), at("display"), 0.3, 0.0209, 1.5),
      pipe(at("o2"), at("e2"), at("display"), 0.3, 0.0209, 1.5),
      pipe(at("o3"), at("e3"), "sump", 0.4, 0.0127, 1),
      pipe(at("o4"), at("e4"), "sump", 0.4, 0.0127, 1),
    );
    if (s > 0) links.push(pipe(at("cross"), `m4${s - 1}`, at("m1"), 2, 0.0266, 2));
  }
  return { liquid, nodes, links };
}

/** A square of junctions, each joined to its neighbours: no plumbing looks like it, and no order of elimination is kind to it. */
export function grid(side: number): NetworkModel {
  const nodes: NetworkNode[] = [
    { id: "in", kind: "fixedHead", head: 2 },
    { id: "out", kind: "fixedHead", head: 0 },
  ];
  const links: NetworkLink[] = [pipe("feed", "in", "0-0", 1, 0.05, 1)];
  for (let r = 0; r < side; r++)
    for (let c = 0; c < side; c++) {
      nodes.push({ id: `${r}-${c}`, kind: "junction", elevation: 0 });
      const width = 0.02 + 0.002 * ((3 * r + 5 * c) % 7);
      if (c > 0) links.push(pipe(`h${r}-${c}`, `${r}-${c - 1}`, `${r}-${c}`, 0.5 + 0.1 * (r % 3), width, 1));
      if (r > 0) links.push(pipe(`v${r}-${c}`, `${r - 1}-${c}`, `${r}-${c}`, 0.5 + 0.1 * (c % 4), width, 1));
    }
  links.push(pipe("drain", `${side - 1}-${side - 1}`, "out", 1, 0.05, 1));
  return { liquid, nodes, links };
}
