import { type SafetyAnswers, timeWords } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import type { Format } from "@tidewright/editor";
import { toSI } from "@tidewright/units";
import { englishWords, type Words } from "@tidewright/words";

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
 *  answers SafetyAnswers of this design   design   format units   words of the reader   -> sentences in the order of the sweep
 *  Findings: none. Throws: never.
 *  Valid: answers of this very design.
 *  Source: own words. */
export function answerSentences(
  answers: SafetyAnswers,
  design: Design,
  format: Format,
  words: Words = englishWords,
): AnswerSentence[] {
  const { say } = words;
  const length = (si: number) => format(si, "length");
  const runs = toSI(design.sump.operatingLevel, "length");
  const glass = toSI(design.sump.height, "length");
  const sumpFloor = toSI(design.sump.floor, "length");
  return [
    safeLine(answers, runs, length, say),
    powerCut(answers, answers.powerCutLevel - sumpFloor, glass, format, say),
    siphonBreak(answers, length, say),
    {
      id: "minimum-sump",
      title: say("film.answer.minimumSump"),
      text: say("film.answer.minimumSumpText", {
        height: length(answers.minimumSumpHeight),
        volume: format(answers.minimumSumpVolume, "volume"),
        glass: length(glass),
      }),
      missed: answers.minimumSumpHeight > glass,
    },
    topUp(answers, format, words),
    emergency(answers, format, say),
    ...(Number.isFinite(answers.boxFreeboard)
      ? [
          {
            id: "box-freeboard",
            title: say("film.answer.box"),
            text:
              answers.boxFreeboard < 0
                ? say("film.answer.boxOver", { length: length(-answers.boxFreeboard) })
                : say("film.answer.boxRoom", { length: length(answers.boxFreeboard) }),
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
  say: Words["say"],
): AnswerSentence {
  const title = say("film.answer.safeLine");
  const id = "safe-line";
  if (safe === undefined)
    return {
      id,
      title,
      text: say("film.answer.noSafeLine"),
      missed: true,
    };
  const over = runs - safe;
  return {
    id,
    title,
    text: say(over > 0 ? "film.answer.safeLineHigh" : "film.answer.safeLineBelow", {
      safe: length(safe),
      margin: length(margin),
      runs: length(runs),
      over: length(Math.abs(over)),
    }),
    missed: over > 0,
  };
}

function powerCut(
  { powerCutVolume }: SafetyAnswers,
  depth: number,
  glass: number,
  format: Format,
  say: Words["say"],
): AnswerSentence {
  const left = glass - depth;
  return {
    id: "power-cut",
    title: say("film.answer.powerCut"),
    text: say(left < 0 ? "film.answer.powerCutOver" : "film.answer.powerCutBelow", {
      volume: format(powerCutVolume, "volume"),
      depth: format(depth, "length"),
      left: format(Math.abs(left), "length"),
    }),
    missed: left < 0,
  };
}

function siphonBreak(answers: SafetyAnswers, length: (si: number) => string, say: Words["say"]): AnswerSentence {
  const { siphonBreaks, deepestSiphonBreak: deepest, anySiphonBreak } = answers;
  const title = say("film.answer.siphonBreak");
  const id = "siphon-break";
  if (siphonBreaks.length === 0) return { id, title, text: say("film.answer.noSiphon"), missed: false };
  const today = Math.max(...siphonBreaks.map(({ depth }) => depth));
  const now = today < 5e-4 ? say("film.answer.airAtSurface") : say("film.answer.airAtDepth", { length: length(today) });
  if (anySiphonBreak) return { id, title, text: say("film.answer.anyBreak", { now }), missed: false };
  if (deepest === undefined)
    return {
      id,
      title,
      text: say("film.answer.noBreak", { now }),
      missed: true,
    };
  return {
    id,
    title,
    text: say("film.answer.breakAt", { length: length(deepest), now }),
    missed: today > deepest,
  };
}

function topUp(answers: SafetyAnswers, format: Format, words: Words): AnswerSentence {
  const { say } = words;
  const { days, daysUntilDry, evaporationPerDay, minimumReturnVolume } = answers;
  const lasts =
    daysUntilDry === undefined
      ? say("film.answer.lasts")
      : say("film.answer.drawsAir", { time: timeWords(daysUntilDry * day, words) });
  return {
    id: "return-chamber",
    title: say("film.answer.topUp", { days }),
    text: say("film.answer.topUpText", {
      evaporation: format(evaporationPerDay, "volume"),
      days,
      volume: format(minimumReturnVolume, "volume"),
      lasts,
    }),
    missed: daysUntilDry !== undefined && daysUntilDry < days,
  };
}

function emergency(
  { emergencyFlow, emergencyCapacity }: SafetyAnswers,
  format: Format,
  say: Words["say"],
): AnswerSentence {
  const needs = format(emergencyFlow, "flow");
  return {
    id: "emergency-drain",
    title: say("film.answer.emergency"),
    text:
      emergencyCapacity > 0
        ? say("film.answer.emergencyCarries", { needs, carries: format(emergencyCapacity, "flow") })
        : say("film.answer.noEmergency", { needs }),
    missed: emergencyCapacity < emergencyFlow,
  };
}
