import { afterEach, describe, expect, it } from "vitest";
import { freshDoors, removeFresh } from "../testing/freshDoors.ts";
import type { Doors } from "./doors.ts";
import { firstOwnerLine } from "./doors.ts";
import { leastCost, passwordsAt, usualCost } from "./password.ts";
import { changeAccount, createAccount } from "./people.ts";
import { changePassword, makeFirstOwner, sessionOf, signIn, signOut } from "./signIn.ts";
import { whoAsks } from "./whoAsks.ts";

afterEach(removeFresh);

const secret = "seven brass valves";
const here = "192.0.2.7";
const away = "198.51.100.9";
const hour = 3_600_000;

/** Who a session's secret makes of a request from a place. */
const asking = (doors: Doors, token: string | undefined, remoteAddress = here) =>
  whoAsks(doors, {
    cookie: token && `${doors.behindTls ? "__Host-" : ""}tidewright=${token}`,
    authorization: undefined,
    forwardedFor: undefined,
    remoteAddress,
  });
/** Status of a refusal. */
const statusOf = async (work: Promise<unknown>): Promise<number> =>
  work.then(
    () => 200,
    (error) => error.details?.status ?? error,
  );
const withOwner = async () => {
  const fresh = await freshDoors();
  await makeFirstOwner(fresh.doors, { token: fresh.doors.firstOwner.secret, name: "Mara", password: secret }, here);
  return fresh;
};

describe("the first owner", () => {
  it("is made once, by the secret that the server printed", async () => {
    const { doors, store } = await freshDoors();
    expect(await sessionOf(doors, { who: "nobody", name: "nobody" })).toMatchObject({ firstOwnerWanted: true });
    const line = await firstOwnerLine(doors);
    const token = doors.firstOwner.secret;
    expect(line).toContain(token);
    const given = { token, name: "Mara", password: secret };
    expect(await statusOf(makeFirstOwner(doors, { ...given, token: "guess" }, here))).toBe(403);
    expect(await statusOf(makeFirstOwner(doors, { ...given, password: "password123" }, here))).toBe(422);
    const made = await makeFirstOwner(doors, given, here);
    expect(made.session).toEqual({
      who: "account",
      accountId: expect.any(String),
      name: "Mara",
      role: "owner",
      firstOwnerWanted: false,
    });
    expect(await asking(doors, made.token)).toMatchObject({ who: "account", role: "owner" });
    expect(await statusOf(makeFirstOwner(doors, { ...given, name: "Eve" }, here))).toBe(403);
    // Another start has another secret, and an account is there already.
    const again = await freshDoors({ store });
    expect(await firstOwnerLine(again.doors)).toBeUndefined();
    const late = { token: again.doors.firstOwner.secret, name: "Eve", password: secret };
    expect(await statusOf(makeFirstOwner(again.doors, late, here))).toBe(422);
    expect(await store.accounts.list()).toHaveLength(1);
    const trail = JSON.stringify(await store.audit.list());
    expect(trail).toContain("firstOwnerFailed");
    for (const hidden of [token, secret, made.token]) expect(trail).not.toContain(hidden);
  });

  it("cannot be had by trying secrets", async () => {
    const { doors } = await freshDoors();
    const answers: number[] = [];
    for (let turn = 0; turn < 25; turn++) {
      answers.push(await statusOf(makeFirstOwner(doors, { token: `${turn}`, name: "Eve", password: secret }, away)));
    }
    expect(answers.slice(0, 20)).toEqual(Array(20).fill(403));
    expect(answers.slice(20)).toEqual(Array(5).fill(429));
  });
});

describe("signing in", () => {
  it("makes a new session each time, and what was brought along is not taken", async () => {
    const { doors } = await withOwner();
    const planted = "P".repeat(43);
    const first = await signIn(doors, { name: "mara", password: secret }, here, planted);
    expect(first.token).not.toBe(planted);
    expect(await asking(doors, planted)).toMatchObject({ who: "nobody" });
    const second = await signIn(doors, { name: "Mara", password: secret }, here, first.token);
    expect(second.token).not.toBe(first.token);
    expect(await asking(doors, first.token)).toMatchObject({ who: "nobody" });
    expect(await asking(doors, second.token)).toMatchObject({ who: "account", name: "Mara" });
  });

  it("is refused in the same words for a wrong password, an unknown name and a disabled account", async () => {
    const { doors, store } = await withOwner();
    const staff = await createAccount(doors, { name: "José", role: "staff", password: "eight brass valves" }, "Mara");
    await changeAccount(doors, staff.id, 1, { disabled: true }, "Mara");
    const said = async (name: string, password: string) =>
      signIn(doors, { name, password }, here).catch((error) => error.details);
    const wrong = await said("Mara", "nine brass valves");
    expect(wrong).toMatchObject({ status: 401, type: "urn:tidewright:problem:sign-in" });
    expect(await said("Nobody", secret)).toEqual(wrong);
    expect(await said("José", "eight brass valves")).toEqual(wrong);
    const trail = await store.audit.list();
    expect(trail.filter((line) => line.action === "signInFailed")).toHaveLength(3);
    // What was typed as a name may be a password.
    expect(JSON.stringify(trail)).not.toMatch(/Nobody|valves/);
  });

  it("is held back after five failures of one name, also when they come at once, spelt otherwise or from everywhere", async () => {
    const { doors, clock } = await withOwner();
    const spellings = ["Mara", "mara", "MARA", "Mára", "maRa", "mArA", "mara ", "Mara"];
    const answers = await Promise.all(
      spellings.map((name, at) => statusOf(signIn(doors, { name, password: "wrong wrong" }, `203.0.113.${at}`))),
    );
    expect(answers.filter((each) => each === 401)).toHaveLength(5);
    expect(answers.filter((each) => each === 429)).toHaveLength(3);
    const waiting = await signIn(doors, { name: "Mara", password: secret }, away).catch((error) => error);
    expect(waiting.details).toMatchObject({ status: 429, type: "urn:tidewright:problem:too-many" });
    expect(waiting.headers).toEqual({ "Retry-After": "30" });
    clock.now += 30_000;
    expect(await statusOf(signIn(doors, { name: "Mara", password: secret }, away))).toBe(200);
  });

  it("stays open where somebody signed in before, while strangers try the name elsewhere", async () => {
    const { doors } = await withOwner();
    await signIn(doors, { name: "Mara", password: secret }, here);
    for (let turn = 0; turn < 8; turn++) await statusOf(signIn(doors, { name: "Mara", password: "wrong wrong" }, away));
    expect(await statusOf(signIn(doors, { name: "Mara", password: secret }, away))).toBe(429);
    expect(await statusOf(signIn(doors, { name: "Mara", password: secret }, here))).toBe(200);
  });

  it("is held back after twenty failures from one address over many names, and a success does not wipe them out", async () => {
    const { doors } = await withOwner();
    const answers: number[] = [];
    for (let turn = 0; turn < 24; turn++) {
      answers.push(await statusOf(signIn(doors, { name: `name ${turn}`, password: "wrong wrong" }, away)));
      if (turn === 10) answers.push(await statusOf(signIn(doors, { name: "Mara", password: secret }, away)));
    }
    expect(answers.filter((each) => each === 401)).toHaveLength(20);
    expect(answers.filter((each) => each === 429)).toHaveLength(4);
    expect(answers.filter((each) => each === 200)).toHaveLength(1);
  });

  it("hashes anew where hashes cost more than they did", async () => {
    const { store } = await withOwner();
    const passwords = passwordsAt(usualCost);
    const { doors } = await freshDoors({ store, passwords });
    await signIn(doors, { name: "Mara", password: secret }, here);
    expect((await store.accounts.findByName("Mara"))?.passwordHash).toMatch(/m=65536,t=3,p=4/);
    expect(await statusOf(signIn(doors, { name: "Mara", password: secret }, here))).toBe(200);
    expect(leastCost.memoryCost).toBe(19_456);
  });
});

describe("a session", () => {
  it("is over after twelve hours without a request, after thirty days in any case, and at once when signed out", async () => {
    const { doors, clock } = await withOwner();
    const { token } = await signIn(doors, { name: "Mara", password: secret }, here);
    clock.now += 11 * hour;
    expect(await asking(doors, token)).toMatchObject({ who: "account" });
    clock.now += 12 * hour - 1;
    expect(await asking(doors, token)).toMatchObject({ who: "account" });
    clock.now += 12 * hour + 1;
    expect(await asking(doors, token)).toMatchObject({ who: "nobody" });

    const long = await signIn(doors, { name: "Mara", password: secret }, here);
    const start = clock.now;
    while (clock.now + 6 * hour < start + 30 * 24 * hour) {
      clock.now += 6 * hour;
      expect(await asking(doors, long.token)).toMatchObject({ who: "account" });
    }
    clock.now = start + 30 * 24 * hour;
    expect(await asking(doors, long.token)).toMatchObject({ who: "nobody" });

    const third = await signIn(doors, { name: "Mara", password: secret }, here);
    await signOut(doors, await asking(doors, third.token));
    expect(await asking(doors, third.token)).toMatchObject({ who: "nobody" });
  });

  it("ends everywhere with another password, another role or the account", async () => {
    const { doors } = await withOwner();
    const one = await signIn(doors, { name: "Mara", password: secret }, here);
    const other = await signIn(doors, { name: "Mara", password: secret }, away);
    const asker = await asking(doors, one.token);
    const next = "nine stone gobies";
    expect(await statusOf(changePassword(doors, asker, { current: "wrong wrong", next }, here))).toBe(403);
    expect(await statusOf(changePassword(doors, asker, { current: secret, next: "maramaramara" }, here))).toBe(422);
    const changed = await changePassword(doors, asker, { current: secret, next }, here);
    for (const gone of [one, other]) expect(await asking(doors, gone.token)).toMatchObject({ who: "nobody" });
    expect(await asking(doors, changed.token)).toMatchObject({ who: "account" });
    expect(await statusOf(signIn(doors, { name: "Mara", password: secret }, here))).toBe(401);

    const staff = await createAccount(doors, { name: "José", role: "staff", password: secret }, "Mara");
    const { token } = await signIn(doors, { name: "José", password: secret }, here);
    await changeAccount(doors, staff.id, 1, { role: "readOnly" }, "Mara");
    expect(await asking(doors, token)).toMatchObject({ who: "nobody" });
  });

  it("is not to be had by trying present passwords of a bench that was left open", async () => {
    const { doors } = await withOwner();
    const { token } = await signIn(doors, { name: "Mara", password: secret }, here);
    const asker = await asking(doors, token);
    const answers: number[] = [];
    for (let turn = 0; turn < 7; turn++) {
      answers.push(
        await statusOf(changePassword(doors, asker, { current: `wrong ${turn}`, next: "nine gobies" }, here)),
      );
    }
    expect(answers).toEqual([403, 403, 403, 403, 403, 429, 429]);
  });
});

describe("whoever sits at this machine", () => {
  const from = (remoteAddress: string) => ({
    cookie: undefined,
    authorization: undefined,
    forwardedFor: undefined,
    remoteAddress,
  });
  it("needs no account where the server listens on this machine alone, and nowhere else", async () => {
    const store = (await freshDoors()).store;
    const cases: readonly (readonly [string, boolean, string, string])[] = [
      ["127.0.0.1", false, "127.0.0.1", "thisMachine"],
      ["localhost", false, "::1", "thisMachine"],
      ["::1", false, "::ffff:127.0.0.1", "thisMachine"],
      ["127.0.0.1", false, "192.0.2.7", "nobody"],
      // A proxy on the same machine comes from here with everybody's requests.
      ["127.0.0.1", true, "127.0.0.1", "nobody"],
      ["0.0.0.0", false, "127.0.0.1", "nobody"],
      ["::", false, "::1", "nobody"],
      ["192.168.1.20", false, "127.0.0.1", "nobody"],
    ];
    for (const [listensOn, behindTls, remote, who] of cases) {
      const { doors } = await freshDoors({ store, listensOn, behindTls });
      expect({ listensOn, behindTls, remote, who: (await whoAsks(doors, from(remote))).who }).toEqual({
        listensOn,
        behindTls,
        remote,
        who,
      });
    }
  });

  it("is not made by headers", async () => {
    const { doors } = await freshDoors({ behindTls: true, listensOn: "127.0.0.1" });
    const asker = await whoAsks(doors, { ...from("127.0.0.1"), forwardedFor: "127.0.0.1" });
    expect(asker.who).toBe("nobody");
  });
});
