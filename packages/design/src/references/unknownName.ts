import { shortened } from "../problem.ts";
import { listed, nearest } from "../read/nearest.ts";
import type { Add } from "./loose.ts";

/** Adds that a name is not among the ids of some rows, with the nearest one there is. */
export function unknownName(
  name: string,
  rows: readonly { readonly id: string }[],
  path: string,
  what: string,
  add: Add,
): void {
  if (rows.some((row) => row.id === name)) return;
  const ids = rows.map((row) => row.id);
  const like = nearest(name, ids);
  add({
    path,
    message: `there is no ${what} "${shortened(name)}"`,
    value: name,
    fix: like === undefined ? `use one of ${listed(ids, 20)}` : `did you mean "${like}"?`,
  });
}
