const number = { type: "number" };
const text = { type: "string" };
const list = (items: object) => ({ type: "array", items });
const object = (properties: Record<string, object>, optional: readonly string[] = []) => ({
  type: "object",
  properties,
  required: Object.keys(properties).filter((key) => !optional.includes(key)),
});
const anyObject = { type: "object" };
const verdict = { enum: ["wet", "unsolved", "dry", "tight", "safe"] };

/** Schemas of the answers, by name; the inner parts are described by the types of the advice package. */
export const answerSchemas: Readonly<Record<string, object>> = {
  Finding: object(
    {
      code: text,
      severity: { enum: ["danger", "warning", "notice"] },
      at: { type: "string", description: "JSON Pointer into the design" },
      value: number,
      limit: number,
      dimension: text,
      data: anyObject,
      source: text,
    },
    ["value", "limit", "dimension", "data"],
  ),
  Assessment: object({
    name: text,
    water: anyObject,
    volumes: anyObject,
    solve: anyObject,
    overflow: anyObject,
    drains: list(anyObject),
    sump: anyObject,
    loops: list(anyObject),
    parts: list(anyObject),
    pumps: list(anyObject),
    tankPumps: list(anyObject),
    outlets: list(anyObject),
    devices: list(anyObject),
    turnover: anyObject,
    power: anyObject,
    heat: anyObject,
    cost: anyObject,
    sound: anyObject,
    findings: list({ $ref: "#/components/schemas/Finding" }),
  }),
  Ranking: object({
    loop: { type: "integer", description: "counted from 0" },
    aim: number,
    wish: object({ low: number, high: number }),
    candidates: list(anyObject),
    rejections: list(anyObject),
    considered: { type: "integer" },
    currencies: object({ prices: text, running: text }),
  }),
  Levers: list(
    object({
      kind: text,
      at: text,
      label: text,
      design: { $ref: "#/components/schemas/Design" },
      before: anyObject,
      after: anyObject,
      price: number,
      cures: list(anyObject),
      causes: list(anyObject),
      benefit: number,
      benefitPerCost: number,
    }),
  ),
  SafetySweep: object({
    rows: list(
      object(
        {
          scenario: anyObject,
          verdict,
          worst: object({ place: text, path: text, margin: number }),
          margins: anyObject,
          timeToTrouble: number,
          troubleAt: text,
          spilled: number,
          sumpGain: number,
        },
        ["worst", "timeToTrouble", "troubleAt"],
      ),
    ),
    answers: anyObject,
    findings: list({ $ref: "#/components/schemas/Finding" }),
  }),
  WhatIf: object(
    {
      scenario: anyObject,
      verdict,
      timeToTrouble: number,
      status: { enum: ["finished", "stepBudget", "stuck"] },
      reached: number,
      vessels: list(anyObject),
      events: list(anyObject),
      spilled: number,
      evaporated: number,
      toppedUp: number,
      volumeError: number,
      drainPeak: list(number),
      steps: { type: "integer" },
      film: anyObject,
    },
    ["timeToTrouble", "film"],
  ),
  NetworkAnswer: object({
    status: { enum: ["converged", "stalled", "limit", "unreachable"] },
    iterations: { type: "integer" },
    residual: number,
    nodes: list(object({ id: text, head: number, pressure: number })),
    links: list(object({ id: text, flow: number, velocity: { type: ["number", "null"] }, headLoss: number })),
  }),
};
