import type { StartDefault, StartFigure } from "@tidewright/advice";
import { findPipeSeries, findPump } from "@tidewright/catalogue";
import type { MessageKey, Words } from "@tidewright/words";
import { currentCatalogue } from "../catalogue/currentCatalogue.ts";
import type { ScreenFormat } from "../format/useFormat.ts";

/** Returns what stands at a default, as a reader of the screen writes it.
 *  entry StartDefault   words   format   -> text */
export function valueText({ path, value }: StartDefault, words: Words, format: ScreenFormat): string {
  if (path === "/drains" && Array.isArray(value)) return words.number(value.length);
  if (path === "/display/zones" && Array.isArray(value))
    return value.map(({ animals }: { animals: string }) => animalsText(animals, words)).join(", ");
  if (Array.isArray(value)) return value.map((each) => plainText(each, words)).join(" – ");
  if (/\/(rockShare|share|speed)$/.test(path) && typeof value === "number") return format.perCent(value);
  if (typeof value === "string") return nameOf(value);
  return plainText(value, words);
}

function plainText(value: unknown, words: Words): string {
  if (typeof value === "number") return words.number(value);
  if (typeof value === "object" && value !== null && "unit" in value && "value" in value) {
    const { unit, value: number } = value as { unit: string; value: number };
    const text = words.number(number, { maximumFractionDigits: 3, useGrouping: false });
    if (unit === "1/h") return `${text}/h`;
    return `${text}\u00a0${unit === "a" ? words.say("start.years") : /^[CF]$/.test(unit) ? `°${unit}` : unit}`;
  }
  return String(value);
}

/** Returns the animals of a group in the reader's language. */
export function animalsText(group: string, words: Words): string {
  const key = `catalogue.animals.${group}`;
  return words.knows(key) ? words.say(key) : group;
}

function nameOf(id: string): string {
  const pump = findPump(currentCatalogue(), id);
  return pump ? `${pump.maker} ${pump.model}` : (findPipeSeries(id)?.label ?? id);
}

/** Returns the numbers of a sentence in the units of the screen. */
export function figures(
  values: Readonly<Record<string, StartFigure>>,
  format: ScreenFormat,
): Readonly<Record<string, string | number>> {
  return Object.fromEntries(
    Object.entries(values).map(([name, figure]) => [
      name,
      typeof figure === "object" ? format(figure.si, figure.dimension) : figure,
    ]),
  );
}

/** Returns what a default is about. */
export function itemText({ path, why }: StartDefault, words: Words, format: ScreenFormat): string {
  const side = /^\/display\/(length|width|height)$/.exec(path)?.[1] as "length" | "width" | "height" | undefined;
  if (side !== undefined) return words.say(`start.tank.${side}`);
  return words.say(`start.item.${why.key}`, figures(why.values, format));
}

/** Returns why a default is what it is. */
export function whyText({ why }: StartDefault, words: Words, format: ScreenFormat): string {
  const key = `start.why.${why.key}` satisfies MessageKey;
  return words.say(key, figures(why.values, format));
}

/** Returns a source in the reader's language where it is one of ours; titles of books stay as they are. */
export function sourceText(source: string, words: Words): string {
  if (source === "common practice, no source") return words.say("start.practice");
  if (source === "found by solving this design") return words.say("start.reckoned");
  if (source === "the shop's settings") return words.say("start.shopSettings");
  return words.known(source);
}
