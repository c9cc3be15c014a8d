import { sameJson } from "./sameJson.ts";
import { fieldNames, fieldOf, isFields, isWhole } from "./shape.ts";

/** Returns how alike two entries of a list are: the share of their values that are equal, 0 to 1.
 *  one   other any JSON   -> share [-]; lists are compared place by place, names and ids count as any value
 *  Findings: none. Throws: never: parts nested more than eight deep are compared whole.
 *  Valid: for finding a renamed or changed entry again, not as a measure.
 *  Source: own construction; the share is Jaccard's: what both hold alike over all that either holds. */
export function likeness(one: unknown, other: unknown): number {
  const { alike, all } = counted(one, other, 0);
  return all === 0 ? 1 : alike / all;
}

function counted(one: unknown, other: unknown, depth: number): { alike: number; all: number } {
  const lists = Array.isArray(one) && Array.isArray(other);
  const inside = depth < 8 && !isWhole(one) && !isWhole(other) && (lists || (isFields(one) && isFields(other)));
  if (!inside) return { alike: one !== undefined && sameJson(one, other) ? 1 : 0, all: 1 };
  let alike = 0;
  let all = 0;
  const add = (a: unknown, b: unknown) => {
    const inner = counted(a, b, depth + 1);
    alike += inner.alike;
    all += inner.all;
  };
  if (lists) for (let i = 0; i < Math.max(one.length, other.length); i++) add(one[i], other[i]);
  else if (isFields(one) && isFields(other))
    for (const key of fieldNames(one, other)) add(fieldOf(one, key), fieldOf(other, key));
  return { alike, all };
}
