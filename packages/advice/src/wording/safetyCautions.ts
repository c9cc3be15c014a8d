import type { Design } from "@tidewright/design";

/** Returns what to do besides reckoning, in the trade's usual words: what no simulation replaces.
 *  design Design   -> list of sentences, the one that matters most first
 *  Source: common practice, no source.
 *  Example: safetyCautions({ loops: [], drains: [] })[0]  ->  "Before you leave, pull the plug and watch where the water stops; then plug in again and watch the drains start." */
export function safetyCautions(design: Pick<Design, "loops" | "drains" | "topOff">): string[] {
  const text = JSON.stringify([design.loops, design.drains]);
  const siphons = design.drains.some((drain) => drain.kind === "throttledSiphon");
  return [
    "Before you leave, pull the plug and watch where the water stops; then plug in again and watch the drains start.",
    /"(swingCheck|springCheck|footValve)"|"checkValve":true/.test(text)
      ? "Never rely on a check valve alone: lime and snails hold it open. Leave room in the sump for all that can run back."
      : "Never add a check valve in place of room in the sump: lime and snails hold it open.",
    ...(text.includes('"siphonBreak"')
      ? ["A siphon break works while its hole is open: look into it at every service, and never make it the only one."]
      : []),
    ...(siphons
      ? [
          "A throttled siphon needs a drain beside it that is open and dry; close the siphon by hand once and see that one carry all.",
        ]
      : []),
    ...(design.topOff
      ? ["A float or sensor sticks one day: let the reservoir hold no more than the sump has room for."]
      : []),
    "Mark the highest safe operating line on the glass, and fill to it with everything running, never with the pumps off.",
  ];
}
