import { terminalLength, terminalVelocity, ventedStackFlow } from "@tidewright/engine";
import { checksOf } from "./check.ts";

const gallonPerMinute = 3.785411784e-3 / 60;
const inch = 0.0254;

/** Vented stacks, 7/24 full. */
export const nspc2006 = [
  ...checksOf(
    {
      source: "National Standard Plumbing Code 2006, table 13.6.1",
      tag: "published",
      tolerance: 0.022,
      why: "printed as whole US gal/min: half a gallon of 23",
    },
    (
      [
        [2, 23],
        [3, 67],
        [4, 144],
        [5, 261],
        [6, 424],
        [8, 913],
      ] as const
    ).map(
      ([size, q]) => [`${size} in stack, US gal/min`, q, () => ventedStackFlow(size * inch) / gallonPerMinute] as const,
    ),
  ),
  ...checksOf(
    {
      source:
        "R. S. Wyly and H. N. Eaton, NBS Monograph 31 (1961), V = 3 (q/d)^0.4 ft/s after 0.052 V^2 ft (from memory), at the code's printed q",
      tag: "published",
      tolerance: 0.02,
      why: "the printed flow is a whole number of US gal/min",
    },
    (
      [
        [3, 67],
        [2, 23],
      ] as const
    ).flatMap(
      ([size, printed]) =>
        [
          [
            `terminal speed in a ${size} in stack, ft/s`,
            3 * (printed / size) ** 0.4,
            () => terminalVelocity(ventedStackFlow(size * inch), size * inch) / 0.3048,
          ],
          [
            `fall to terminal speed in a ${size} in stack, ft`,
            0.052 * 9 * (printed / size) ** 0.8,
            () => terminalLength(ventedStackFlow(size * inch), size * inch) / 0.3048,
          ],
        ] as const,
    ),
  ),
];
