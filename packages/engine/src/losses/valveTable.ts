/** Hand valves whose loss is known by opening. */
export type ValveKind = "ball" | "gate" | "globe" | "butterfly" | "diaphragm";

/** Loss of a part-open valve by share of travel, rising openings below 1. */
export interface ValveTable {
  /** "added": K of the obstruction alone, on top of the open valve; "ratio": K over that of the same valve full open. */
  readonly means: "added" | "ratio";
  readonly opening: readonly number[];
  readonly loss: readonly number[];
  /** Where the figures are, and which of them were seen there. */
  readonly source: string;
}

/** Openings of a quarter-turn valve closed by these angles [degrees], smallest opening first. */
function closedBy(...degrees: readonly number[]): number[] {
  return degrees.map((angle) => 1 - angle / 90).reverse();
}

const turned = [5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65];

/** Published losses of part-open valves.
 *  Result: record of ValveTable; openings are shares of travel [-], losses K or K ratios [-].
 *  Findings: none. Throws: never.
 *  Valid: turbulent flow. Makes differ by a factor of 2: half open, a gate valve is 2.1 in one handbook and 4.5 to 5.6 in others.
 *  Source: in each table.
 *  Example: valveTable.gate.loss  ->  [97.8, 17, 5.52, 2.06, 0.81, 0.26, 0.07] */
export const valveTable: Readonly<Record<ValveKind, ValveTable>> = {
  ball: {
    means: "added",
    opening: closedBy(...turned),
    loss: [0.05, 0.29, 0.75, 1.56, 3.1, 5.47, 9.68, 17.3, 31.2, 52.6, 106, 206, 486].reverse(),
    source:
      "J. Weisbach, cock in a round pipe, values from memory; agrees at 30 and 60 degrees with Munson et al., Fundamentals of Fluid Mechanics, table 8.2 (ball valve 5.5, 210), at 5, 10, 20, 40, 60 degrees with Perry's Chemical Engineers' Handbook (plug cock)",
  },
  gate: {
    means: "added",
    opening: [0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875],
    loss: [97.8, 17, 5.52, 2.06, 0.81, 0.26, 0.07],
    source:
      "J. Weisbach, gate in a round pipe, values from memory; agrees at 1/4, 1/2, 3/4 with Munson et al., Fundamentals of Fluid Mechanics, table 8.2 (17, 2.1, 0.26)",
  },
  globe: {
    means: "ratio",
    opening: [0.25, 0.5, 0.75],
    loss: [112 / 9, 36 / 9, 13 / 9],
    source: "Perry's Chemical Engineers' Handbook, globe valve with plug disc: 9, 13, 36, 112 at 1, 3/4, 1/2, 1/4",
  },
  butterfly: {
    means: "added",
    opening: closedBy(...turned, 70),
    loss: [0.24, 0.52, 0.9, 1.54, 2.51, 3.91, 6.22, 10.8, 18.7, 32.6, 58.8, 118, 256, 751].reverse(),
    source:
      "J. Weisbach, throttle disc in a round pipe, values from memory; agrees at 5, 10, 20, 40, 60 degrees with Perry's Chemical Engineers' Handbook",
  },
  diaphragm: {
    means: "ratio",
    opening: [0.25, 0.5, 0.75],
    loss: [21 / 2.3, 4.3 / 2.3, 2.6 / 2.3],
    source: "Perry's Chemical Engineers' Handbook, diaphragm valve: 2.3, 2.6, 4.3, 21 at 1, 3/4, 1/2, 1/4",
  },
};
