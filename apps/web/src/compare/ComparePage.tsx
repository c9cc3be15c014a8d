import type { RevisionName } from "../state/address.ts";

/** Two revisions side by side. */
export function ComparePage(_: { readonly left: RevisionName; readonly right: RevisionName }) {
  return <main className="compare-page" />;
}
