import type { History } from "@tidewright/design";
import { sameDocument } from "./sameDocument.ts";

/** Placeholder until joining is at hand: fields one by one, lists as a whole. */
export function mergeDocuments<Doc>(base: Doc, mine: Doc, theirs: Doc) {
  const conflicts: { path: string }[] = [];
  const join = (b: unknown, m: unknown, t: unknown, path: string): unknown => {
    if (sameDocument(b, m)) return t;
    if (sameDocument(b, t) || sameDocument(m, t)) return m;
    const all = [b, m, t];
    if (all.every((one) => typeof one === "object" && one !== null && !Array.isArray(one))) {
      const [bo, mo, to] = all as Record<string, unknown>[];
      const names = new Set([...Object.keys(mo!), ...Object.keys(to!)]);
      const joined: Record<string, unknown> = {};
      for (const name of names) {
        const value = join(bo![name], mo![name], to![name], `${path}/${name}`);
        if (value !== undefined) joined[name] = value;
      }
      return joined;
    }
    if (all.every(Array.isArray) && new Set(all.map((one) => (one as unknown[]).length)).size === 1)
      return (m as unknown[]).map((_, place) =>
        join((b as unknown[])[place], (m as unknown[])[place], (t as unknown[])[place], `${path}/${place}`),
      );
    conflicts.push({ path });
    return t;
  };
  const merged = join(base, mine, theirs, "") as Doc;
  return { ok: conflicts.length === 0, merged, conflicts };
}

export function takeIn<Doc>(history: History<Doc>, document: Doc, _label: string): History<Doc> {
  return { ...history, present: document };
}

export function differencesBetween(
  before: unknown,
  after: unknown,
): {
  path: string;
  kind: "changed" | "added" | "removed" | "moved";
  beforePath?: string;
  before?: unknown;
  after?: unknown;
}[] {
  const { conflicts } = mergeDocuments({}, before as object, after as object);
  return conflicts.map(({ path }) => ({ path, kind: "changed" as const }));
}
