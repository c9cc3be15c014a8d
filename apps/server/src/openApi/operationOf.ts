import { type Content, type Route, routes } from "@tidewright/protocol";
import { z } from "zod";

/** A schema as JSON Schema 2020-12, without the mark of its dialect, which OpenAPI 3.1 names once. */
function schemaOf(schema: z.ZodType, io: "input" | "output"): object {
  const { $schema: _, ...rest } = z.toJSONSchema(schema, { io, unrepresentable: "any" });
  return rest;
}

const problem = (description: string) => ({
  description,
  content: { "application/problem+json": { schema: { $ref: "#/components/schemas/ProblemDetails" } } },
});

/** What any route may answer besides what it was asked for. */
const refusals: Readonly<Record<string, string>> = {
  400: "If-Match names no version",
  401: "nobody is signed in",
  403: "this account, link or page may not do that",
  404: "there is no such thing, or none that the asker may know of",
  412: "somebody else was first; `current` is what they left",
  413: "the body is too large",
  415: "the body is of no kind that is taken",
  422: "what was sent cannot be worked with; all problems are listed",
  428: "If-Match is missing",
  429: "too many attempts; Retry-After says how long to wait",
  500: "a fault of the program",
  503: "the server has too much to do, or cannot reach what it keeps",
  507: "the disk is full; nothing was kept of this",
};

/** Returns the description of one route as an operation of OpenAPI 3.1.
 *  route of the table   -> Operation Object; `x-access` says who may ask
 *  Source: OpenAPI Specification 3.1.0, 4.8.10. */
export function operationOf(route: Route): object {
  const parameters = [...pathParameters(route.path), ...queryParameters(route.query), ...headerParameters(route)];
  return {
    operationId: route.id,
    summary: route.summary,
    "x-access": route.access,
    ...(securityOf(route) ?? {}),
    ...(parameters.length === 0 ? {} : { parameters }),
    ...(route.body === undefined || route.body === "none"
      ? {}
      : { requestBody: { required: true, content: contentOf(route.body, "input") } }),
    responses: {
      [route.status ?? 200]: {
        description: "the answer",
        ...(route.etag === undefined
          ? {}
          : {
              headers: {
                ETag: {
                  description: "the version of what was answered, and after a dot a mark of how it looks",
                  schema: { type: "string" },
                },
              },
            }),
        content: contentOf(route.answer, "output"),
      },
      ...(route.etag !== undefined && route.method === "GET"
        ? { 304: { description: "it is as If-None-Match has it" } }
        : {}),
      ...Object.fromEntries(
        refusalsOf(route).map((status) => [status, problem(refusals[String(status)] ?? "refused")]),
      ),
    },
  };
}

/** Returns the statuses with which a route may refuse; `refusals` words them. */
function refusalsOf(route: Route): number[] {
  const changes = route.method !== "GET";
  const named = route.path.includes("{");
  return [
    ...(route.ifMatch ? [400] : []),
    ...(route.access === "open" && route !== routes.signIn ? [] : [401]),
    403,
    ...(named || route.access === "share" || route.access === "intake" ? [404] : []),
    // A new thing with an id that is taken meets what is there, as a change of an old one does.
    ...(route.ifMatch || route.status === 201 ? [412] : []),
    ...(route.body === undefined ? [] : [413, 415]),
    422,
    ...(route.ifMatch ? [428] : []),
    429,
    500,
    503,
    ...(changes ? [507] : []),
  ];
}

function securityOf(route: Route): object | undefined {
  if (route.access === "open") return { security: [] };
  if (route.access === "share" || route.access === "intake") return { security: [{ link: [] }] };
  return undefined;
}

function contentOf(content: Content, io: "input" | "output"): object {
  if (content === "bytes") return { "application/octet-stream": {} };
  if (content === "events") return { "text/event-stream": { schema: { type: "string" } } };
  if (content === "none") return {};
  return { "application/json": { schema: schemaOf(content, io) } };
}

function pathParameters(path: string): object[] {
  return [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => ({
    name,
    in: "path",
    required: true,
    schema: { type: "string", minLength: 1, maxLength: 100 },
  }));
}

function queryParameters(query: z.ZodType | undefined): object[] {
  if (query === undefined) return [];
  const { properties = {}, required = [] } = schemaOf(query, "input") as {
    readonly properties?: Readonly<Record<string, object>>;
    readonly required?: readonly string[];
  };
  return Object.entries(properties).map(([name, schema]) => ({
    name,
    in: "query",
    required: required.includes(name),
    schema,
  }));
}

function headerParameters(route: Route): object[] {
  const header = (name: string, description: string) => ({
    name,
    in: "header",
    required: true,
    description,
    schema: { type: "string" },
  });
  return [
    ...(route.method === "GET" ? [] : [header("X-Tidewright", "anything: a form of a foreign page cannot send it")]),
    ...(route.ifMatch ? [header("If-Match", "the ETag of what was read; its version is what counts")] : []),
  ];
}
