import type { ProblemDetails } from "@tidewright/protocol";
import type { Words } from "@tidewright/words";
import type { Answered } from "../api/ask.ts";

/** As the protocol has it: long rather than odd (NIST SP 800-63B, 5.1.1). */
export const shortestPassword = 10;

/** Returns why signing in failed, and what to do.
 *  failed an answer that is none   words   -> sentences */
export function signInWords(failed: Extract<Answered<unknown>, { ok: false }>, words: Words): string {
  if (failed.reason === "unreachable") return words.say("doors.unreachable");
  const { problem } = failed;
  if (problem.status === 429) {
    const seconds = waitOf(problem);
    if (seconds === undefined) return words.say("doors.tooMany");
    return seconds < 90
      ? words.say("doors.tooManySeconds", { seconds })
      : words.say("doors.tooManyMinutes", { minutes: Math.ceil(seconds / 60) });
  }
  if (problem.status === 401 || problem.status === 403) return words.say("doors.wrong");
  return problem.problems?.map(({ message, fix }) => `${message} ${fix}`).join(" ") ?? problem.detail;
}

/** Returns the wait that a refusal names [s], or undefined where it names none.
 *  Example: waitOf({ type: "", title: "", status: 429, detail: "Try again in 40 s." })  ->  40 */
export function waitOf(problem: Pick<ProblemDetails, "detail">): number | undefined {
  const found = /(\d+)\s*(s|seconds?|min|minutes?)\b/i.exec(problem.detail);
  if (found === null) return undefined;
  return Number(found[1]) * (found[2]!.toLowerCase().startsWith("m") ? 60 : 1);
}
