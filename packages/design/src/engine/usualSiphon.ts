import { toSI } from "@tidewright/units";
import type { Design } from "../schema/design.ts";
import type { OverflowSiphon } from "../schema/vessels.ts";

/** Room that a siphon needs around it [m]: its mouths below the lowest drain, its boxes' floors below the mouths, its way over the rim.
 *  Source: common practice, no source. */
const under = 0.03;
const below = 0.05;
const over = 0.015;
const across = 0.12;

/** Returns a siphon to begin with for an overflow that is hung on: two tubes over the glass whose mouths stay under water when everything
 *  has drained down, and the box inside along the whole weir.
 *  design of which display, weir, and drains count   tubes, bore [m]   -> OverflowSiphon, whole millimetres
 *  Findings: none. Throws: never for a document that `checkDesign` accepts.
 *  Valid: tanks deep enough for it; where the drains lie too low, the mouths end as low as the glass allows.
 *  Source: common practice, no source.
 *  Example: usualSiphon({ display: { height: { value: 500, unit: "mm" } }, overflow: { weir: { length: { value: 300, unit: "mm" }, crest: { value: 460, unit: "mm" } } }, drains: [{ inlet: { elevation: { value: 380, unit: "mm" } } }] }).mouth  ->  { "value": 350, "unit": "mm" } */
export function usualSiphon(design: SiphonPlace, tubes = 2, bore = 0.025): OverflowSiphon {
  const metres = (q: { value: number; unit: string }) => toSI(q, "length");
  const whole = (si: number) => ({ value: Math.round(si * 1000), unit: "mm" });
  const lowest = Math.min(metres(design.overflow.weir.crest), ...design.drains.map((d) => metres(d.inlet.elevation)));
  const mouth = Math.max(0.02, lowest - under);
  const crest = metres(design.display.height) + over + bore / 2;
  return {
    tubes,
    bore: { value: Math.round(bore * 1e4) / 10, unit: "mm" },
    length: whole(2 * (crest - mouth) + across),
    crest: whole(crest),
    mouth: whole(mouth),
    innerBox: {
      length: design.overflow.weir.length,
      width: whole(Math.max(0.08, 2 * bore + 0.03)),
      floor: whole(Math.max(0.005, mouth - below)),
    },
  };
}

type Length = { readonly value: number; readonly unit: string };

/** What of a design decides where its siphon lies. */
export interface SiphonPlace {
  readonly display: { readonly height: Design["display"]["height"] | Length };
  readonly overflow: { readonly weir: { readonly length: OverflowSiphon["bore"]; readonly crest: Length } };
  readonly drains: readonly { readonly inlet: { readonly elevation: Length } }[];
}
