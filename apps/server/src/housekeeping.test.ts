import { afterEach, describe, expect, it } from "vitest";
import { keepHouse, keepHouseDaily } from "./housekeeping.ts";
import { freshStore, removeFresh } from "./testing/freshDoors.ts";

afterEach(removeFresh);

const start = Date.UTC(2026, 2, 1, 9);
const hour = 3_600_000;
const day = 24 * hour;
const at = (after: number) => new Date(start + after).toISOString();
const by = { author: "Mara", at: at(0) };

describe("keeping house", () => {
  it("forgets sessions that expired, links thirty days after they did, and places after as long", async () => {
    const store = await freshStore();
    const account = await store.accounts.create({ name: "Mara", role: "owner", passwordHash: "x" }, by);
    if (!account.ok) throw new Error("no account");
    const short = await store.sessions.open(account.value.id, at(hour), by);
    const long = await store.sessions.open(account.value.id, at(40 * day), by);
    if (!short.ok || !long.ok) throw new Error("no session");
    await store.links.create({ kind: "intake", expiresAt: at(day) }, by);
    const lastAt = at(0);
    await store.waits.keep(new Map([["place a 192.0.2.7", { failures: 0, openAt: lastAt, lastAt }]]));
    const links = async () => (await store.links.list(null)).length;

    await keepHouse(store, start + 2 * day);
    // Asked as of an instant at which both would still be open.
    expect(await store.sessions.find(short.value.token, at(0))).toBeUndefined();
    expect(await store.sessions.find(long.value.token, at(0))).toMatchObject({ name: "Mara" });
    expect([await links(), (await store.waits.list()).length]).toEqual([1, 1]);
    await keepHouse(store, start + 31 * day + hour);
    expect([await links(), (await store.waits.list()).length]).toEqual([0, 0]);
  });

  it("is done at the start and every day, until it is stopped", async () => {
    const store = await freshStore();
    let now = start;
    let tick: (() => void) | undefined;
    const waits: number[] = [];
    const stop = keepHouseDaily(store, {
      now: () => now,
      every: (milliseconds, work) => {
        waits.push(milliseconds);
        tick = work;
        return () => {
          tick = undefined;
        };
      },
    });
    expect(waits).toEqual([day]);
    await store.links.create({ kind: "intake", expiresAt: at(hour) }, by);
    now += 32 * day;
    tick?.();
    await expect.poll(async () => (await store.links.list(null)).length).toBe(0);
    stop();
    expect(tick).toBeUndefined();
  });
});
