import { designJsonSchema, networkJsonSchema, scenarioJsonSchema } from "@tidewright/design";
import { answerSchemas } from "./answerSchemas.ts";

const json = (schema: string) => ({ "application/json": { schema: { $ref: `#/components/schemas/${schema}` } } });
const problem = (description: string) => ({
  description,
  content: { "application/problem+json": { schema: { $ref: "#/components/schemas/ProblemDetails" } } },
});

interface Operation {
  readonly id: string;
  readonly summary: string;
  readonly body: "Design" | "NetworkDocument" | "OwnScenarioRequest";
  readonly answer: string;
  readonly parameters?: readonly object[];
}

const rankParameters = [
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

const daysParameter = {
  name: "days",
  in: "query",
  description: "days that the top-off is left failing",
  schema: { type: "integer", minimum: 1, maximum: 60, default: 10 },
};

const filmParameter = {
  name: "film",
  in: "query",
  description: "whether the course of levels and flows is in the answer",
  schema: { type: "boolean", default: true },
};

const scenarioParameter = {
  name: "scenario",
  in: "query",
  description: "id of a scenario that the design can meet, such as drainBlocked:0",
  schema: { type: "string", default: "powerCut" },
};

const operations: readonly Operation[] = [
  { id: "assess", summary: "What the water does in a design", body: "Design", answer: "Assessment" },
  {
    id: "rank",
    summary: "Pumps for one loop, best first",
    body: "Design",
    answer: "Ranking",
    parameters: rankParameters,
  },
  { id: "levers", summary: "Single changes that would help most", body: "Design", answer: "Levers" },
  {
    id: "safety",
    summary: "Every scenario that a design can meet, worst first, and what follows",
    body: "Design",
    answer: "SafetySweep",
    parameters: [daysParameter],
  },
  {
    id: "whatif",
    summary: "One scenario over time",
    body: "Design",
    answer: "WhatIf",
    parameters: [scenarioParameter, daysParameter, filmParameter],
  },
  {
    id: "whatif/own",
    summary: "A scenario of one's own over time",
    body: "OwnScenarioRequest",
    answer: "WhatIf",
    parameters: [filmParameter],
  },
  { id: "network", summary: "Heads and flows of a pipe network", body: "NetworkDocument", answer: "NetworkAnswer" },
];

/** Returns the description of the HTTP interface: OpenAPI 3.1, whose schemas are JSON Schema 2020-12. */
export function openApiDocument(): Record<string, unknown> {
  return {
    openapi: "3.1.0",
    info: {
      title: "Tidewright",
      version: "0.1.0",
      description:
        "Hydraulics of marine-aquarium systems. Documents carry quantities as { value, unit }; answers are numbers in SI.",
      license: { name: "MIT", identifier: "MIT" },
    },
    servers: [{ url: "/" }],
    paths: {
      ...Object.fromEntries(operations.map((operation) => [`/api/${operation.id}`, pathItem(operation)])),
      "/api/openapi.json": get("openapi", "This document", { type: "object" }),
      "/healthz": get("health", "Whether the server answers", {
        type: "object",
        properties: { status: { const: "ok" } },
        required: ["status"],
      }),
    },
    components: {
      schemas: {
        Design: designJsonSchema(),
        NetworkDocument: networkJsonSchema(),
        ScenarioDocument: scenarioJsonSchema(),
        OwnScenarioRequest: {
          type: "object",
          properties: {
            design: { $ref: "#/components/schemas/Design" },
            scenario: { $ref: "#/components/schemas/ScenarioDocument" },
          },
          required: ["design", "scenario"],
        },
        ...answerSchemas,
      },
    },
  };
}

function pathItem({ id, summary, body, answer, parameters }: Operation): object {
  return {
    post: {
      operationId: id.replace("/", "-"),
      summary,
      ...(parameters === undefined ? {} : { parameters }),
      requestBody: { required: true, content: json(body) },
      responses: {
        200: { description: "the answer", content: json(answer) },
        413: problem("the document is too large"),
        415: problem("the body is not announced as JSON"),
        422: problem("the document cannot be worked with; all problems are listed"),
        500: problem("a fault of the program"),
      },
    },
  };
}

function get(operationId: string, summary: string, schema: object): object {
  return {
    get: {
      operationId,
      summary,
      responses: { 200: { description: "the answer", content: { "application/json": { schema } } } },
    },
  };
}
