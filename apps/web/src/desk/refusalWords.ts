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
  // These say more than their kind: which field, which name. The server speaks English alone, so where our own words
  // say enough, its are added for those only who read in English.
  const needed = told === "" || [400, 409, 422].includes(problem.status);
  const helps = words.language === "en" && [413, 415, 429, 507].includes(problem.status);
  return [told, needed || helps ? exactWords(problem) : ""].filter(Boolean).join(" ");
}

/** What the server itself says: every problem with its fix, as sentences. */
function exactWords({ problems, detail }: ProblemDetails): string {
  const sentences = problems?.length ? problems.map(({ message, fix }) => `${message}: ${fix}`) : [detail];
  return sentences.map((text) => sentence(text.trim())).join(" ");
}

function sentence(text: string): string {
  if (text === "") return "";
  const begun = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(begun) ? begun : `${begun}.`;
}
