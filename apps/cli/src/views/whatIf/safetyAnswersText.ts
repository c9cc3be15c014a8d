import { type SafetyAnswers, timeWords } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { toSI } from "@tidewright/units";
import type { Look } from "../../output/deliver.ts";
import { tableText } from "../../output/table.ts";

const day = 86_400;

/** Returns the answers that follow from a sweep: what would make the design safe, as measures. */
export function safetyAnswersText(answers: SafetyAnswers, design: Design, { format, width }: Look): string {
  const line = answers.highestSafeOperatingLevel;
  const kept = `${format(answers.margin, "length")} kept to the rim`;
  const deepest = answers.siphonBreaks.reduce((most, { depth }) => Math.max(most, depth), 0);
  const rows = [
    [
      `highest safe operating depth in the return chamber (${kept})`,
      line === undefined ? "none is safe" : format(line, "length"),
    ],
    ["operating depth now", format(toSI(design.sump.operatingLevel, "length"), "length")],
    ["water that comes back into the sump on a power cut", format(answers.powerCutVolume, "volume")],
    [
      "highest depth in the sump then, check valves counting for nothing",
      format(answers.powerCutLevel - toSI(design.sump.floor, "length"), "length"),
    ],
    ["deepest that siphons may break below the running level", siphonWords(answers, format)],
    ...(answers.siphonBreaks.length === 0 ? [] : [["deepest that one breaks now", format(deepest, "length")]]),
    ["smallest sump with this plan and operating depth", format(answers.minimumSumpVolume, "volume")],
    ["height of its glass", format(answers.minimumSumpHeight, "length")],
    ["water lost to the air in a day", format(answers.evaporationPerDay, "volume")],
    [
      `return chamber that lasts ${timeWords(answers.days * day)} without top-up`,
      format(answers.minimumReturnVolume, "volume"),
    ],
    [
      "time without top-up until a pump draws air",
      answers.daysUntilDry === undefined
        ? `more than ${timeWords(answers.days * day)}`
        : timeWords(answers.daysUntilDry * day),
    ],
    ["what the emergency drain must carry alone", format(answers.emergencyFlow, "flow")],
    [
      "what it can carry with the box full",
      answers.emergencyCapacity > 0 ? format(answers.emergencyCapacity, "flow") : "there is none",
    ],
    ["freeboard of the box with all drains open", format(answers.boxFreeboard, "length")],
  ];
  return tableText(
    [
      { head: "", flexible: true },
      { head: "", align: "right" },
    ],
    rows,
    width,
  );
}

function siphonWords(
  { siphonBreaks, deepestSiphonBreak, anySiphonBreak }: SafetyAnswers,
  format: Look["format"],
): string {
  if (siphonBreaks.length === 0) return "nothing can siphon";
  if (anySiphonBreak) return "any depth";
  return deepestSiphonBreak === undefined ? "no depth is safe" : format(deepestSiphonBreak, "length");
}
