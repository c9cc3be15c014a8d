import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openStore, type Store } from "@tidewright/store";
import { type Doors, type DoorsOptions, doorsOf } from "../doors/doors.ts";
import { leastCost, passwordsAt } from "../doors/password.ts";

const removals: (() => Promise<void>)[] = [];

/** A clock that stands until a test moves it. */
export interface Clock {
  now: number;
}

/** An open store in a folder of its own, gone after the test. */
export async function freshStore(): Promise<Store> {
  const folder = mkdtempSync(join(tmpdir(), "tidewright-server-"));
  const store = await openStore(join(folder, "data"));
  removals.push(async () => {
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  });
  return store;
}

/** Doors of a server on a shop's network, with a clock at hand. */
export async function freshDoors(
  options: Partial<DoorsOptions> = {},
): Promise<{ readonly doors: Doors; readonly store: Store; readonly clock: Clock }> {
  const store = options.store ?? (await freshStore());
  const clock = { now: Date.UTC(2026, 2, 1, 9) };
  const passwords = passwordsAt(leastCost);
  const doors = doorsOf({ listensOn: "0.0.0.0", behindTls: false, now: () => clock.now, passwords, ...options, store });
  return { doors, store, clock };
}

/** Takes away what tests made; to be called after each. */
export async function removeFresh(): Promise<void> {
  while (removals.length > 0) await removals.pop()?.();
}
