import { englishWords, type Words } from "@tidewright/words";
import type { WhatIfEvent } from "../overTime/whatIfResult.ts";
import { timeWords } from "./timeWords.ts";

/** What happened at one part once or again and again, in the order of time. */
export type EventGroup = readonly [first: WhatIfEvent, ...others: WhatIfEvent[]];

/** Returns the events of a scenario with those that repeat told together, in the order of their first time; actions stand alone.
 *  events in the order of time   from how many of a kind on they are told together   -> groups
 *  Source: own construction.
 *  Example: groupEvents([{ t: 1, code: "topOff/on", path: "/topOff", name: "topOff" }, { t: 9, code: "topOff/on", path: "/topOff", name: "topOff" }]).length  ->  1 */
export function groupEvents(events: readonly WhatIfEvent[], from = 2): EventGroup[] {
  const key = ({ code, name, action }: WhatIfEvent) => (code === "action" ? `action ${action}` : `${code} ${name}`);
  const counts = new Map<string, number>();
  for (const event of events) counts.set(key(event), (counts.get(key(event)) ?? 0) + 1);
  const groups: [WhatIfEvent, ...WhatIfEvent[]][] = [];
  const open = new Map<string, WhatIfEvent[]>();
  for (const event of events) {
    const group = open.get(key(event));
    if (group !== undefined) {
      group.push(event);
      continue;
    }
    const started: [WhatIfEvent, ...WhatIfEvent[]] = [event];
    groups.push(started);
    if ((counts.get(key(event)) ?? 0) >= from) open.set(key(event), started);
  }
  return groups;
}

/** Returns how often a group's event comes again, to follow its sentence; nothing for one that stands alone.
 *  group EventGroup   words of the reader's language, English where left out   -> text with its comma
 *  Source: own words.
 *  Example: repeatWords([{ t: 1, code: "topOff/on", path: "/topOff", name: "topOff" }])  ->  "" */
export function repeatWords([, ...others]: EventGroup, words: Words = englishWords): string {
  const last = others.at(-1);
  if (last === undefined) return "";
  const time = timeWords(last.t, words);
  return others.length === 1
    ? words.say("scenario.event.again", { time })
    : words.say("scenario.event.often", { count: String(others.length + 1), time });
}
