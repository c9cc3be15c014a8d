import type { MessageKey } from "./en/english.ts";
import type { Words } from "./language.ts";
import { type Message, piecesOf } from "./message.ts";

/** Rooms whose English texts are written elsewhere, by packages that speak English, and are patterns here. Until somebody
 *  enters such a room its texts stay as they are. */
export const patternRooms = ["problems", "elevation", "pumpProblems", "serverProblems"] as const;
/** One of `patternRooms`. */
export type PatternRoom = (typeof patternRooms)[number];
const learned = new Map<PatternRoom, Readonly<Record<string, Message>>>();

/** Takes in the English texts of a room as patterns.
 *  room   texts by key
 *  Source: own construction. */
export function learnPatterns(room: PatternRoom, texts: Readonly<Record<string, Message>>): void {
  learned.set(room, texts);
  patterns.delete(room);
  said.clear();
}

interface Pattern {
  readonly key: MessageKey;
  readonly shape: RegExp;
  readonly names: readonly string[];
  /** Letters that stand fast: the more of them, the surer the text is meant. */
  readonly fixed: number;
}

const patterns = new Map<PatternRoom, readonly Pattern[]>();
/** What was said already: a drag asks for the same few labels in every frame. */
const said = new Map<string, string>();
const mostKept = 2000;

/** Returns an English text out of data again in another language, where it is one of those that the area knows; else as it is, which
 *  is still true.
 *  text such as the message or the fix of a problem, or a label   words of the reader's language   area whose patterns count -> text
 *  Valid: texts whose filled-in values hold none of the words that stand fast around them.
 *  Source: own construction: the English text of the catalogue is the pattern. */
export function sayAgain(text: string, words: Words, area: PatternRoom = "problems"): string {
  if (words.language === "en") return text;
  const name = `${words.language} ${area} ${text}`;
  const kept = said.get(name);
  if (kept !== undefined) return kept;
  const told = match(text, words, area);
  if (said.size >= mostKept) said.clear();
  said.set(name, told);
  return told;
}

/** Values that are words of ours and no names that a person gave. */
const ours = new Set(["part", "place", "what", "value", "given", "limitIs", "wanted", "kind", "last", "choices"]);

function match(text: string, words: Words, area: PatternRoom): string {
  const known = words.known(text);
  if (known !== text) return known;
  for (const { key, shape, names } of patternsOf(area)) {
    const found = shape.exec(text);
    if (found === null || !words.knows(key)) continue;
    const values = names.map((name, place) => {
      const value = found[place + 1]!;
      return [name, words.decimal(ours.has(name) ? sayAgain(value, words, area) : value)];
    });
    return words.say(key, Object.fromEntries(values));
  }
  return text;
}

function patternsOf(area: PatternRoom): readonly Pattern[] {
  const made = patterns.get(area);
  if (made !== undefined) return made;
  const known = learned.get(area);
  if (known === undefined) return [];
  const texts = Object.entries(known) as [Pattern["key"], Message][];
  const list = texts.map(([key, text]) => patternOf(key, text)).sort((a, b) => b.fixed - a.fixed);
  patterns.set(area, list);
  return list;
}

function patternOf(key: Pattern["key"], text: Message): Pattern {
  const names: string[] = [];
  let fixed = 0;
  const pieces = piecesOf(text);
  const parts = pieces.map((element) => {
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
  // Of two that are alike the one that begins with a word of its own is the surer.
  if (Number(pieces[0]?.type) === 0) fixed += 0.5;
  return { key, shape: new RegExp(`^${parts.join("")}$`, "s"), names, fixed };
}
