import type { ProblemDetails } from "@tidewright/protocol";
import { words } from "../words/useWords.ts";

/** Returns why a request was not done: no connection, or what the server said. */
export function reasonOf(
  failed: { readonly reason: "unreachable" } | { readonly reason: "refused"; readonly problem: ProblemDetails },
): string {
  return failed.reason === "unreachable"
    ? words().say("keeping.noConnection")
    : failed.problem.detail || failed.problem.title;
}
