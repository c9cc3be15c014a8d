import { IntlMessageFormat } from "intl-messageformat";

/** What may be put into a text. */
export type MessageValues = Readonly<Record<string, string | number | boolean | Date>>;

/** Returns a function that fills texts in, each parsed at its first use.
 *  language BCP 47 tag   texts by key, in ICU message syntax   -> say(key, values), the key where there is no text
 *  Throws: a text with bad syntax, at its first use.
 *  Source: ICU MessageFormat, Unicode. */
export function sayer<Key extends string>(
  language: string,
  texts: Readonly<Partial<Record<Key, string>>>,
): (key: Key, values?: MessageValues) => string {
  const compiled = new Map<Key, IntlMessageFormat>();
  return (key, values) => {
    const text = texts[key];
    // A name on the screen is bad, but a screen that fails for want of a word would be worse.
    if (text === undefined) return key;
    // Most texts are plain, and parsing them would only cost time.
    if (values === undefined && !/['{]/.test(text)) return text;
    let message = compiled.get(key);
    if (message === undefined) {
      message = new IntlMessageFormat(text, language, undefined, { ignoreTag: true });
      compiled.set(key, message);
    }
    return String(message.format(values as Record<string, string | number | boolean | Date>));
  };
}
