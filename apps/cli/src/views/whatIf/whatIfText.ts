import {
  describeScenario,
  describeVerdict,
  describeWhatIfEvent,
  groupEvents,
  repeatWords,
  timeWords,
  type VesselTrack,
  verdictFacts,
  type WhatIf,
} from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import type { Look } from "../../output/deliver.ts";
import { tableText } from "../../output/table.ts";
import { wrap } from "../../output/wrap.ts";
import { paragraphs, section } from "../section.ts";
import { shortPlace } from "./shortPlace.ts";

const right = { align: "right" } as const;

/** Returns one played scenario: the verdict, each vessel's levels, what happened when, and where the water went. */
export function whatIfText(result: WhatIf, design: Design, look: Look): string {
  const { styles, width, format } = look;
  const { scenario, verdict } = result;
  const title = styles.bold(`${design.name}: ${describeScenario(scenario)}`);
  const sentence = describeVerdict(verdictFacts(result), design, format);
  return paragraphs([
    title,
    verdict === "safe" || verdict === "tight" ? wrap(sentence, width) : styles.red(wrap(sentence, width)),
    section("Levels above each vessel's floor", vesselsText(result.vessels, look), look),
    section("What happens", eventsText(result, design, look), look),
    section("Where the water went", balanceText(result, look), look),
  ]);
}

function vesselsText(vessels: readonly VesselTrack[], { format, width }: Look): string {
  return tableText(
    [
      { head: "vessel", flexible: true },
      { head: "start", ...right },
      { head: "lowest", ...right },
      { head: "at", ...right },
      { head: "highest", ...right },
      { head: "at", ...right },
      { head: "end", ...right },
      { head: "margin", ...right },
    ],
    vessels.map((vessel) => {
      const { place, floor, area } = vessel;
      // A reservoir's footprint is not in the design: its water is told by volume.
      const level = (si: number) =>
        place === "topOff" ? format((si - floor) * area, "volume") : format(si - floor, "length");
      return [
        shortPlace(place),
        level(vessel.start),
        level(vessel.lowest),
        timeWords(vessel.lowestAt),
        level(vessel.highest),
        timeWords(vessel.highestAt),
        level(vessel.end),
        format(vessel.margin ?? Number.NaN, "length"),
      ];
    }),
    width,
  );
}

function eventsText({ events, scenario, reached }: WhatIf, design: Design, { width }: Look): string {
  // Twice or three times is a course of events; more often is a rhythm, and --json has each beat.
  const rows = groupEvents(events, 4).map((group) => [
    timeWords(group[0].t),
    `${describeWhatIfEvent(group[0], scenario, design)}${repeatWords(group)}`,
  ]);
  return tableText(
    [
      { head: "", ...right },
      { head: "", flexible: true },
    ],
    [...rows, [timeWords(reached), "the end"]],
    width,
  );
}

function balanceText(
  { spilled, evaporated, toppedUp, volumeError, steps, status }: WhatIf,
  { format, width }: Look,
): string {
  const rows = [
    ["water on the floor", format(spilled, "volume")],
    ["water lost to the air", format(evaporated, "volume")],
    ["water let in by the top-off", format(toppedUp, "volume")],
    ["greatest error of all volumes together", `${volumeError.toExponential(1)} of them`],
    ["steps of the simulation", `${steps}, ${statusWords[status]}`],
  ];
  return tableText(
    [
      { head: "", flexible: true },
      { head: "", ...right },
    ],
    rows,
    width,
  );
}

const statusWords: Readonly<Record<WhatIf["status"], string>> = {
  finished: "to the end",
  stepBudget: "until its step budget was spent",
  stuck: "until no step was small enough",
};
