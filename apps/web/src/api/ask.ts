import {
  entityTag,
  type ParamsOf,
  type ProblemDetails,
  problemDetails,
  type Route,
  versionOf,
} from "@tidewright/protocol";
import type { z } from "zod";

/** A question that was answered, or why not: the server is not to be reached, or it refused. */
export type Answered<Value> =
  | { readonly ok: true; readonly value: Value; readonly version: number | undefined }
  | { readonly ok: false; readonly reason: "unreachable" }
  | { readonly ok: false; readonly reason: "refused"; readonly problem: ProblemDetails };

type Given<R extends Route> = (unknown extends ParamsOf<R["path"]>
  ? { readonly params?: undefined }
  : { readonly params: ParamsOf<R["path"]> }) &
  (R extends { readonly query: infer Q extends z.ZodType } ? { readonly query?: z.input<Q> } : unknown) &
  (R extends { readonly body: infer B }
    ? B extends z.ZodType
      ? { readonly body: z.input<B> }
      : B extends "bytes"
        ? { readonly body: Blob }
        : unknown
    : unknown) &
  (R extends { readonly ifMatch: true } ? { readonly ifMatch: number } : unknown) & {
    /** Secret of a customer's link, for the doors that want one. */
    readonly link?: string;
    readonly signal?: AbortSignal;
  };
type ValueOf<R extends Route> = R["answer"] extends z.ZodType ? z.output<R["answer"]> : Blob;

/** Longest wait for an answer before the server counts as out of reach [ms]. */
const patience = 20_000;

/** Asks the server one thing of its table of routes; what comes back is checked before anybody sees it. */
export async function ask<R extends Route>(route: R, given: Given<R>): Promise<Answered<ValueOf<R>>> {
  const { params, query, body, ifMatch, link, signal } = given as {
    readonly params?: Readonly<Record<string, string>>;
    readonly query?: Readonly<Record<string, unknown>>;
    readonly body?: unknown;
    readonly ifMatch?: number;
    readonly link?: string;
    readonly signal?: AbortSignal;
  };
  const bytes = route.body === "bytes";
  const headers: Record<string, string> = {
    // A form on a foreign page cannot send this, so a cookie alone does nothing.
    "X-Tidewright": "1",
    ...(body === undefined ? {} : { "Content-Type": bytes ? "application/octet-stream" : "application/json" }),
    ...(ifMatch === undefined ? {} : { "If-Match": entityTag(ifMatch) }),
    ...(link === undefined ? {} : { Authorization: `Link ${link}` }),
  };
  const limit = AbortSignal.timeout(patience);
  let response: Response;
  try {
    response = await fetch(addressOf(route.path, params, query), {
      method: route.method,
      headers,
      credentials: link === undefined ? "same-origin" : "omit",
      signal: signal === undefined ? limit : AbortSignal.any([signal, limit]),
      ...(body === undefined ? {} : { body: bytes ? (body as Blob) : JSON.stringify(body) }),
    });
  } catch {
    return { ok: false, reason: "unreachable" };
  }
  return read(route, response);
}

async function read<R extends Route>(route: R, response: Response): Promise<Answered<ValueOf<R>>> {
  try {
    if (!response.ok) {
      const problem = problemDetails.safeParse(await response.json());
      // A gateway in between speaks another language: the server itself was not reached.
      return problem.success
        ? { ok: false, reason: "refused", problem: problem.data }
        : { ok: false, reason: "unreachable" };
    }
    const version = versionOf(response.headers.get("ETag") ?? undefined);
    const value = typeof route.answer === "string" ? await response.blob() : route.answer.parse(await response.json());
    return { ok: true, value: value as ValueOf<R>, version };
  } catch {
    return { ok: false, reason: "unreachable" };
  }
}

function addressOf(
  path: string,
  params: Readonly<Record<string, string>> = {},
  query: Readonly<Record<string, unknown>> = {},
): string {
  const filled = path.replace(/\{(\w+)\}/g, (_, name: string) => encodeURIComponent(params[name] ?? ""));
  const search = new URLSearchParams(
    Object.entries(query).flatMap(([key, value]) => (value === undefined ? [] : [[key, String(value)]])),
  ).toString();
  // Relative, so that the pages can be served from any path.
  return `${filled.slice(1)}${search === "" ? "" : `?${search}`}`;
}
