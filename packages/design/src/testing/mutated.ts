type Node = { readonly [key: string]: unknown } | readonly unknown[];

const wrongs: readonly unknown[] = [
  null,
  "",
  "reef",
  0,
  -1,
  1e9,
  0.5,
  true,
  [],
  {},
  { value: 5, unit: "mm" },
  { value: -5, unit: "mm" },
  { value: 5, unit: "parsec" },
  { value: 5 },
  { value: "5", unit: "mm" },
  { kind: "pipe" },
  { kind: "outlet", to: "display" },
  [[]],
];

const kinds = ["replace", "remove", "double", "rename", "add"] as const;

/** A copy of a document with one change a seed: a part replaced, removed, doubled, renamed or added. */
export function mutated(document: unknown, seeds: readonly number[]): unknown {
  const copy = structuredClone(document);
  for (const seed of seeds) {
    const kind = kinds[seed % kinds.length]!;
    const wrong = wrongs[Math.floor(seed / kinds.length) % wrongs.length];
    changeOne(copy, Math.floor(seed / kinds.length / wrongs.length), kind, wrong);
  }
  return copy;
}

function changeOne(root: unknown, seed: number, kind: string, wrong: unknown): void {
  const places: { parent: Node; key: string | number }[] = [];
  const walk = (at: unknown) => {
    if (typeof at !== "object" || at === null) return;
    for (const key of Object.keys(at)) {
      places.push({ parent: at as Node, key });
      walk((at as Record<string, unknown>)[key]);
    }
  };
  walk(root);
  const place = places[seed % Math.max(1, places.length)];
  if (place === undefined) return;
  const parent = place.parent as Record<string, unknown>;
  const { key } = place;
  if (Array.isArray(parent)) {
    const list = parent as unknown[];
    if (kind === "remove") list.splice(Number(key), 1);
    else if (kind === "double") list.splice(Number(key), 0, structuredClone(list[Number(key)]));
    else list[Number(key)] = structuredClone(wrong);
  } else if (kind === "remove") delete parent[key];
  else if (kind === "rename") {
    parent[`${key}x`] = parent[key];
    delete parent[key];
  } else if (kind === "add") parent["extra"] = structuredClone(wrong);
  else parent[key] = structuredClone(wrong);
}
