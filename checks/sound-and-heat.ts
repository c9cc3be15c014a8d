import {
  addSoundLevels,
  continuousLoadLimit,
  temperatureRiseRate,
  tonOfRefrigeration,
  wattsPerBtuPerHour,
} from "@tidewright/engine";
import { checksOf } from "./check.ts";

/** Sound levels, heat and the electrician's rule. */
export const soundAndHeat = [
  ...checksOf(
    {
      source: "ISO 3744, energetic sum 10 log10 sum 10^(L/10)",
      tag: "analytic",
      tolerance: 2e-4,
      why: "two printed decimals",
    },
    [
      ["40 and 40 dB together", 43.01, () => addSoundLevels([40, 40])],
      ["45 and 40 dB together", 46.19, () => addSoundLevels([45, 40])],
      ["42, 40 and 38 dB together", 45.07, () => addSoundLevels([42, 40, 38])],
    ],
  ),
  ...checksOf(
    {
      source: "NIST Special Publication 811 (2008), appendix B",
      tag: "published",
      tolerance: 1e-6,
      why: "the printed figures",
    },
    [
      ["1 W in BTU/h", 3.412142, () => 1 / wattsPerBtuPerHour],
      ["12000 BTU/h, W", 3516.853, () => tonOfRefrigeration],
    ],
  ),
  ...checksOf(
    {
      source: "heat balance P = rho c V dT/dt, 300 L of sea water",
      tag: "analytic",
      tolerance: 0.002,
      why: "rho c of sea water to 0.2 %",
    },
    [["rise in an hour from 340.9 W, K", 1, () => temperatureRiseRate(340.9, 0.3, 1023.34, 3999) * 3600]],
  ),
  ...checksOf(
    {
      source: "US National Electrical Code 210.20(A), read at second hand",
      tag: "published",
      tolerance: 1e-12,
      why: "125 % rule",
    },
    [
      ["continuous load on a 15 A breaker, A", 12, () => continuousLoadLimit(15)],
      ["continuous load on a 20 A breaker, A", 16, () => continuousLoadLimit(20)],
    ],
  ),
];
