import type { computations } from "../compute/computeRequest.ts";
import { mostDays } from "../compute/queryOf.ts";

/** An answer of hydraulics, as the interface's description names it. */
export interface ComputingOperation {
  readonly summary: string;
  readonly body: "Design" | "NetworkDocument" | "OwnScenarioRequest";
  readonly answer: string;
  readonly parameters?: readonly object[];
}

const loopAndPairs = [
  {
    name: "loop",
    in: "query",
    description: "which loop of the design, 1 is the first; the first return loop where it is left out",
    schema: { type: "integer", minimum: 1 },
  },
  {
    name: "pairs",
    in: "query",
    description: "whether two equal pumps side by side are considered",
    schema: { type: "boolean", default: true },
  },
];

const days = {
  name: "days",
  in: "query",
  description: "days that the top-off is left failing",
  schema: { type: "integer", minimum: 1, maximum: mostDays, default: 10 },
};

const film = {
  name: "film",
  in: "query",
  description: "whether the course of levels and flows is in the answer",
  schema: { type: "boolean", default: true },
};

const scenario = {
  name: "scenario",
  in: "query",
  description: "id of a scenario that the design can meet, such as drainBlocked:0",
  schema: { type: "string", default: "powerCut" },
};

/** The answers of hydraulics by their names. */
export const computingOperations: Readonly<Record<(typeof computations)[number], ComputingOperation>> = {
  assess: { summary: "What the water does in a design", body: "Design", answer: "Assessment" },
  rank: { summary: "Pumps for one loop, best first", body: "Design", answer: "Ranking", parameters: loopAndPairs },
  levers: { summary: "Single changes that would help most", body: "Design", answer: "Levers" },
  safety: {
    summary: "Every scenario that a design can meet, worst first, and what follows",
    body: "Design",
    answer: "SafetySweep",
    parameters: [days],
  },
  whatif: { summary: "One scenario over time", body: "Design", answer: "WhatIf", parameters: [scenario, days, film] },
  "whatif/own": {
    summary: "A scenario of one's own over time",
    body: "OwnScenarioRequest",
    answer: "WhatIf",
    parameters: [film],
  },
  network: { summary: "Heads and flows of a pipe network", body: "NetworkDocument", answer: "NetworkAnswer" },
};
