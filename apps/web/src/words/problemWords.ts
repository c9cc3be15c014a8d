import { sayAgain } from "@tidewright/words";
import { words } from "./useWords.ts";

/** Returns what is wrong and what to do about it in the reader's language, to be filled into a sentence.
 *  problem of a document   -> both texts; those that the catalogue does not know stay English */
export function problemWords({ message, fix }: { readonly message: string; readonly fix: string }): {
  readonly problem: string;
  readonly fix: string;
} {
  return { problem: sayAgain(message, words()), fix: sayAgain(fix, words()) };
}
