import type { Assessment, LoopState } from "@tidewright/advice";
import type { Format } from "../../output/format.ts";

/** Returns the answer in one sentence: which pump moves how much water, and how that stands to the wish. */
export function answerSentence(assessment: Assessment, format: Format): string {
  const loop = assessment.loops.find((each) => each.purpose === "return") ?? assessment.loops[0];
  const pumps = assessment.pumps.filter((pump) => loop !== undefined && assessment.loops[pump.loop] === loop);
  const { value, wish } = assessment.turnover.return;
  const turnover = `${times(value)} display volumes an hour`;
  const flow = format(assessment.overflow.flow, "flow");
  const verdict = wish === undefined ? "" : `, ${againstWish(value, wish)}`;
  if (loop === undefined || pumps.length === 0)
    return `No pump is chosen yet: ${flow} run over the weir, ${turnover}${verdict}.`;
  const labels = [...new Set(pumps.map((pump) => pump.label))];
  const count = pumps.length > 1 && labels.length === 1 ? `${pumps.length} × ` : "";
  return `${count}${labels.join(" with ")} ${pumps.length > 1 ? "bring" : "brings"} ${flow} over the weir against ${headOf(loop, format)}: ${turnover}${verdict}.`;
}

function headOf(loop: LoopState, format: Format): string {
  return `${format(loop.totalHead, "head")} of head`;
}

function againstWish(value: number, [low, high]: readonly [number, number]): string {
  const wished = `the wish of ${times(low)} to ${times(high)}`;
  if (value < low) return `below ${wished}`;
  return value > high ? `above ${wished}` : `within ${wished}`;
}

/** Turnover is volumes an hour already; a tenth of a volume is as fine as anyone aims. */
function times(turnover: number): string {
  return String(Number(turnover.toFixed(1)));
}
