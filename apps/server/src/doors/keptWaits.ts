import type { SignInWait, Store } from "@tidewright/store";
import type { Held, RateLimit } from "./rateLimit.ts";

/** How names that are no account's are counted: they stay in memory, since people type passwords there. */
export const strangersName = "no account ";

/** Waits of sign-ins as they are written down. */
export interface KeptWaits {
  /** Notes what is held against a key from now on. */
  readonly note: (kind: "name" | "address" | "place", key: string, held: Held | undefined) => void;
  /** Writes down what was noted. A store that cannot be written to must not shut the door: then memory alone counts. */
  readonly keep: () => Promise<void>;
}

/** Returns what writes waits down, so that a restart does not forgive what was tried before it.
 *  store   -> KeptWaits */
export function keptWaits(store: Store): KeptWaits {
  let noted = new Map<string, Omit<SignInWait, "key"> | undefined>();
  // One after the other, so that what was true later is written later.
  let last: Promise<void> = Promise.resolve();
  const write = async (): Promise<void> => {
    if (noted.size === 0) return;
    const changes = noted;
    noted = new Map();
    try {
      await store.waits.keep(changes);
    } catch (error) {
      process.stderr.write(`Waits at the door could not be written down: ${String(error)}\n`);
    }
  };
  return {
    note: (kind, key, held) => {
      if (key.startsWith(strangersName)) return;
      noted.set(
        `${kind} ${key}`,
        held && { failures: held.failures, openAt: instant(held.openAt), lastAt: instant(held.last) },
      );
    },
    keep: () => {
      last = last.then(write);
      return last;
    },
  };
}

/** Takes up the waits and known places of before the start.
 *  store; limits of sign-ins; knownPlaces, to be filled */
export async function restoreWaits(
  store: Store,
  limits: { readonly name: RateLimit; readonly address: RateLimit },
  knownPlaces: Set<string>,
): Promise<void> {
  for (const { key, failures, openAt, lastAt } of await store.waits.list()) {
    const [kind, rest] = [key.slice(0, key.indexOf(" ")), key.slice(key.indexOf(" ") + 1)];
    if (kind === "place") knownPlaces.add(rest);
    else if (kind === "name" || kind === "address")
      limits[kind].restore(rest, { failures, openAt: Date.parse(openAt), last: Date.parse(lastAt) });
  }
}

const instant = (milliseconds: number): string => new Date(milliseconds).toISOString();
