import { type Assessment, describeVerdict, type SafetySweep } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import type { Words } from "@tidewright/words";
import type { ScreenFormat } from "../format/screenFormat.ts";

/** One thing a system does, as a customer reads it. */
export interface PlainFact {
  readonly id: string;
  readonly title: string;
  readonly figure: string;
  readonly text: string;
  /** True where it is not as it should be. */
  readonly wrong: boolean;
}

/** Returns what a system will do in plain words: flow, turnover, power and cost, sound, and what comes of a power cut.
 *  design   assessment of it   sweep of it, where it is there yet   format units   words   -> facts in reading order
 *  Findings: none. Throws: never.
 *  Valid: assessment and sweep of this very design.
 *  Source: own words. */
export function plainWords(
  design: Design,
  assessment: Assessment,
  sweep: SafetySweep | undefined,
  format: ScreenFormat,
  words: Words,
): PlainFact[] {
  const { say } = words;
  const main = Math.max(
    0,
    assessment.loops.findIndex(({ purpose }) => purpose === "return"),
  );
  const loop = assessment.loops[main];
  const pumps = [...new Set(assessment.pumps.filter((pump) => pump.loop === main).map(({ label }) => label))].join(
    " + ",
  );
  const { turnover, power, sound } = assessment;
  const wish = turnover.return.wish;
  const off = wish !== undefined && (turnover.return.value < wish[0] || turnover.return.value > wish[1]);
  const timesAnHour = (value: number) => say("doors.timesAnHour", { times: format.bare(value, "turnover") });
  return [
    {
      id: "flow",
      title: say("doors.flow"),
      figure: loop === undefined ? "–" : format(loop.flowToDisplay, "flow"),
      text: pumps === "" ? say("doors.noPump") : say("doors.flowText", { pump: pumps }),
      wrong: pumps === "",
    },
    {
      id: "turnover",
      title: say("doors.turnover"),
      figure: timesAnHour(turnover.return.value),
      text: [
        wish === undefined
          ? say("doors.turnoverText")
          : say("doors.turnoverWish", {
              low: format.bare(wish[0], "turnover"),
              high: format.bare(wish[1], "turnover"),
            }),
        assessment.tankPumps.length === 0 ? "" : say("doors.moved", { times: timesAnHour(turnover.total.value) }),
      ]
        .filter(Boolean)
        .join(" "),
      wrong: off,
    },
    {
      id: "power",
      title: say("doors.power"),
      figure: `${roundSum(power.annualCost, power.tariffCurrency, words)} ${say("doors.aYear")}`,
      text: say("doors.powerText", {
        power: format(power.watts, "power"),
        energy: format(power.annualEnergy, "energy"),
      }),
      wrong: false,
    },
    {
      id: "sound",
      title: say("doors.sound"),
      figure: format(sound.level, "soundLevel"),
      text:
        sound.wish === undefined
          ? say("doors.soundText")
          : say(sound.level <= sound.wish ? "doors.soundUnder" : "doors.soundOver", {
              wish: format(sound.wish, "soundLevel"),
            }),
      wrong: sound.wish !== undefined && sound.level > sound.wish,
    },
    powerCut(design, assessment, sweep, format, words),
    ...(sweep === undefined ? [] : [mishaps(sweep, words)]),
  ];
}

function powerCut(
  design: Design,
  { sump }: Assessment,
  sweep: SafetySweep | undefined,
  format: ScreenFormat,
  words: Words,
): PlainFact {
  const { say } = words;
  const title = say("doors.powerCut");
  const row = sweep?.rows.find(({ scenario }) => scenario.kind === "powerCut");
  if (row === undefined) {
    const wet = sump.margin < 0;
    return {
      id: "powerCut",
      title,
      // Room enough is no promise: what is computed now has the last word.
      figure: say(wet ? "doors.floorWet" : "doors.floorComing"),
      text: say(wet ? "doors.tooLittleRoom" : "doors.roomLeft", { volume: format(Math.abs(sump.margin), "volume") }),
      wrong: wet,
    };
  }
  const wet = row.verdict === "wet";
  return {
    id: "powerCut",
    title,
    figure: say(wet ? "doors.floorWet" : "doors.floorDry"),
    text: `${say("doors.runsBack", { volume: format(row.sumpGain, "volume") })} ${describeVerdict(row, design, format, words)}`,
    wrong: row.verdict !== "safe",
  };
}

/** What was played besides the power cut, and whether the floor stays dry in all of it. */
function mishaps({ rows }: SafetySweep, { say }: Words): PlainFact {
  const wet = rows.filter(({ verdict }) => verdict === "wet" || verdict === "unsolved").length;
  return {
    id: "mishaps",
    title: say("doors.mishaps"),
    figure: say("doors.mishapsDry", { dry: rows.length - wet, all: rows.length }),
    text: say(wet === 0 ? "doors.mishapsAllDry" : "doors.mishapsWet", { wet }),
    wrong: wet > 0,
  };
}

/** Returns a sum without cents, which no estimate over a year has. */
function roundSum(amount: number, currency: string, words: Words): string {
  return `${words.number(Math.round(amount), { maximumFractionDigits: 0 })}\u00a0${currency}`;
}
