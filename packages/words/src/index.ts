/** Every text of the screens in one catalogue, by language. Engineering sentences (findings, levers) are among them, so
 *  that a screen, a paper and the command line can speak alike. */

export type { MessageKey } from "./en/english.ts";
export { type Language, languages, type Words } from "./language.ts";
export { messageKeys } from "./messageKeys.ts";
export { loadRoom, type Room, rooms, type Texts } from "./rooms.ts";
export { sayAgain } from "./sayAgain.ts";
export type { MessageValues } from "./sayer.ts";
export { type LeverKey, sayLever } from "./sayLever.ts";
export {
  englishTexts,
  englishWords,
  loadTexts,
  loadWords,
  wordsOf,
} from "./words.ts";
