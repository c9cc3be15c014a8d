import type { ProblemDetails } from "@tidewright/protocol";
import { StoreFailure, type StoreFailureCode } from "@tidewright/store";
import type { Context } from "hono";
import { Refused } from "../doors/refusal.ts";

/** How each failure of the store is told. The store's own sentence names folders of the server, which are for whoever runs
 *  it: it goes to the standard error. */
const failures: Readonly<Record<StoreFailureCode, readonly [status: number, title: string, detail: string]>> = {
  diskFull: [
    507,
    "The disk of the server is full",
    "nothing was kept of this change, and all that was kept before is unharmed; free some space on the server's disk and try again",
  ],
  unreachable: [
    503,
    "What is kept cannot be reached now",
    "nothing was kept of this change; try again in a few seconds",
  ],
  damaged: [500, "What is kept is damaged", "stop the server and restore the latest backup into an empty folder"],
  inUse: [503, "What is kept is in use by another program", "stop that program, or try again in a few seconds"],
  newer: [503, "What is kept was written by a newer program", "update the server"],
  notEmpty: [409, "There is something already", "nothing was overwritten"],
};

/** Returns the response of problem details.
 *  details; headers besides   -> Response
 *  Source: RFC 9457, section 3. */
export function problemResponse(details: ProblemDetails, headers: Readonly<Record<string, string>> = {}): Response {
  return new Response(JSON.stringify(details), {
    status: details.status,
    headers: { ...headers, "Content-Type": "application/problem+json" },
  });
}

/** Returns what a sender is told of a failure: why the request was refused, what ails the disk or the database, or that the
 *  fault is ours, whose particulars go to the standard error and to nobody else.
 *  context of the request; error thrown   -> Response */
export function tellFailure(context: Context, error: unknown): Response {
  if (error instanceof Refused) return problemResponse(error.details, error.headers);
  const message = error instanceof Error ? error.message : String(error);
  process.stderr.write(`${context.req.method} ${context.req.path}: ${message}\n`);
  if (error instanceof StoreFailure) {
    const [status, title, detail] = failures[error.code];
    const type = `urn:tidewright:problem:store-${error.code.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
    return problemResponse({ type, title, status, detail }, status === 503 ? { "Retry-After": "5" } : {});
  }
  return problemResponse({
    type: "urn:tidewright:problem:our-fault",
    title: "Tidewright failed, and the fault is its own",
    status: 500,
    detail: "the request may be right; the server's own output says more",
  });
}
