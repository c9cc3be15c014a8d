import type { MessageKey } from "./en/english.ts";
import type { MessageValues } from "./sayer.ts";

/** The languages of the screens. */
export const languages = ["en", "de"] as const;
/** One of `languages`. */
export type Language = (typeof languages)[number];

/** A language's texts: `say` fills a text in, `number` and `instant` write as its readers do. */
export interface Words {
  readonly language: Language;
  /** The text with its values filled in; its bare name where it belongs to a room whose texts are not there. */
  say(key: MessageKey, values?: MessageValues): string;
  /** Whether there is a text of this name: for names put together from codes. */
  knows(key: string): key is MessageKey;
  /** A written number with the language's decimal sign in place of the point: "8.4 s" -> "8,4 s". */
  decimal(text: string): string;
  /** A label as it stands inside a sentence: small in English, as it is where nouns are written large. */
  inSentence(label: string): string;
  /** An English text out of data, said in this language where the catalogue has the very same; else as it is. */
  known(text: string): string;
  number(value: number, options?: Intl.NumberFormatOptions): string;
  instant(at: string | Date, options?: Intl.DateTimeFormatOptions): string;
}
