import type { ApiEntry } from "./publicApi.ts";

/** How much a package's comments must say: the inner packages all six parts, the outer ones the gist. */
const strictPackages: ReadonlySet<string> = new Set(["units", "engine"]);

/** Lists the parts missing from the comment of an exported function; inner helpers owe one sentence only, and so do
 *  types of the inner packages. */
export function missingParts(entry: ApiEntry): string[] {
  const { comment } = entry;
  // Outside the inner packages a type is mostly inferred from a schema, which carries the words.
  if (entry.kind === "type" && !strictPackages.has(entry.packageName)) return [];
  if (!/[A-Za-z]{3,}/.test(comment.split(/\n|(?:Valid|Source|Example):/)[0] ?? "")) return ["description"];
  if (!entry.isPublic || entry.kind !== "function") return [];
  const has = (heading: RegExp): boolean => heading.test(comment);
  const example = /^\s*Example:\s*\S.*\s->\s/m;
  if (!strictPackages.has(entry.packageName)) {
    return has(example) || has(/\bSource:\s*\S/) ? [] : ["Example or Source"];
  }
  const missing: string[] = [];
  if (!has(/->/)) missing.push("arguments and result");
  if (!has(/\b(Findings|Throws):\s*\S/)) missing.push("Findings or Throws");
  if (!has(/\b(Valid|Range):\s*\S/)) missing.push("Valid");
  if (!has(/\bSource:\s*\S/)) missing.push("Source");
  if (!has(example)) missing.push("Example");
  return missing;
}
