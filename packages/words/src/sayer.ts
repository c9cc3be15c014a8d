import type { IntlMessageFormat } from "intl-messageformat";
import { formatOf, isPlain, type Message } from "./message.ts";

/** What may be put into a text. */
export type MessageValues = Readonly<Record<string, string | number | boolean | Date>>;

/** Returns a function that fills texts in, each parsed at its first use.
 *  language BCP 47 tag   texts by key, in ICU message syntax   -> say(key, values), the key where there is no text
 *  Throws: a text with bad syntax, at its first use.
 *  Source: ICU MessageFormat, Unicode. */
export function sayer<Key extends string>(
  language: string,
  texts: Readonly<Partial<Record<Key, Message>>>,
): (key: Key, values?: MessageValues) => string {
  const compiled = new Map<Key, IntlMessageFormat>();
  return (key, values) => {
    const text = texts[key];
    // A name on the screen is bad, but a screen that fails for want of a word would be worse.
    if (text === undefined) return key;
    // Most texts are plain, and parsing them would only cost time.
    if (isPlain(text)) return text;
    let message = compiled.get(key);
    if (message === undefined) {
      message = formatOf(text, language);
      compiled.set(key, message);
    }
    return String(message.format(values as Record<string, string | number | boolean | Date>));
  };
}
