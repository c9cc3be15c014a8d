import type { HttpBindings } from "@hono/node-server";
import type { Context } from "hono";
import type { Bearings as Given } from "../doors/whoAsks.ts";

/** What a request says of who sends it. */
export type Bearings = Given;

/** Returns what a request says of who sends it: its headers and the other end of its connection.
 *  context of a request   -> Bearings; no address where the request came over no connection */
export function bearingsOf(context: Context): Bearings {
  const { incoming } = (context.env ?? {}) as Partial<HttpBindings>;
  return {
    cookie: context.req.header("Cookie"),
    authorization: context.req.header("Authorization"),
    forwardedFor: context.req.header("X-Forwarded-For"),
    remoteAddress: incoming?.socket.remoteAddress,
  };
}
