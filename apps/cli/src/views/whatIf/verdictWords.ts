import type { Verdict } from "@tidewright/advice";

/** Verdicts in a table: what needs a person stands in capitals, short enough to leave room for the scenario. */
export const verdictWords: Readonly<Record<Verdict, string>> = {
  wet: "WET",
  unsolved: "OPEN",
  dry: "AIR",
  tight: "tight",
  safe: "safe",
};

/** What the words of the table mean. */
export const verdictLegend =
  "WET: water on the floor. AIR: the floor stays dry, a pump draws air. OPEN: not solved to the end. tight: dry by less than waves and the setting of the level need.";
