import { designJsonSchema, networkJsonSchema } from "@tidewright/design";
import { answerSchemas } from "./answerSchemas.ts";

const json = (schema: string) => ({ "application/json": { schema: { $ref: `#/components/schemas/${schema}` } } });
const problem = (description: string) => ({
  description,
  content: { "application/problem+json": { schema: { $ref: "#/components/schemas/ProblemDetails" } } },
});

interface Operation {
  readonly id: string;
  readonly summary: string;
  readonly body: "Design" | "NetworkDocument";
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
      schemas: { Design: designJsonSchema(), NetworkDocument: networkJsonSchema(), ...answerSchemas },
    },
  };
}

function pathItem({ id, summary, body, answer, parameters }: Operation): object {
  return {
    post: {
      operationId: id,
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
