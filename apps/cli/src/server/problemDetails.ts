import type { Problem } from "@tidewright/design";
import type { Context } from "hono";
import type { ContentfulStatusCode } from "hono/utils/http-status";
import { counted } from "../output/format.ts";

/** What a client is told when a request cannot be answered: RFC 9457, with the complete list of problems. */
export interface ProblemDetails {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly problems?: readonly Problem[];
}

/** Returns a response of problem details. */
export function problemResponse(context: Context, details: ProblemDetails): Response {
  return context.body(JSON.stringify(details), details.status as ContentfulStatusCode, {
    "Content-Type": "application/problem+json",
  });
}

/** Returns the details of a document with problems in it. */
export function badDocument(problems: readonly Problem[]): ProblemDetails {
  const count = counted(problems.length, "problem");
  return {
    type: "urn:tidewright:problem:bad-input",
    title: "The input cannot be worked with",
    status: 422,
    detail: `${count}; each names its place, what is the matter and how to mend it`,
    problems,
  };
}
