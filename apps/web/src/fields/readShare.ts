import { englishWords, type Words } from "@tidewright/words";
import { type Reading, readNumber } from "./TypedField.tsx";

/** Returns a share typed in per cent, or what is wrong with it; whoever types per cent is answered in per cent.
 *  text such as "75", "75 %" or "3,5"   say the reader's words   -> Reading, 0 to 1
 *  Example: readShare("75 %")  ->  {"ok":true,"value":0.75} */
export function readShare(text: string, say: Words["say"] = englishWords.say): Reading<number> {
  const fix = say("fields.perCent");
  const reading = readNumber(text.replace("%", ""), fix, say);
  if (!reading.ok) return reading;
  return reading.value < 0 || reading.value > 100
    ? { ok: false, problem: say("fields.outsideShare", { text: text.replace("%", "").trim(), fix }) }
    : { ok: true, value: reading.value / 100 };
}
