import type { AnimalGroup } from "@tidewright/design";

/** What the trade turns over for a group of animals, and the speeds that were measured for its kin. */
export interface AnimalTargetRow {
  readonly label: string;
  /** Total turnover in display volumes an hour: common practice, no source. */
  readonly practice: readonly [number, number];
  /** Water speed [m/s] that the source found good; single species in small flumes, never a design standard. */
  readonly speed?: readonly [number, number];
  readonly source: string;
}

const practiceOnly = "common practice, no source";

/** Turnover as the trade has it and speeds as published, kept apart. */
export const animalTargets: Readonly<Record<AnimalGroup, AnimalTargetRow>> = {
  fish: { label: "fish only", practice: [6, 12], source: practiceOnly },
  calmFish: { label: "calm-water fish", practice: [4, 8], source: practiceOnly },
  softCorals: {
    label: "soft corals",
    practice: [10, 15],
    speed: [0.05, 0.25],
    source:
      "Fabricius, Genin and Benayahu 1995: food uptake of Dendronephthya best near 15 cm/s; turnover common practice, no source",
  },
  largePolypStony: {
    label: "large-polyp stony corals",
    practice: [15, 17],
    speed: [0.05, 0.1],
    source: "Wijgerde et al. 2012: Galaxea colonies feed best at 5 to 10 cm/s; turnover common practice, no source",
  },
  branchingStony: {
    label: "branching stony corals",
    practice: [20, 30],
    speed: [0.15, 0.5],
    source: "Nakamura and Yamasaki 2005: better growth at 20 than below 3 cm/s; turnover common practice, no source",
  },
  mixedReef: { label: "mixed reef", practice: [15, 25], source: practiceOnly },
};
