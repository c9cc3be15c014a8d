import { IntlMessageFormat } from "intl-messageformat";
import { english, type MessageKey } from "./en/english.ts";

/** The languages of the screens. */
export const languages = ["en", "de"] as const;
/** One of `languages`. */
export type Language = (typeof languages)[number];

/** What may be put into a text. */
export type MessageValues = Readonly<Record<string, string | number | boolean | Date>>;

/** A language's texts: `say` fills a text in, `number` and `instant` write as its readers do. */
export interface Words {
  readonly language: Language;
  say(key: MessageKey, values?: MessageValues): string;
  number(value: number, options?: Intl.NumberFormatOptions): string;
  instant(at: string | Date, options?: Intl.DateTimeFormatOptions): string;
}

/** Returns the words of a language from its texts, in ICU message syntax.
 *  language   texts one for every key   -> Words
 *  Throws: a text with bad syntax, at its first use (a test reads them all).
 *  Source: ICU MessageFormat, Unicode; Intl, ECMA-402. */
export function wordsOf(language: Language, texts: Readonly<Record<MessageKey, string>>): Words {
  const compiled = new Map<MessageKey, IntlMessageFormat>();
  const say = (key: MessageKey, values?: MessageValues): string => {
    const text = texts[key];
    // Most texts are plain, and parsing them would only cost time.
    if (values === undefined && !/['{]/.test(text)) return text;
    let message = compiled.get(key);
    if (message === undefined) {
      message = new IntlMessageFormat(text, language, undefined, { ignoreTag: true });
      compiled.set(key, message);
    }
    return String(message.format(values as Record<string, string | number | boolean | Date>));
  };
  return {
    language,
    say,
    number: (value, options) => new Intl.NumberFormat(language, options).format(value),
    instant: (at, options = { dateStyle: "medium", timeStyle: "short" }) =>
      new Intl.DateTimeFormat(language, options).format(typeof at === "string" ? new Date(at) : at),
  };
}

/** English, which is always at hand. */
export const englishWords: Words = wordsOf("en", english);

/** Returns the words of a language; what is not English is loaded when it is asked for.
 *  language   -> Words
 *  Source: own construction. */
export async function loadWords(language: Language): Promise<Words> {
  if (language === "de") return wordsOf("de", (await import("./de/german.ts")).german);
  return englishWords;
}
