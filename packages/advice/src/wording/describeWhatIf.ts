import { englishWords, type Words } from "@tidewright/words";
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
 *  event WhatIfEvent   scenario it happened in   names PartNames, such as a Design   words of the reader's language   -> text
 *  Source: own words.
 *  Example: describeWhatIfEvent({ t: 65, code: "siphon/lost", path: "/drains/0", name: "main" }, { events: [] }, { drains: [], loops: [] })  ->  "the siphon of drain “main” draws air" */
export function describeWhatIfEvent(
  event: WhatIfEvent,
  scenario: Pick<Scenario, "events">,
  names: PartNames,
  words: Words = englishWords,
): string {
  const { say } = words;
  if (event.code === "action") {
    const action = scenario.events[event.action ?? -1]?.action;
    return action === undefined ? say("scenario.action.something") : describeAction(action, names, words);
  }
  const [, loop = "", number = ""] = /^(.*) outlet (\d+)$/.exec(event.name) ?? [];
  const part = event.code.startsWith("rim/")
    ? describePlace(event.name, words)
    : event.code.startsWith("outlet/") && number !== ""
      ? say("scenario.event.outlet", { number, loop })
      : say("scenario.event.part", { name: event.name });
  return say(`scenario.event.${event.code}`, { part });
}

/** Returns how a scenario ends in one sentence, its numbers in the reader's units.
 *  facts VerdictFacts, such as a row of the safety sweep   names PartNames   format Format   words   -> text
 *  Source: own words.
 *  Example: describeVerdict({ verdict: "safe", worst: { place: "overflowBox", margin: 0.034 }, spilled: 0 }, { drains: [], loops: [] }, (si) => `${si * 1000} mm`)  ->  "The floor stays dry; the overflow box comes nearest to its rim, 34 mm below it." */
export function describeVerdict(
  facts: VerdictFacts,
  names: PartNames,
  format: Format,
  words: Words = englishWords,
): string {
  const { verdict, worst, timeToTrouble, spilled } = facts;
  const { say } = words;
  const time = timeToTrouble === undefined ? "" : timeWords(timeToTrouble, words);
  const place = worst === undefined ? "" : describePlace(worst.place, words);
  const length = worst === undefined ? "" : format(Math.abs(worst.margin), "length");
  switch (verdict) {
    case "wet":
      return say(timeToTrouble === undefined ? "scenario.verdict.wetAtOnce" : "scenario.verdict.wet", {
        volume: format(spilled, "volume"),
        time,
        trouble: troubleWords(facts, names, words),
      });
    case "unsolved":
      return say("scenario.verdict.unsolved");
    case "dry":
      return say(timeToTrouble === undefined ? "scenario.verdict.dryTimeless" : "scenario.verdict.dry", {
        pump: pumpWords(facts, names, words),
        time,
      });
    case "tight":
      if (worst === undefined) return say("scenario.verdict.tightUnplaced");
      return say(worst.margin < 0 ? "scenario.verdict.tightOver" : "scenario.verdict.tight", { place, length });
    case "safe":
      if (worst === undefined) return say("scenario.verdict.safeUnplaced");
      return say("scenario.verdict.safe", { place, length: format(worst.margin, "length") });
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

function troubleWords({ troubleAt, worst }: VerdictFacts, names: PartNames, words: Words): string {
  const place =
    troubleAt === "/display"
      ? "display"
      : troubleAt?.startsWith("/overflow")
        ? "overflowBox"
        : troubleAt?.startsWith("/sump")
          ? "sump"
          : worst !== undefined && worst.margin < 0 && !troubleAt?.startsWith("/loops")
            ? worst.place
            : undefined;
  if (place !== undefined) return words.say("scenario.verdict.overRim", { place: describePlace(place, words) });
  return troubleAt?.startsWith("/loops")
    ? words.say("scenario.verdict.whenDry", { pump: pumpWords({ troubleAt }, names, words) })
    : "";
}

function pumpWords({ troubleAt }: { readonly troubleAt?: string }, { loops }: PartNames, words: Words): string {
  const index = /^\/loops\/(\d+)/.exec(troubleAt ?? "")?.[1];
  const loop = index === undefined ? undefined : loops[Number(index)];
  if (loop === undefined) return words.say("scenario.verdict.anyPump");
  const many = (loop.pumps?.length ?? 1) > 1;
  return words.say(many ? "scenario.verdict.aPump" : "scenario.verdict.thePump", { loop: loop.name });
}
