import type { Design } from "@tidewright/design";
import { englishWords, type MessageKey, type Words } from "@tidewright/words";

/** Returns what to do besides reckoning, in the trade's usual words: what no simulation replaces.
 *  design Design   words of the reader's language, English where left out   -> list of sentences, the one that matters most first
 *  Source: common practice, no source.
 *  Example: safetyCautions({ loops: [], drains: [] })[0]  ->  "Before you leave, pull the plug and watch where the water stops; then plug in again and watch the drains start." */
export function safetyCautions(
  design: Pick<Design, "loops" | "drains" | "topOff">,
  words: Words = englishWords,
): string[] {
  const text = JSON.stringify([design.loops, design.drains]);
  const checkValve = /"(swingCheck|springCheck|footValve)"|"checkValve":true/.test(text);
  const told: MessageKey[] = [
    "scenario.caution.plug",
    checkValve ? "scenario.caution.checkValve" : "scenario.caution.noCheckValve",
    ...(text.includes('"siphonBreak"') ? (["scenario.caution.siphonBreak"] as const) : []),
    ...(design.drains.some((drain) => drain.kind === "throttledSiphon") ? (["scenario.caution.siphon"] as const) : []),
    ...(design.topOff ? (["scenario.caution.topOff"] as const) : []),
    "scenario.caution.line",
  ];
  return told.map((key) => words.say(key));
}
