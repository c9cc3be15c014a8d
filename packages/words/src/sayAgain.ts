import { IntlMessageFormat } from "intl-messageformat";
import { problems } from "./en/problems.ts";
import type { Words } from "./words.ts";

interface Pattern {
  readonly key: keyof typeof problems;
  readonly shape: RegExp;
  readonly names: readonly string[];
  /** Letters that stand fast: the more of them, the surer the text is meant. */
  readonly fixed: number;
}

let patterns: readonly Pattern[] | undefined;

/** Returns an English sentence about a document again in another language, where it is one of those that the design package writes;
 *  else the sentence as it is, which is still true.
 *  text message or fix of a problem   words of the reader's language   -> text
 *  Valid: sentences whose filled-in values hold none of the words that stand fast around them.
 *  Source: own construction: the English text of the catalogue is the pattern. */
export function sayAgain(text: string, words: Words): string {
  if (words.language === "en") return text;
  patterns ??= (Object.keys(problems) as (keyof typeof problems)[]).map(patternOf).sort((a, b) => b.fixed - a.fixed);
  for (const { key, shape, names } of patterns) {
    const found = shape.exec(text);
    if (found === null) continue;
    const values = names.map((name, place) => [name, words.decimal(sayAgain(found[place + 1]!, words))]);
    return words.say(key, Object.fromEntries(values));
  }
  return words.known(text);
}

function patternOf(key: keyof typeof problems): Pattern {
  const names: string[] = [];
  let fixed = 0;
  const parts = new IntlMessageFormat(problems[key], "en", undefined, { ignoreTag: true }).getAst().map((element) => {
    // In a text without plurals an element is either words or the name of a value.
    if (!("value" in element)) return "";
    const plain: number = element.type;
    if (plain === 0) {
      fixed += element.value.length;
      return element.value.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
    }
    names.push(element.value);
    return "(.+?)";
  });
  return { key, shape: new RegExp(`^${parts.join("")}$`, "s"), names, fixed };
}
