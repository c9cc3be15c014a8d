import type { MiddlewareHandler } from "hono";
import { problemResponse } from "./problemDetails.ts";

const loopbackNames = new Set(["127.0.0.1", "localhost", "[::1]"]);

/** Returns a guard that answers only requests for this machine by name, so that a foreign page that points its own name
 *  at 127.0.0.1 gets nothing. */
export function onlyLoopback(): MiddlewareHandler {
  return async (context, next) => {
    const name = new URL(context.req.url).hostname;
    if (loopbackNames.has(name)) return next();
    return problemResponse(context, {
      type: "urn:tidewright:problem:wrong-host",
      title: "This server answers to this machine only",
      status: 421,
      detail: "open it as http://127.0.0.1 with its port",
    });
  };
}
