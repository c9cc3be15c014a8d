import type { SymbolName } from "./scene.ts";

/** One stroke or area of a symbol: flow runs from left to right, the symbol is one unit wide, y up. */
export interface SymbolStroke {
  readonly d: string;
  readonly fill: "paper" | "ink" | "water" | "none";
  readonly weight: "outline" | "thin";
}

const circle = (r: number): string => `M${-r},0a${r},${r} 0 1,0 ${2 * r},0a${r},${r} 0 1,0 ${-2 * r},0Z`;
const bowTie = "M-.5,-.3L.5,.3V-.3L-.5,.3Z";

/** Returns the strokes of a drafting symbol.
 *  symbol its name   share open share of a valve, 0 to 1: a closed valve is filled
 *  pinched true for a symbol of a few pixels, which leaves out inner lines   -> strokes in units of the symbol's width
 *  Findings: none. Throws: never.
 *  Valid: any symbol; waterLevel, elbow and tee are drawn by size on the screen elsewhere.
 *  Source: ISO 14617-8 (valves, check valve), ISO 14617-9 (pump), ISO 10628-2; shapes from memory of the standards.
 *  The marks for joints are common practice, no source. */
export function symbolStrokes(symbol: SymbolName, share = 1): readonly SymbolStroke[] {
  const body = share < 0.02 ? "ink" : "paper";
  switch (symbol) {
    case "valve":
      return [{ d: bowTie, fill: body, weight: "outline" }];
    case "ballValve":
      return [
        { d: bowTie, fill: body, weight: "outline" },
        { d: circle(0.17), fill: body, weight: "outline" },
      ];
    case "butterflyValve":
      return [
        { d: "M-.4,-.3H.4V.3H-.4Z", fill: "paper", weight: "thin" },
        { d: "M-.4,-.3V.3M.4,-.3V.3M-.3,-.26L.3,.26", fill: "none", weight: "outline" },
        { d: circle(0.09), fill: "ink", weight: "thin" },
      ];
    case "checkValve":
      return [
        { d: "M-.4,-.3H.4V.3H-.4Z", fill: "paper", weight: "thin" },
        { d: "M-.4,-.32V.32L.4,-.32V.32", fill: "none", weight: "outline" },
        { d: "M-.4,.32m-.09,0a.09,.09 0 1,0 .18,0a.09,.09 0 1,0 -.18,0Z", fill: "ink", weight: "thin" },
      ];
    case "pump":
      return [
        { d: circle(0.5), fill: "paper", weight: "outline" },
        { d: "M0,.5L.5,0L0,-.5", fill: "none", weight: "outline" },
      ];
    case "tankPump":
      return [
        { d: "M.08,.26L.52,.44M.08,0H.62M.08,-.26L.52,-.44", fill: "none", weight: "thin" },
        { d: "M-.62,-.2H-.2V.2H-.62Z", fill: "ink", weight: "thin" },
        { d: circle(0.4), fill: "paper", weight: "outline" },
        { d: "M-.1,.38L.4,0L-.1,-.38", fill: "none", weight: "outline" },
      ];
    case "union":
      return [
        { d: "M-.16,-.36H.16V.36H-.16Z", fill: "paper", weight: "outline" },
        { d: "M0,-.36V.36", fill: "none", weight: "thin" },
      ];
    case "bulkhead":
      return [{ d: "M-.17,-.44H-.05V.44H-.17ZM.05,-.44H.17V.44H.05Z", fill: "ink", weight: "thin" }];
    case "reducer":
      return [{ d: "M-.22,-.34L.22,-.2V.2L-.22,.34Z", fill: "paper", weight: "outline" }];
    case "strainer":
      return [
        { d: "M-.26,-.34H.26V.34H-.26Z", fill: "paper", weight: "outline" },
        { d: "M-.26,-.34L.26,.34M-.26,0L0,.34M0,-.34L.26,0", fill: "none", weight: "thin" },
      ];
    case "nozzle":
      return [{ d: "M-.5,-.42L.34,-.24V.24L-.5,.42Z", fill: "paper", weight: "outline" }];
    case "siphonBreak":
      return [{ d: circle(0.2), fill: "paper", weight: "outline" }];
    case "powerStrip":
      return [
        { d: "M-.14,-.5H.14V.5H-.14Z", fill: "paper", weight: "outline" },
        {
          d: [0.29, 0, -0.29].map((y) => `M-.075,${y}a.075,.075 0 1,0 .15,0a.075,.075 0 1,0 -.15,0Z`).join(""),
          fill: "none",
          weight: "thin",
        },
      ];
    case "flowArrow":
      return [{ d: "M-.45,-.3L.45,0L-.45,.3L-.22,0Z", fill: "ink", weight: "thin" }];
    case "fitting":
      return [{ d: "M-.06,-.36H.06V.36H-.06Z", fill: "ink", weight: "thin" }];
    case "waterLevel":
    case "elbow":
    case "tee":
      return [];
  }
}
