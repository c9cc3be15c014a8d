import { versionProblems } from "../migrations/versionProblems.ts";
import type { Problem } from "../problem.ts";
import { checkNetwork } from "../references/checkNetwork.ts";
import { type NetworkDocument, networkDocumentSchema } from "../schema/network.ts";
import { addNew, findSchemaProblems } from "./checkDesign.ts";
import { pruneDeep } from "./pruneDeep.ts";
import { readJson } from "./readJson.ts";

/** Either a sound network document or all its problems. */
export type NetworkReading =
  | { readonly ok: true; readonly document: NetworkDocument }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Returns the network document of a JSON text, or the complete list of its problems.
 *  text at most `longestDocument` characters   -> NetworkReading
 *  Findings: none; problems as `readJson` and `checkNetworkDocument`. Throws: never.
 *  Valid: any text.
 *  Source: own construction; RFC 8259.
 *  Example: readNetwork("{}").problems.map((each) => each.path)  ->  ["/tidewright", "/water", "/network"] */
export function readNetwork(text: string): NetworkReading {
  const read = readJson(text);
  return read.ok ? checkNetworkDocument(read.value) : read;
}

/** Returns a value as a network document, or the complete list of its problems, those of `checkNetwork` included.
 *  value anything   -> NetworkReading; the document is the value itself
 *  Findings: none; problems name path, value and fix. Throws: never.
 *  Valid: any value, circles and NaN included.
 *  Source: own construction.
 *  Example: checkNetworkDocument(42).ok  ->  false */
export function checkNetworkDocument(value: unknown): NetworkReading {
  const pruned = pruneDeep(value);
  const newer = versionProblems(pruned.value, 1);
  if (newer.length > 0) return { ok: false, problems: newer };
  const problems = findSchemaProblems(networkDocumentSchema, pruned.value, pruned.cut);
  const section = (pruned.value as { network?: unknown } | null | undefined)?.network;
  const crossed = checkNetwork(section).map((each) => ({ ...each, path: `/network${each.path}` }));
  addNew(problems, crossed);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, document: pruned.value as NetworkDocument };
}
