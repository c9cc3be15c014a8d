import { describeFinding, type StartNote } from "@tidewright/advice";
import type { Words } from "@tidewright/words";
import type { ScreenFormat } from "../format/useFormat.ts";
import { figures } from "./valueText.ts";

/** Returns a note of the first design in plain words.
 *  note StartNote   words   format   -> sentence */
export function noteText(note: StartNote, words: Words, format: ScreenFormat): string {
  if (note.code === "danger") {
    if (note.finding === undefined) return "";
    const { title, sentence } = describeFinding(note.finding, format, words);
    return `${title}: ${sentence}`;
  }
  const values = figures(note.values, format);
  if (note.code === "wet") {
    const key = `start.note.wet.${note.values["scenario"]}`;
    return words.say(words.knows(key) ? key : "start.note.wet.other", values);
  }
  return words.say(`start.note.${note.code}`, values);
}
