import type { ProblemDetails } from "@tidewright/protocol";
import { refusedWords } from "../words/refusedWords.ts";
import { words } from "../words/useWords.ts";

/** Returns why a request was not done: no connection, or what the server said, in the reader's language. */
export function reasonOf(
  failed: { readonly reason: "unreachable" } | { readonly reason: "refused"; readonly problem: ProblemDetails },
): string {
  return failed.reason === "unreachable" ? words().say("keeping.noConnection") : refusedWords(failed.problem, words());
}
