import type { Store } from "@tidewright/store";
import { type FirstOwnerToken, firstOwnerToken } from "./firstOwnerToken.ts";
import { isLoopback } from "./isLoopback.ts";
import { type KeptWaits, keptWaits, restoreWaits } from "./keptWaits.ts";
import { type Passwords, passwordsAt } from "./password.ts";
import { byAddress, byIntake, byLinkAddress, byName, type RateLimit, rateLimit } from "./rateLimit.ts";

/** How a server's doors are hung. */
export interface DoorsOptions {
  readonly store: Store;
  /** Host or address on which the server listens. */
  readonly listensOn: string;
  /** Whether a proxy in front of the server speaks HTTPS to browsers. */
  readonly behindTls: boolean;
  /** Milliseconds since 1970; injected, so that waits and expiries can be tried out. */
  readonly now?: () => number;
  readonly passwords?: Passwords;
}

/** What the doors of a running server remember: no secret of anybody but the one for the first owner. */
export interface Doors {
  readonly store: Store;
  /** Whether everybody signs in. Only a server that listens on this machine's own address, with no proxy before it, lets
   *  whoever sits here in without. */
  readonly accountsWanted: boolean;
  readonly behindTls: boolean;
  readonly now: () => number;
  readonly passwords: Passwords;
  readonly firstOwner: FirstOwnerToken;
  readonly limits: Readonly<Record<"name" | "address" | "firstOwner" | "link" | "intake", RateLimit>>;
  /** Pairs of name and address that signed in within thirty days: strangers' failures do not lock them out. */
  readonly knownPlaces: Set<string>;
  /** Waits of sign-ins as they outlive the server. */
  readonly waits: KeptWaits;
  /** When a session was last let last longer [ms], by a hash of its secret. */
  readonly lastExtended: Map<string, number>;
}

/** Returns the doors of a server.
 *  options how they are hung   -> Doors, with empty counters and a new secret for the first owner
 *  Source: own construction; docs/decisions/0018-doors.md. */
export function doorsOf(options: DoorsOptions): Doors {
  const waits = keptWaits(options.store);
  return {
    store: options.store,
    accountsWanted: options.behindTls || !isLoopback(options.listensOn),
    behindTls: options.behindTls,
    now: options.now ?? Date.now,
    passwords: options.passwords ?? passwordsAt(),
    firstOwner: firstOwnerToken(),
    limits: {
      name: rateLimit(byName, undefined, (key, held) => waits.note("name", key, held)),
      address: rateLimit(byAddress, undefined, (key, held) => waits.note("address", key, held)),
      firstOwner: rateLimit(byAddress),
      link: rateLimit(byLinkAddress),
      intake: rateLimit(byIntake),
    },
    knownPlaces: new Set(),
    waits,
    lastExtended: new Map(),
  };
}

/** Takes up what doors of before the start had to remember; to be called before anybody knocks. */
export const takeUpWaits = (doors: Doors): Promise<void> => restoreWaits(doors.store, doors.limits, doors.knownPlaces);

/** The instant of now as the store wants it. */
export const instantOf = (doors: Doors): string => new Date(doors.now()).toISOString();

/** Returns the line to be printed at the start, where accounts are wanted and there is none; undefined elsewhere.
 *  doors of the server   -> a sentence with the secret: for the standard error of the process, never for a log or the audit */
export async function firstOwnerLine(doors: Doors): Promise<string | undefined> {
  if (!doors.accountsWanted || (await doors.store.accounts.list()).length > 0) return undefined;
  return `There is no account yet. Open the server in a browser and make the first owner with this secret, which holds until the server stops: ${doors.firstOwner.secret}`;
}
