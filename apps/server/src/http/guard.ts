import type { Access } from "@tidewright/protocol";
import type { App } from "../app.ts";
import { type Asker, allowed, thisMachine } from "../doors/asker.ts";
import { sameText } from "../doors/firstOwnerToken.ts";
import { isLoopback } from "../doors/isLoopback.ts";
import { foreignPage } from "../doors/ownPages.ts";
import { notAllowed, notThere, signInFirst } from "../doors/refusal.ts";
import { whoAsks } from "../doors/whoAsks.ts";
import type { Bearings } from "./bearingsOf.ts";

/** Returns who asks, once they may: the one place where that is decided, for every route.
 *  app; access of the route; bearings and headers of the request; reads whether the route only computes   -> Asker
 *  Throws: `Refused` 401, 403, 404 or 429. */
export async function guard(
  app: App,
  access: Access,
  bearings: Bearings,
  request: Request,
  reads = false,
): Promise<Asker> {
  const header = (name: string): string | undefined => request.headers.get(name) ?? undefined;
  const foreign = foreignPage(
    {
      method: reads ? "GET" : request.method,
      host: header("Host"),
      origin: header("Origin"),
      secFetchSite: header("Sec-Fetch-Site"),
      mark: header("X-Tidewright"),
    },
    app.doors.behindTls,
  );
  if (foreign !== undefined) throw notAllowed(foreign);
  const asker = ownCommand(app, bearings, header("X-Tidewright-Local")) ?? (await whoAsks(app.doors, bearings));
  const verdict = allowed(asker, access);
  if (verdict === "yes") return asker;
  if (verdict === "signIn") throw signInFirst();
  if (verdict === "gone") throw notThere("this link opens nothing; ask the shop for a new one");
  throw notAllowed("this account or link may not do that; an owner can");
}

/** The server's own commands on this machine bear the secret of the data folder. */
function ownCommand(app: App, bearings: Bearings, secret: string | undefined): Asker | undefined {
  if (secret === undefined || !isLoopback(bearings.remoteAddress)) return undefined;
  return sameText(secret, app.localSecret) ? thisMachine : undefined;
}
