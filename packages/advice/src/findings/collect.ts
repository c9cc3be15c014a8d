import type { Finding } from "../finding.ts";
import { limits } from "./limits.ts";
import type { Add } from "./subject.ts";

/** A list and the way to add to it. */
export function collect(): { found: Finding[]; add: Add } {
  const found: Finding[] = [];
  const add: Add = (code, severity, at, source, numbers = {}) => {
    found.push({ code, severity, at, source: limits[source].source, ...numbers });
  };
  return { found, add };
}
