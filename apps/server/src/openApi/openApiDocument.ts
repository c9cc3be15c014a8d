import { designJsonSchema, networkJsonSchema, scenarioJsonSchema } from "@tidewright/design";
import { problemDetails, type Route, routes } from "@tidewright/protocol";
import { z } from "zod";
import { computations } from "../compute/computeRequest.ts";
import { computingAccess } from "../compute/mountComputing.ts";
import { answerSchemas } from "./answerSchemas.ts";
import { type ComputingOperation, computingOperations } from "./computingOperations.ts";
import { operationOf } from "./operationOf.ts";

const json = (schema: string) => ({ "application/json": { schema: { $ref: `#/components/schemas/${schema}` } } });

/** Returns the description of the HTTP interface: OpenAPI 3.1, whose schemas are JSON Schema 2020-12, made from the table
 *  of routes that the server itself answers by.
 *  -> plain object
 *  Source: OpenAPI Specification 3.1.0. */
export function openApiDocument(): Record<string, unknown> {
  const { $schema: _, ...problemSchema } = z.toJSONSchema(problemDetails);
  return {
    openapi: "3.1.0",
    info: {
      title: "Tidewright",
      version: "0.1.0",
      description:
        "What a shop keeps, and hydraulics of marine-aquarium systems. Documents carry quantities as { value, unit }; answers of hydraulics are numbers in SI. `x-access` says who may ask: open anybody, look any account, work staff and owners, own owners, share and intake the bearer of a customer's link.",
      license: { name: "MIT", identifier: "MIT" },
    },
    servers: [{ url: "/" }],
    security: [{ session: [] }, {}],
    paths: { ...pathsOf(Object.values(routes)), ...computingPaths(), ...otherPaths },
    components: {
      securitySchemes: {
        session: { type: "apiKey", in: "cookie", name: "tidewright", description: "not wanted on the machine itself" },
        link: {
          type: "http",
          scheme: "Link",
          description:
            "Authorization: Link SECRET, of a customer's link; of an intake also Link SECRET.DRAFT, with the id of a draft",
        },
      },
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
        ProblemDetails: problemSchema,
      },
    },
  };
}

function pathsOf(all: readonly Route[]): Record<string, Record<string, object>> {
  const paths: Record<string, Record<string, object>> = {};
  for (const route of all) {
    paths[route.path] = { ...paths[route.path], [route.method.toLowerCase()]: operationOf(route) };
  }
  return paths;
}

function computingPaths(): Record<string, object> {
  return Object.fromEntries(computations.map((each) => [`/api/${each}`, computing(each, computingOperations[each])]));
}

function computing(id: string, { summary, body, answer, parameters }: ComputingOperation): object {
  const problem = (description: string) => ({
    description,
    content: { "application/problem+json": { schema: { $ref: "#/components/schemas/ProblemDetails" } } },
  });
  return {
    post: {
      operationId: id.replace("/", "-"),
      summary,
      "x-access": computingAccess,
      ...(parameters === undefined ? {} : { parameters }),
      requestBody: { required: true, content: json(body) },
      responses: {
        200: { description: "the answer", content: json(answer) },
        401: problem("nobody is signed in"),
        403: problem("this account, link or page may not do that"),
        413: problem("the document is too large"),
        415: problem("the body is not announced as JSON"),
        422: problem("the document cannot be worked with; all problems are listed"),
        500: problem("a fault of the program"),
        503: problem("too many computations wait"),
      },
    },
  };
}

const open = (operationId: string, summary: string, content: object) => ({
  get: {
    operationId,
    summary,
    "x-access": "open",
    security: [],
    responses: { 200: { description: "the answer", content } },
  },
});

const otherPaths = {
  "/api/openapi.json": open("openapi", "This document", { "application/json": { schema: { type: "object" } } }),
  "/healthz": open("health", "Whether the server answers", {
    "application/json": {
      schema: { type: "object", properties: { status: { const: "ok" } }, required: ["status"] },
    },
  }),
  "/robots.txt": open("robots", "That nothing here is for search engines", {
    "text/plain": { schema: { type: "string" } },
  }),
};
