import { textOf } from "./loose.ts";

/** Connected parts of a network that hold no fixed head, each as the ids of all its nodes. */
export function partsWithoutHead(nodes: readonly unknown[], links: readonly unknown[]): string[][] {
  const place = new Map<string, number>();
  const parent: number[] = [];
  const ids: string[] = [];
  const fixed: boolean[] = [];
  for (const node of nodes) {
    const id = textOf(node, "id");
    // A node whose kind cannot be read might be the fixed head: it must not cause a second complaint.
    const holds = textOf(node, "kind") !== "junction";
    if (id === undefined) continue;
    const known = place.get(id);
    if (known !== undefined) fixed[known] ||= holds;
    else {
      place.set(id, ids.length);
      parent.push(ids.length);
      ids.push(id);
      fixed.push(holds);
    }
  }
  const root = (i: number): number => {
    let at = i;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!;
      at = parent[at]!;
    }
    return at;
  };
  for (const link of links) {
    const from = place.get(textOf(link, "from") ?? "");
    const to = place.get(textOf(link, "to") ?? "");
    if (from !== undefined && to !== undefined) parent[root(from)] = root(to);
  }
  const held = new Set(ids.flatMap((_, i) => (fixed[i] ? root(i) : [])));
  const parts = new Map<number, string[]>();
  ids.forEach((id, i) => {
    const at = root(i);
    if (held.has(at)) return;
    const part = parts.get(at);
    if (part === undefined) parts.set(at, [id]);
    else part.push(id);
  });
  return [...parts.values()];
}
