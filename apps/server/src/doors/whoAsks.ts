import { createHash } from "node:crypto";
import { type Asker, nobody, thisMachine } from "./asker.ts";
import { type Doors, instantOf } from "./doors.ts";
import { isLoopback } from "./isLoopback.ts";
import { addressKey } from "./rateLimit.ts";
import { tooMany } from "./refusal.ts";
import { idleSeconds, mostSeconds, tokenOf } from "./sessionCookie.ts";

/** What a request says of who sends it. */
export interface Bearings {
  readonly cookie: string | undefined;
  readonly authorization: string | undefined;
  /** X-Forwarded-For, believed only behind TLS and only its last entry, which the own proxy wrote. */
  readonly forwardedFor: string | undefined;
  /** Address at the other end of the connection. */
  readonly remoteAddress: string | undefined;
}

/** How often a session in use is let last longer [ms]; each time is a write. */
const extendEvery = 10 * 60 * 1000;
const mostRemembered = 10_000;

/** Returns who asks.
 *  doors of the server; bearings of the request; inUse false where a machine asks by itself, which must not keep a session
 *  from ending   -> Asker; nobody where nothing fits
 *  Throws: `Refused` 429 when an address tried too many links that open nothing.
 *  Valid: a link in Authorization counts before a session, and a session before this machine: whoever shows a customer's
 *  link is that customer and nobody else.
 *  Source: own construction; docs/decisions/0018-doors.md. */
export async function whoAsks(doors: Doors, bearings: Bearings, inUse = true): Promise<Asker> {
  if (bearings.authorization !== undefined) return bearerOf(doors, bearings);
  const token = tokenOf(bearings.cookie, doors.behindTls);
  if (token !== undefined) {
    const account = await doors.store.sessions.find(token, instantOf(doors));
    if (account) {
      if (inUse) await extend(doors, token);
      return { who: "account", accountId: account.id, name: account.name, role: account.role, token };
    }
  }
  return !doors.accountsWanted && isLoopback(bearings.remoteAddress) ? thisMachine : nobody;
}

/** Returns the key under which the sender of a request is counted. */
export function senderKey(doors: Doors, bearings: Bearings): string {
  const last = doors.behindTls ? bearings.forwardedFor?.split(",").at(-1)?.trim() : undefined;
  return addressKey(last === undefined || last === "" ? bearings.remoteAddress : last.slice(0, 100));
}

async function bearerOf(doors: Doors, bearings: Bearings): Promise<Asker> {
  const found = /^Link ([\w-]{43})(?:\.([\da-f-]{36}))?$/.exec(bearings.authorization ?? "");
  const key = senderKey(doors, bearings);
  const wait = doors.limits.link.attempt(key, doors.now());
  if (wait > 0) throw tooMany(wait, "too many links that open nothing came from this address");
  const [, secret, draft] = found ?? [];
  const at = instantOf(doors);
  const open = secret === undefined ? undefined : await doors.store.links.find(secret, at);
  const answered =
    open !== undefined || secret === undefined || draft === undefined
      ? undefined
      : await doors.store.links.findAnswered(secret, draft, at);
  const link = open ?? answered;
  if (link) doors.limits.link.pardon(key);
  return {
    who: "link",
    name: link ? `link ${link.id}` : "unknown link",
    link,
    draft,
    answered: answered !== undefined,
  };
}

async function extend(doors: Doors, token: string): Promise<void> {
  const key = createHash("sha256").update(token).digest("base64url");
  const now = doors.now();
  const last = doors.lastExtended.get(key);
  if (last !== undefined && now - last < extendEvery) return;
  doors.lastExtended.delete(key);
  doors.lastExtended.set(key, now);
  if (doors.lastExtended.size > mostRemembered) doors.lastExtended.delete(doors.lastExtended.keys().next().value!);
  await doors.store.sessions.extend(token, new Date(now + idleSeconds * 1000).toISOString(), mostSeconds);
}
