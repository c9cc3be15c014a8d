import type { Words } from "@tidewright/words";
import type { Answered } from "../api/ask.ts";
import { exactWords, refusedWords, waitWords } from "../words/refusedWords.ts";

/** As the protocol has it: long rather than odd (NIST SP 800-63B, 5.1.1). */
export const shortestPassword = 10;

/** Returns why signing in failed, and what to do.
 *  failed an answer that is none   words   -> sentences */
export function signInWords(failed: Extract<Answered<unknown>, { ok: false }>, words: Words): string {
  if (failed.reason === "unreachable") return words.say("doors.unreachable");
  const { problem } = failed;
  if (problem.status === 429) return waitWords(problem, words) ?? words.say("refusals.tooMany");
  if (problem.status === 401 || problem.status === 403) return words.say("doors.wrong");
  return problem.problems?.length ? exactWords(problem, words) : refusedWords(problem, words);
}
