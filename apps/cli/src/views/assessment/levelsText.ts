import { type Assessment, timeWords } from "@tidewright/advice";
import type { Look } from "../../output/deliver.ts";
import { between } from "../../output/format.ts";
import { tableText } from "../../output/table.ts";

/** What the siphon of an overflow that hangs on the glass asks for and holds. */
function siphonRows(siphon: NonNullable<Assessment["overflow"]["siphon"]>, format: Look["format"]): string[][] {
  const end = siphon.overflows ? "display over its rim" : "return pump draws air";
  return [
    [`head of ${siphon.tubes} siphon tubes`, format(siphon.head, "length")],
    ["speed in them", format(siphon.velocity, "velocity")],
    ["vacuum at the crest, as water", format(siphon.crestVacuum, "length")],
    ["water over their ends after a power cut", format(siphon.standingCover, "length")],
    [`siphon lost: time until ${end}`, timeWords(siphon.timeToTrouble)],
  ];
}

/** Returns the levels of display, box and sump with what is left below their rims. */
export function levelsText({ overflow, sump }: Assessment, { format, width }: Look): string {
  const right = { align: "right" } as const;
  const levels = tableText(
    [
      { head: "surface", flexible: true },
      { head: "above floor", ...right },
      { head: "below rim", ...right },
    ],
    [
      ["display", format(overflow.displayLevel, "length"), format(overflow.displayFreeboard, "length")],
      ...(overflow.siphon === undefined ? [] : [["box inside", format(overflow.siphon.innerLevel, "length"), "—"]]),
      ["overflow box", format(overflow.boxLevel, "length"), format(overflow.boxFreeboard, "length")],
      ...sump.chambers.map((chamber) => [
        `sump, ${chamber.id}`,
        format(chamber.level, "length"),
        format(sump.rim - chamber.level, "length"),
      ]),
      ["sump after a power cut", format(sump.powerCutLevel, "length"), format(sump.rim - sump.powerCutLevel, "length")],
    ],
    width,
  );
  const more = tableText(
    [
      { head: "", flexible: true },
      { head: "", ...right },
    ],
    [
      ["head on the weir", between(format, overflow.weirHeadRange, "length")],
      ["fall into the box", format(overflow.fall, "length")],
      ...(overflow.siphon === undefined ? [] : siphonRows(overflow.siphon, format)),
      ["water that falls back on a power cut", format(sump.drainDown.total, "volume")],
      ["room for it in the sump", format(sump.room, "volume")],
      ["room left", format(sump.margin, "volume")],
      ["highest safe depth in the return chamber", format(sump.safeOperatingLevel, "length")],
    ],
    width,
  );
  return `${levels}\n\n${more}`;
}
