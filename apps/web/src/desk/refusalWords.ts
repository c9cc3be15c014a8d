import type { ProblemDetails } from "@tidewright/protocol";
import type { Words } from "@tidewright/words";
import type { Answered } from "../api/ask.ts";

type Failed = Extract<Answered<unknown>, { ok: false }>;

/** Returns why something was not done and what helps, in the reader's language; what only the server knows is added as
 *  it said it.
 *  failed an answer that is none   words   -> sentences */
export function refusalWords(failed: Failed, words: Words): string {
  if (failed.reason === "unreachable") return words.say("desk.refused.unreachable");
  return problemWords(failed.problem, words);
}

/** Returns why a request was refused, as `refusalWords`. */
export function problemWords(problem: ProblemDetails, words: Words): string {
  const key = `desk.refused.${problem.status}`;
  const told = words.knows(key) ? words.say(key) : "";
  const exact = problem.problems?.map(({ message, fix }) => `${message} ${fix}`).join(" ") ?? problem.detail;
  // These say more than their kind: which file, which limit, which name.
  const specific = [400, 409, 413, 415, 422, 429, 507].includes(problem.status) || told === "";
  return [told, specific ? exact : ""].filter(Boolean).join(" ");
}
