/** Returns the number an entity tag is made of: the version of a record, the number of a design's latest revision, or that
 *  of a revision itself.
 *  answer of a route that bears a tag   -> whole number
 *  Throws: where the answer has none: our fault.
 *  Example: versionIn({ version: 3 })  ->  3
 *  Example: versionIn({ head: { revision: 7 } })  ->  7 */
export function versionIn(answer: unknown): number {
  const { head, version, revision, number } = answer as Readonly<Record<string, unknown>>;
  const found =
    head === undefined ? (version ?? revision ?? number) : (head as { readonly revision: unknown }).revision;
  if (typeof found === "number") return found;
  throw new Error("the answer bears no version to make a tag of");
}
