import { englishWords, type Words } from "@tidewright/words";

/** Returns a vessel in words, to stand inside a sentence.
 *  place "display", "overflowBox", "sump.<chamber>" or "topOff"   words of the reader's language, English where left out   -> text
 *  Source: own words.
 *  Example: describePlace("sump.return")  ->  "sump chamber “return”"
 *  Example: describePlace("overflowBox")  ->  "overflow box" */
export function describePlace(place: string, words: Words = englishWords): string {
  const key = `scenario.place.${place}`;
  if (place !== "chamber" && words.knows(key)) return words.say(key);
  return place.startsWith("sump.") ? words.say("scenario.place.chamber", { name: place.slice("sump.".length) }) : place;
}
