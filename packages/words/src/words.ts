import type { MessageKey } from "./en/english.ts";
import { near } from "./en/near.ts";
import type { Language, Words } from "./language.ts";
import { loadRoom, type Room, rooms, type Texts } from "./rooms.ts";
import { sayer } from "./sayer.ts";

/** Returns the words of a language from its texts, in ICU message syntax.
 *  language   texts by key   -> Words
 *  Throws: a text with bad syntax, at its first use (a test reads them all).
 *  Source: ICU MessageFormat, Unicode; Intl, ECMA-402. */
export function wordsOf(language: Language, texts: Texts): Words {
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
const dataAreas = /^(catalogue|sources|units|findings\.name)\./;
let byText: Map<string, MessageKey> | undefined;

function keyOfText(): Map<string, MessageKey> {
  byText ??= new Map(
    (Object.entries(near) as [MessageKey, string][]).flatMap(([key, text]) =>
      dataAreas.test(key) ? [[text, key]] : [],
    ),
  );
  return byText;
}

/** The English texts that every screen may say. */
export const englishTexts: Texts = near;

/** English, which is always at hand but for the texts of the rooms. */
export const englishWords: Words = /* @__PURE__ */ wordsOf("en", near);

/** Returns the texts of a language that every screen may say.
 *  language   -> texts by key, without those of the rooms
 *  Throws: where the file cannot be had, such as without a network.
 *  Source: own construction. */
export async function loadTexts(language: Language): Promise<Texts> {
  return language === "en" ? near : (await import("./de/near.ts")).near;
}

/** Returns the words of a language, with the texts of some rooms or of all.
 *  language   of the rooms wanted; all where nothing is said   -> Words
 *  Throws: where a file cannot be had, such as without a network.
 *  Source: own construction. */
export async function loadWords(language: Language, of: readonly Room[] = rooms): Promise<Words> {
  const texts = await Promise.all([loadTexts(language), ...of.map((room) => loadRoom(language, room))]);
  return wordsOf(language, Object.assign({}, ...texts) as Texts);
}
