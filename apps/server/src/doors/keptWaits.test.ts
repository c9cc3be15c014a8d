import { afterEach, describe, expect, it } from "vitest";
import { freshDoors, removeFresh } from "../testing/freshDoors.ts";
import { takeUpWaits } from "./doors.ts";
import { signIn } from "./signIn.ts";

afterEach(removeFresh);

const [here, elsewhere] = ["192.0.2.7", "198.51.100.9"];
const right = "seven brass valves";

/** What a try comes to: 200, or the status of its refusal. */
const tried = (work: Promise<unknown>): Promise<number> =>
  work.then(
    () => 200,
    (error: { readonly details: { readonly status: number } }) => error.details.status,
  );

describe("waits of sign-ins", () => {
  it("outlive a restart, and so does the place that somebody signed in from", async () => {
    const { doors, store, clock } = await freshDoors();
    const at = new Date(clock.now).toISOString();
    const passwordHash = await doors.passwords.hash(right);
    await store.accounts.create({ name: "Mara", role: "owner", passwordHash }, { author: "set-up", at });
    expect(await tried(signIn(doors, { name: "Mara", password: right }, here))).toBe(200);
    const guesses: number[] = [];
    for (let turn = 0; turn < 7; turn++)
      guesses.push(await tried(signIn(doors, { name: "Mara", password: `guess ${turn} guess` }, elsewhere)));
    // Five are free, the sixth has to wait after it: NIST SP 800-63B, 5.2.2, as `byName` has it.
    const open = guesses.filter((status) => status === 401).length;
    expect(guesses).toEqual([...Array(open).fill(401), ...Array(7 - open).fill(429)]);
    expect(open).toBeLessThan(7);

    const anew = await freshDoors({ store });
    anew.clock.now = clock.now;
    await takeUpWaits(anew.doors);
    expect(await tried(signIn(anew.doors, { name: "Mara", password: right }, elsewhere))).toBe(429);
    expect(await tried(signIn(anew.doors, { name: "Mara", password: right }, here))).toBe(200);
    anew.clock.now += 31_000;
    expect(await tried(signIn(anew.doors, { name: "Mara", password: right }, elsewhere))).toBe(200);
    // Whoever is let in has nothing held against the name; what came from the address before counts on for an hour.
    const kinds = (await store.waits.list()).map(({ key }) => key.split(" ")[0]);
    expect(kinds.sort()).toEqual(["address", "place", "place"]);
  });

  it("are forgotten by a restart without them: the test above would pass for nothing otherwise", async () => {
    const { doors, store } = await freshDoors();
    const passwordHash = await doors.passwords.hash(right);
    const by = { author: "set-up", at: "2026-03-01T09:00:00.000Z" };
    await store.accounts.create({ name: "Mara", role: "owner", passwordHash }, by);
    for (let turn = 0; turn < 7; turn++)
      await tried(signIn(doors, { name: "Mara", password: `guess ${turn} guess` }, elsewhere));
    const { doors: anew } = await freshDoors({ store });
    expect(await tried(signIn(anew, { name: "Mara", password: right }, elsewhere))).toBe(200);
  });

  it("hold no name that is no account's, which may be a password, and nobody out where they cannot be written", async () => {
    const { doors, store } = await freshDoors();
    await tried(signIn(doors, { name: "my secret password", password: right }, here));
    expect(JSON.stringify(await store.waits.list())).not.toContain("secret");
    const passwordHash = await doors.passwords.hash(right);
    const by = { author: "set-up", at: "2026-03-01T09:00:00.000Z" };
    await store.accounts.create({ name: "Mara", role: "owner", passwordHash }, by);
    const broken = { ...store, waits: { ...store.waits, keep: () => Promise.reject(new Error("the disk is full")) } };
    const { doors: full } = await freshDoors({ store: broken });
    expect(await tried(signIn(full, { name: "Mara", password: right }, here))).toBe(200);
  });
});
