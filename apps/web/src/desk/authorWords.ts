import type { MessageKey, Words } from "@tidewright/words";

/** Names that the server gives to those without an account. */
const unnamed: Readonly<Record<string, MessageKey>> = {
  "this machine": "desk.author.thisMachine",
  "customer's link": "desk.author.customer",
  "customer's intake": "desk.author.intake",
  nobody: "desk.author.nobody",
};

/** Returns the name of whoever did something, in the reader's language where it is nobody's own.
 *  author   words   -> text */
export function authorWords(author: string, words: Words): string {
  const key = Object.hasOwn(unnamed, author) ? unnamed[author] : undefined;
  return key === undefined ? author : words.say(key);
}
