import { useSyncExternalStore } from "react";

/** One side of a comparison: a revision of a design, or whatever its latest is. */
export interface RevisionName {
  readonly designId: string;
  readonly revision: number | "latest";
}

/** Which screen an address means. */
export type Address =
  | { readonly page: "desk" }
  /** The guided start; on trial nothing of it is kept on the server. */
  | { readonly page: "start"; readonly trial?: true }
  | { readonly page: "compare"; readonly left: RevisionName; readonly right: RevisionName }
  | { readonly page: "design"; readonly designId: string }
  /** The bench on a demonstration job, by its place in the list; nothing of it is kept on the server. */
  | { readonly page: "try"; readonly job: number };

/** Returns the screen that the query and the hash of an address mean.
 *  search such as "?design=abc"   hash such as "#/jobs"   -> Address; what means nothing is the desk
 *  Example: readAddress("?try=2", "")  ->  {"page":"try","job":2} */
export function readAddress(search: string, hash: string): Address {
  const compared = /^#\/compare\/([^/@]+)@(\d+|latest)\.\.([^/@]+)@(\d+|latest)$/.exec(hash);
  if (compared !== null)
    return {
      page: "compare",
      left: sideOf(compared[1]!, compared[2]!),
      right: sideOf(compared[3]!, compared[4]!),
    };
  const query = new URLSearchParams(search);
  if (/^#\/start(\/|$)/.test(hash)) return query.has("try") ? { page: "start", trial: true } : { page: "start" };
  if (query.has("start")) return { page: "start" };
  const designId = query.get("design");
  if (designId) return { page: "design", designId };
  const job = query.get("try");
  if (job !== null) return { page: "try", job: /^\d{1,4}$/.test(job) ? Number(job) : 0 };
  return { page: "desk" };
}

function sideOf(designId: string, revision: string): RevisionName {
  return {
    designId: decodeURIComponent(designId),
    revision: revision === "latest" ? "latest" : Number(revision),
  };
}

/** Returns the address of the bench on a kept design.
 *  Example: designAddress("a b")  ->  "./?design=a%20b" */
export function designAddress(designId: string): string {
  return `./?design=${encodeURIComponent(designId)}`;
}

/** Returns the address of two revisions side by side.
 *  Example: compareAddress({ designId: "a", revision: 1 }, { designId: "a", revision: "latest" })  ->  "./#/compare/a@1..a@latest" */
export function compareAddress(left: RevisionName, right: RevisionName): string {
  const side = ({ designId, revision }: RevisionName) => `${encodeURIComponent(designId)}@${revision}`;
  return `./#/compare/${side(left)}..${side(right)}`;
}

/** The screen that the page's address means; renders again when the hash changes. */
export function useAddress(): Address {
  const whole = useSyncExternalStore(watchHash, () => `${location.search}\n${location.hash}`);
  const [search = "", hash = ""] = whole.split("\n");
  return readAddress(search, hash);
}

function watchHash(changed: () => void): () => void {
  addEventListener("hashchange", changed);
  addEventListener("popstate", changed);
  return () => {
    removeEventListener("hashchange", changed);
    removeEventListener("popstate", changed);
  };
}
