import { type SafetyAnswers, timeWords } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import type { Format } from "@tidewright/editor";
import { toSI } from "@tidewright/units";

/** One answer of the safety sweep in plain words. */
export interface AnswerSentence {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  /** True where the design as it stands does not meet it. */
  readonly missed: boolean;
}

const day = 86_400;

/** Returns what the sweep tells beyond its rows, each answer in one or two sentences with the user's units.
 *  answers SafetyAnswers of this design   design   format units   -> sentences in the order of the sweep
 *  Findings: none. Throws: never.
 *  Valid: answers of this very design.
 *  Source: own words. */
export function answerSentences(answers: SafetyAnswers, design: Design, format: Format): AnswerSentence[] {
  const length = (si: number) => format(si, "length");
  const runs = toSI(design.sump.operatingLevel, "length");
  const glass = toSI(design.sump.height, "length");
  const sumpFloor = toSI(design.sump.floor, "length");
  return [
    safeLine(answers, runs, length),
    powerCut(answers, answers.powerCutLevel - sumpFloor, glass, format),
    siphonBreak(answers, length),
    {
      id: "minimum-sump",
      title: "Smallest sump",
      text: `With these chambers and this level the glass must be at least ${length(answers.minimumSumpHeight)} high, ${format(answers.minimumSumpVolume, "volume")} to its edge; it is ${length(glass)} high.`,
      missed: answers.minimumSumpHeight > glass,
    },
    topUp(answers, format),
    emergency(answers, format),
    ...(Number.isFinite(answers.boxFreeboard)
      ? [
          {
            id: "box-freeboard",
            title: "Room in the overflow box",
            text:
              answers.boxFreeboard < 0
                ? `With every drain open the box still runs ${length(-answers.boxFreeboard)} over its rim.`
                : `With every drain open the box never comes nearer to its rim than ${length(answers.boxFreeboard)}.`,
            missed: answers.boxFreeboard < answers.margin,
          },
        ]
      : []),
  ];
}

function safeLine(
  { highestSafeOperatingLevel: safe, margin }: SafetyAnswers,
  runs: number,
  length: (si: number) => string,
): AnswerSentence {
  const title = "Highest safe operating line";
  const id = "safe-line";
  if (safe === undefined)
    return {
      id,
      title,
      text: "No level is low enough: even with the intakes just under water, a power cut fills the sump past its rim.",
      missed: true,
    };
  const over = runs - safe;
  return {
    id,
    title,
    text: `${length(safe)} deep in the return chamber: after a power cut, check valves counting for nothing, ${length(margin)} remain to the rim. It runs at ${length(runs)}${over > 0 ? `, ${length(over)} too high` : `, ${length(-over)} below that`}.`,
    missed: over > 0,
  };
}

function powerCut({ powerCutVolume }: SafetyAnswers, depth: number, glass: number, format: Format): AnswerSentence {
  const left = glass - depth;
  return {
    id: "power-cut",
    title: "Water back on a power cut",
    text: `${format(powerCutVolume, "volume")} come back into the sump; with check valves standing open it would stand ${format(depth, "length")} deep, ${format(Math.abs(left), "length")} ${left < 0 ? "over" : "below"} its rim.`,
    missed: left < 0,
  };
}

function siphonBreak(answers: SafetyAnswers, length: (si: number) => string): AnswerSentence {
  const { siphonBreaks, deepestSiphonBreak: deepest, anySiphonBreak } = answers;
  const title = "Deepest siphon break";
  const id = "siphon-break";
  if (siphonBreaks.length === 0) return { id, title, text: "No outlet in the display can siphon back.", missed: false };
  const today = Math.max(...siphonBreaks.map(({ depth }) => depth));
  const now =
    today < 5e-4
      ? "Today the returns let air in at the surface."
      : `Today the deepest lets air in at ${length(today)}.`;
  if (anySiphonBreak) return { id, title, text: `Any: the sump holds all that can fall back. ${now}`, missed: false };
  if (deepest === undefined)
    return {
      id,
      title,
      text: `None is shallow enough: even with air let in at the surface too much falls back. ${now}`,
      missed: true,
    };
  return {
    id,
    title,
    text: `Every return must let air in no deeper than ${length(deepest)} below the running level. ${now}`,
    missed: today > deepest,
  };
}

function topUp(answers: SafetyAnswers, format: Format): AnswerSentence {
  const { days, daysUntilDry, evaporationPerDay, minimumReturnVolume } = answers;
  const lasts =
    daysUntilDry === undefined
      ? `As it is, it lasts.`
      : `As it is, the pump draws air after ${timeWords(daysUntilDry * day)}.`;
  return {
    id: "return-chamber",
    title: `${days} days without top-up`,
    text: `${format(evaporationPerDay, "volume")} a day go to the air. To last ${days} days the return chamber must hold ${format(minimumReturnVolume, "volume")}, what stands below the intake included. ${lasts}`,
    missed: daysUntilDry !== undefined && daysUntilDry < days,
  };
}

function emergency({ emergencyFlow, emergencyCapacity }: SafetyAnswers, format: Format): AnswerSentence {
  const needs = format(emergencyFlow, "flow");
  return {
    id: "emergency-drain",
    title: "Emergency drain",
    text:
      emergencyCapacity > 0
        ? `With every other drain blocked it must carry ${needs}; with the box full to its rim it carries ${format(emergencyCapacity, "flow")}.`
        : `There is none. With every other drain blocked one would have to carry ${needs}.`,
    missed: emergencyCapacity < emergencyFlow,
  };
}
