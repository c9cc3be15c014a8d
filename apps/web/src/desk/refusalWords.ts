import type { Words } from "@tidewright/words";
import type { Answered } from "../api/ask.ts";
import { refusedWords } from "../words/refusedWords.ts";

export { refusedWords as problemWords } from "../words/refusedWords.ts";

type Failed = Extract<Answered<unknown>, { ok: false }>;

/** Returns why something was not done and what helps, in the reader's language.
 *  failed an answer that is none   words   -> sentences */
export function refusalWords(failed: Failed, words: Words): string {
  if (failed.reason === "unreachable") return words.say("refusals.unreachable");
  return refusedWords(failed.problem, words);
}
