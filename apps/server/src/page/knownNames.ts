import { networkInterfaces } from "node:os";
import type { MiddlewareHandler } from "hono";
import { isLoopback } from "../doors/isLoopback.ts";
import { problemResponse } from "../http/tellFailure.ts";

/** Returns a guard that answers only requests for a name of this server, so that a foreign page that points its own name
 *  at the server's address gets nothing.
 *  host address that the server listens on; names by which it is reached besides */
export function knownNames(host: string, names: readonly string[]): MiddlewareHandler {
  const known = new Set([host, ...names].map(bare));
  const everywhere = host === "0.0.0.0" || host === "::";
  return async (context, next) => {
    const name = bare(new URL(context.req.url).hostname);
    if (isLoopback(name) || known.has(name) || (everywhere && ownAddresses().has(name))) return next();
    return problemResponse({
      type: "urn:tidewright:problem:wrong-host",
      title: "This server does not go by that name",
      status: 421,
      detail: isLoopback(host)
        ? "open it as http://127.0.0.1 with its port"
        : "open it by its address, or start it with --name and this name",
    });
  };
}

const bare = (name: string): string => name.toLowerCase().replace(/^\[|\]$/g, "");

/** Addresses come and go with networks, so they are asked for anew. */
function ownAddresses(): Set<string> {
  return new Set(Object.values(networkInterfaces()).flatMap((each) => each?.map(({ address }) => address) ?? []));
}
