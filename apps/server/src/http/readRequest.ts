import { longestDocument, type Problem, readJson, shown } from "@tidewright/design";
import type { Route } from "@tidewright/protocol";
import type { Context } from "hono";
import type { z } from "zod";
import { badInput, Refused } from "../doors/refusal.ts";
import { readBytes } from "../files/readBytes.ts";

/** Largest body of a route that takes JSON [bytes]. */
const largestJson = longestDocument;

/** What a request brings, as its route's schemas have it. */
export interface RequestParts {
  readonly params: Readonly<Record<string, string>>;
  readonly query: unknown;
  readonly body: unknown;
}

/** Returns what a request brings, checked against its route.
 *  route; context of the request   -> parameters, query and body; a body of bytes is left unread
 *  Throws: `Refused` 415, 413, or 422 with every problem of path, query and body together. */
export async function readRequest(route: Route, context: Context): Promise<RequestParts> {
  const params = context.req.param() as Record<string, string>;
  const problems = Object.entries(params).flatMap(([name, value]) => paramProblems(name, value));
  const query = checked(route.query, queryOf(context, problems), "?", problems);
  const wantsJson = route.body !== undefined && typeof route.body !== "string";
  const body = wantsJson ? checked(route.body as z.ZodType, await jsonOf(context, problems), "/", problems) : undefined;
  if (problems.length > 0) throw badInput(problems);
  return { params, query, body };
}

/** Returns the text of a JSON body.
 *  context of the request   -> text
 *  Throws: `Refused` 415 where it is not announced as JSON (a plain form of a foreign page is not), 413, 422 for no UTF-8. */
export async function jsonTextOf(context: Context): Promise<string> {
  const kind = context.req.header("Content-Type")?.split(";")[0]?.trim().toLowerCase() ?? "";
  if (!/^application\/(.+\+)?json$/.test(kind))
    throw new Refused({
      type: "urn:tidewright:problem:media-type",
      title: "The body is not announced as JSON",
      status: 415,
      detail: "send the document with Content-Type: application/json",
    });
  const reading = await readBytes(context.req.raw.body, context.req.header("Content-Length"), largestJson);
  if (!reading.ok)
    throw new Refused({
      type: "urn:tidewright:problem:too-large",
      title: "The document is too large",
      status: 413,
      detail: `up to ${largestJson / 1e6} MB are read; split several systems into a document each`,
    });
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(reading.bytes);
  } catch {
    throw badInput([{ path: "", message: "the body is not UTF-8", fix: "send the text as UTF-8" }]);
  }
}

async function jsonOf(context: Context, problems: Problem[]): Promise<unknown> {
  const reading = readJson(await jsonTextOf(context));
  if (reading.ok) return reading.value;
  problems.push(...reading.problems);
  return unread;
}

/** Stands for an input whose problems are told already. */
const unread = Symbol("unread");

function checked(schema: z.ZodType | undefined, value: unknown, start: "?" | "/", problems: Problem[]): unknown {
  if (value === unread) return undefined;
  if (schema === undefined) return undefined;
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  for (const issue of result.error.issues) problems.push(...asProblems(issue, value, start));
  return undefined;
}

function asProblems(issue: z.core.$ZodIssue, input: unknown, start: "?" | "/"): Problem[] {
  const pathOf = (keys: readonly PropertyKey[]): string =>
    keys.length === 0 ? (start === "?" ? "?" : "") : start + keys.map(String).join("/");
  if (issue.code === "unrecognized_keys")
    return issue.keys.map((key) => ({
      path: pathOf([...issue.path, key]),
      message: "there is no such field",
      fix: "leave it out, or check how it is spelled",
    }));
  const value = issue.path.reduce<unknown>((at, key) => (at as Record<PropertyKey, unknown> | undefined)?.[key], input);
  return [
    {
      path: pathOf(issue.path),
      message: value === undefined ? "is missing" : issue.message,
      ...(value === undefined ? {} : { value: typeof value === "object" ? shown(value) : value }),
      fix: fixOf(issue),
    },
  ];
}

function fixOf(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case "invalid_type":
      return `give ${/^[aeiou]/.test(issue.expected) ? "an" : "a"} ${issue.expected}`;
    case "too_big":
      return `give at most ${issue.maximum}${issue.origin === "string" ? " characters" : ""}`;
    case "too_small":
      return `give at least ${issue.minimum}${issue.origin === "string" ? " characters" : ""}`;
    case "invalid_value":
      return `give one of ${issue.values.map(String).join(", ")}`;
    case "invalid_format":
      return issue.format === "datetime"
        ? "write it like 2026-03-01T09:30:00.000Z"
        : `give it as ${issue.format === "uuid" ? "a UUID" : issue.format}`;
    default:
      return "see /api/openapi.json for what is wanted here";
  }
}

/** A query names each thing once. */
function queryOf(context: Context, problems: Problem[]): Record<string, string> {
  const query: Record<string, string> = {};
  for (const [name, values] of Object.entries(context.req.queries())) {
    if (values.length > 1)
      problems.push({
        path: `?${name}`,
        message: "is given more than once",
        value: values.join(", "),
        fix: "give one",
      });
    query[name] = values[0] ?? "";
  }
  return query;
}

function paramProblems(name: string, value: string): Problem[] {
  const path = `{${name}}`;
  if (value === "" || value.length > 100 || /[\u0000-\u001f\u007f]/.test(value))
    return [{ path, message: "is no name of anything", value: shown(value), fix: "use 1 to 100 plain characters" }];
  return [];
}
