import { drownedWeirFlow, drownedWeirLevel, overflowWeirFlow } from "@tidewright/engine";
import { checksOf } from "./check.ts";

const weir = { length: 0.3, toothOpenShare: 1, toothHeight: 0, crestHeight: Number.POSITIVE_INFINITY };
const share = (ratio: number): number => drownedWeirFlow(weir, 0, 0.04, 0.04 * ratio) / overflowWeirFlow(weir, 0.04);
/** Cd 0.602 (2/3) sqrt(2 g) 0.30 m, times 0.040^1.5 and (1 - 0.5^1.5)^0.385. */
const halfDrowned = 0.602 * (2 / 3) * Math.sqrt(2 * 9.80665) * 0.3 * 0.04 ** 1.5 * 0.845386;

/** Drowned weirs. */
export const villemonte1947 = [
  ...checksOf(
    {
      source:
        "J. R. Villemonte, Engineering News-Record, 25 Dec 1947, p. 866: (1 - r^1.5)^0.385, evaluated apart from the project",
      tag: "analytic",
      tolerance: 1e-6,
      why: "six or seven figures",
    },
    [
      ["share of the free flow at h2/h1 0.25", 0.9498895, () => share(0.25)],
      ["share of the free flow at h2/h1 0.5", 0.845386, () => share(0.5)],
      ["share of the free flow at h2/h1 0.8", 0.616307, () => share(0.8)],
      ["share of the free flow at h2/h1 0.9", 0.4769662, () => share(0.9)],
      ["flow over 0.30 m under 40 and 20 mm, m3/s", halfDrowned, () => drownedWeirFlow(weir, 0.5, 0.54, 0.52)],
      ["level that drives it, m", 0.54, () => drownedWeirLevel(weir, 0.5, halfDrowned, 0.52)],
    ],
  ),
];
