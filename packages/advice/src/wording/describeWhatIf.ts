import type { TransientEventCode } from "@tidewright/engine";
import type { Scenario } from "../overTime/scenario.ts";
import type { Verdict, WhatIf, WhatIfEvent } from "../overTime/whatIfResult.ts";
import { describePlace } from "./describePlace.ts";
import { describeAction, type PartNames } from "./describeScenario.ts";
import type { Format } from "./format.ts";
import { timeWords } from "./timeWords.ts";

/** What a verdict is worded from: a row of the safety sweep has it all, and `verdictFacts` draws it from a WhatIf. */
export interface VerdictFacts {
  readonly verdict: Verdict;
  /** Vessel nearest to its rim and its margin [m]; negative is over. */
  readonly worst?: { readonly place: string; readonly margin: number };
  /** First spill or dry pump [s], and the path of the part. */
  readonly timeToTrouble?: number;
  readonly troubleAt?: string;
  /** Water on the floor [m3]. */
  readonly spilled: number;
}

/** Returns something that happened in a scenario as a sentence without its full stop.
 *  event WhatIfEvent   scenario it happened in   names PartNames, such as a Design   -> text
 *  Source: own words.
 *  Example: describeWhatIfEvent({ t: 65, code: "siphon/lost", path: "/drains/0", name: "main" }, { events: [] }, { drains: [], loops: [] })  ->  "the siphon of drain “main” draws air" */
export function describeWhatIfEvent(event: WhatIfEvent, scenario: Pick<Scenario, "events">, names: PartNames): string {
  if (event.code === "action") {
    const action = scenario.events[event.action ?? -1]?.action;
    return action === undefined ? "something is done" : describeAction(action, names);
  }
  const outlet = /^(.*) outlet (\d+)$/.exec(event.name);
  const told = event.code.startsWith("rim/")
    ? describePlace(event.name)
    : event.code.startsWith("outlet/") && outlet !== null
      ? `outlet ${outlet[2]} of “${outlet[1]}”`
      : `“${event.name}”`;
  return eventWords[event.code].replace("{}", told);
}

/** Returns how a scenario ends in one sentence, its numbers in the reader's units.
 *  facts VerdictFacts, such as a row of the safety sweep   names PartNames   format Format   -> text
 *  Source: own words.
 *  Example: describeVerdict({ verdict: "safe", worst: { place: "overflowBox", margin: 0.034 }, spilled: 0 }, { drains: [], loops: [] }, (si) => `${si * 1000} mm`)  ->  "The floor stays dry; the overflow box comes nearest to its rim, 34 mm below it." */
export function describeVerdict(facts: VerdictFacts, names: PartNames, format: Format): string {
  const { verdict, worst, timeToTrouble, spilled } = facts;
  const when = timeToTrouble === undefined ? "" : ` after ${timeWords(timeToTrouble)}`;
  const where = worst === undefined ? "" : describePlace(worst.place);
  switch (verdict) {
    case "wet":
      return `${format(spilled, "volume")} of water on the floor; it begins${when || " at once"}${troubleWords(facts, names)}.`;
    case "unsolved":
      return "The simulation did not reach its end: take this for a danger until it has been tried with water.";
    case "dry":
      return `The floor stays dry, but ${pumpWords(facts, names)} draws air${when}.`;
    case "tight":
      return worst === undefined
        ? "The floor stays dry by a hair."
        : worst.margin < 0
          ? `The floor stays dry, though the ${where} runs ${format(-worst.margin, "length")} over its rim.`
          : `The floor stays dry, but the ${where} comes within ${format(worst.margin, "length")} of its rim: too little for waves and for the hand that set the level.`;
    case "safe":
      return worst === undefined
        ? "The floor stays dry."
        : `The floor stays dry; the ${where} comes nearest to its rim, ${format(worst.margin, "length")} below it.`;
  }
}

/** Returns what a verdict is worded from, drawn from a played scenario.
 *  whatIf WhatIf   -> VerdictFacts, SI
 *  Source: own construction. */
export function verdictFacts(whatIf: WhatIf): VerdictFacts {
  const { verdict, timeToTrouble, spilled, vessels, events } = whatIf;
  const rimmed = vessels.flatMap(({ place, margin }) => (margin === undefined ? [] : [{ place, margin }]));
  const worst = rimmed.reduce<(typeof rimmed)[number] | undefined>(
    (least, each) => (least === undefined || each.margin < least.margin ? each : least),
    undefined,
  );
  const trouble = events.find(
    ({ t, code }) => t === timeToTrouble && (code === "rim/over" || code === "pump/drawsAir"),
  );
  return {
    verdict,
    spilled,
    ...(worst === undefined ? {} : { worst }),
    ...(timeToTrouble === undefined ? {} : { timeToTrouble }),
    ...(trouble === undefined ? {} : { troubleAt: trouble.path }),
  };
}

function troubleWords({ troubleAt, worst }: VerdictFacts, names: PartNames): string {
  const place =
    troubleAt === "/display"
      ? "display"
      : troubleAt?.startsWith("/overflow")
        ? "overflow box"
        : troubleAt?.startsWith("/sump")
          ? "sump"
          : worst !== undefined && worst.margin < 0 && !troubleAt?.startsWith("/loops")
            ? describePlace(worst.place)
            : undefined;
  if (place !== undefined) return `, over the rim of the ${place}`;
  return troubleAt?.startsWith("/loops") ? `, when ${pumpWords({ troubleAt }, names)} draws air` : "";
}

function pumpWords({ troubleAt }: { readonly troubleAt?: string }, { loops }: PartNames): string {
  const index = /^\/loops\/(\d+)/.exec(troubleAt ?? "")?.[1];
  const loop = index === undefined ? undefined : loops[Number(index)];
  if (loop === undefined) return "a pump";
  return `${(loop.pumps?.length ?? 1) > 1 ? "a pump" : "the pump"} of “${loop.name}”`;
}

/** {} is the part. */
const eventWords: Readonly<Record<Exclude<TransientEventCode, "action">, string>> = {
  "rim/over": "the {} passes its rim",
  "rim/under": "the {} is below its rim again",
  "drain/starts": "drain {} begins to run",
  "drain/stops": "drain {} runs dry",
  "siphon/lost": "the siphon of drain {} draws air",
  "siphon/primed": "drain {} runs as a full siphon",
  "outlet/uncovered": "{} draws air",
  "outlet/covered": "{} is under water again",
  "circuit/reversed": "water runs back through {}",
  "circuit/forward": "water runs up through {} again",
  "circuit/air": "the siphon through {} breaks",
  "circuit/full": "the line of {} is full again",
  "pump/drawsAir": "the pump of {} draws air",
  "pump/floodedAgain": "the pump of {} is flooded again",
  "pump/givenUp": "the pump of {} draws air time and again, and stays off",
  "topOff/on": "the top-off starts",
  "topOff/off": "the top-off stops",
  "topOff/empty": "the top-off reservoir is empty",
  "blockage/done": "the blockage of drain {} has reached its full extent",
};
