import type { Problem } from "../problem.ts";
import { isObject } from "../read/place.ts";

/** Returns the problem of a document that is newer than this program, or none.
 *  value any document   newest version known   -> Problem[], at most one
 *  Findings: none. Throws: never.
 *  Valid: any value. Of a newer document nothing else can be judged, so nothing else is said.
 *  Source: own construction.
 *  Example: versionProblems({ tidewright: 2 }, 1).length  ->  1
 *  Example: versionProblems({ tidewright: 1 }, 1)  ->  [] */
export function versionProblems(value: unknown, newest: number): Problem[] {
  const version = isObject(value) ? value["tidewright"] : undefined;
  if (typeof version !== "number" || !Number.isInteger(version) || version <= newest) return [];
  return [
    {
      path: "/tidewright",
      message: `the document is of version ${version}; this program reads versions up to ${newest}`,
      value: version,
      fix: `open it with a newer Tidewright, or save it there as version ${newest}`,
    },
  ];
}
