import { english, type MessageKey } from "./en/english.ts";
import { type MessageValues, sayer } from "./sayer.ts";

/** The languages of the screens. */
export const languages = ["en", "de"] as const;
/** One of `languages`. */
export type Language = (typeof languages)[number];

/** A language's texts: `say` fills a text in, `number` and `instant` write as its readers do. */
export interface Words {
  readonly language: Language;
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

/** Returns the words of a language from its texts, in ICU message syntax.
 *  language   texts one for every key   -> Words
 *  Throws: a text with bad syntax, at its first use (a test reads them all).
 *  Source: ICU MessageFormat, Unicode; Intl, ECMA-402. */
export function wordsOf(language: Language, texts: Readonly<Record<MessageKey, string>>): Words {
  const say = sayer(language, texts);
  return {
    language,
    say,
    knows: (key): key is MessageKey => Object.hasOwn(texts, key),
    decimal: (text) =>
      decimalSign[language] === "." ? text : text.replace(/(\d)\.(?=\d)/g, `$1${decimalSign[language]}`),
    inSentence: (label) => (language === "de" ? label : label.toLowerCase()),
    known(text) {
      if (language === "en") return text;
      const key = keyOfText().get(text);
      return key === undefined ? text : say(key);
    },
    number: (value, options) => new Intl.NumberFormat(language, options).format(value),
    instant: (at, options = { dateStyle: "medium", timeStyle: "short" }) =>
      new Intl.DateTimeFormat(language, options).format(typeof at === "string" ? new Date(at) : at),
  };
}

/** What stands between whole and broken part of a number. */
const decimalSign: Readonly<Record<Language, "." | ",">> = { en: ".", de: "," };

/** Areas whose texts also stand in data: labels of the catalogue, sources of limits, names of units and of places. */
const dataAreas = /^(catalogue|sources|units|findings\.name|start\.source)\./;
let byText: Map<string, MessageKey> | undefined;

function keyOfText(): Map<string, MessageKey> {
  byText ??= new Map(
    (Object.entries(english) as [MessageKey, string][]).flatMap(([key, text]) =>
      dataAreas.test(key) ? [[text, key]] : [],
    ),
  );
  return byText;
}

/** The name of every text, in the order of the catalogue. */
export const messageKeys = /* @__PURE__ */ Object.keys(english) as readonly MessageKey[];

/** English, which is always at hand. */
export const englishWords: Words = /* @__PURE__ */ wordsOf("en", english);

/** Returns the words of a language; what is not English is loaded when it is asked for.
 *  language   -> Words
 *  Source: own construction. */
export async function loadWords(language: Language): Promise<Words> {
  if (language === "de") return wordsOf("de", (await import("./de/german.ts")).german);
  return englishWords;
}
