import { afterEach, describe, expect, it } from "vitest";
import { by, freshStore, removePlaces } from "../testing/freshStore.ts";

afterEach(removePlaces);

const early = "2026-03-01T10:00:00.000Z";
const expiry = "2026-03-01T12:00:00.000Z";
const late = "2026-03-01T12:00:00.001Z";

describe("accounts and sessions", () => {
  it("let somebody in until the session expires, is closed or the account changes", async () => {
    const store = await freshStore();
    const owner = { name: "Mara", role: "owner", passwordHash: "hash-1", onlyFirst: true } as const;
    expect(await store.accounts.create({ ...owner, id: "m" }, by())).toMatchObject({ ok: true });
    expect(await store.accounts.create({ ...owner, name: "Eve" }, by())).toMatchObject({ ok: false });
    await store.accounts.create({ id: "j", name: "José", role: "staff", passwordHash: "hash-2" }, by());
    const signIn = async (): Promise<string> => {
      const opened = await store.sessions.open("j", expiry, by());
      return opened.ok ? opened.value.token : "";
    };
    const token = await signIn();
    expect(token).toMatch(/^[\w-]{43}$/);
    expect(await store.sessions.find(token, early)).toMatchObject({ id: "j", role: "staff" });
    expect(JSON.stringify(await store.sessions.find(token, early))).not.toContain("hash-2");
    expect(await store.sessions.find(token, late)).toBeUndefined();
    expect(await store.sessions.find(`${token}x`, early)).toBeUndefined();
    await store.sessions.close(token);
    expect(await store.sessions.find(token, early)).toBeUndefined();
    const second = await signIn();
    expect(await store.accounts.update("j", 1, { passwordHash: "hash-3" }, by())).toMatchObject({ ok: true });
    expect(await store.sessions.find(second, early)).toBeUndefined();
    const third = await signIn();
    expect(await store.sessions.removeExpired(early)).toBe(0);
    expect(await store.sessions.removeExpired(late)).toBe(1);
    expect(await store.sessions.find(third, early)).toBeUndefined();
    await store.accounts.update("j", 2, { disabled: true }, by());
    expect(await store.sessions.open("j", expiry, by())).toMatchObject({ ok: false, reason: "missing" });
  });

  it("let a session last as long as it is used, but no longer than it may in all", async () => {
    const store = await freshStore();
    await store.accounts.create({ id: "j", name: "José", role: "staff", passwordHash: "hash" }, by());
    const opened = await store.sessions.open("j", expiry, by());
    const token = opened.ok ? opened.value.token : "";
    await store.sessions.extend(token, "2026-03-01T11:00:00.000Z", 86_400);
    expect(await store.sessions.find(token, "2026-03-01T11:59:00.000Z")).toMatchObject({ id: "j" });
    await store.sessions.extend(token, "2026-03-01T18:00:00.000Z", 86_400);
    expect(await store.sessions.find(token, "2026-03-01T17:59:00.000Z")).toMatchObject({ id: "j" });
    await store.sessions.extend(token, "2026-03-09T18:00:00.000Z", 86_400);
    expect(await store.sessions.find(token, "2026-03-02T08:59:59.999Z")).toMatchObject({ id: "j" });
    expect(await store.sessions.find(token, "2026-03-02T09:00:00.000Z")).toBeUndefined();
    await store.sessions.close(token);
    await store.sessions.extend(token, "2026-03-01T18:00:00.000Z", 86_400);
    expect(await store.sessions.find(token, early)).toBeUndefined();
  });

  it("tell names apart without capitals or accents, and always keep an owner", async () => {
    const store = await freshStore();
    await store.accounts.create({ id: "m", name: "Mara", role: "owner", passwordHash: "h" }, by());
    await store.accounts.create({ id: "j", name: "José", role: "staff", passwordHash: "h" }, by());
    expect(await store.accounts.create({ name: "jose", role: "staff", passwordHash: "h" }, by())).toMatchObject({
      problems: [{ path: "/name" }],
    });
    expect(await store.accounts.update("m", 1, { name: "JOSE" }, by())).toMatchObject({
      problems: [{ path: "/name" }],
    });
    expect(await store.accounts.findByName("JOSÉ")).toMatchObject({ id: "j", passwordHash: "h" });
    expect(await store.accounts.update("m", 1, { role: "staff" }, by())).toMatchObject({
      problems: [{ path: "/role" }],
    });
    expect(await store.accounts.update("m", 1, { disabled: true }, by())).toMatchObject({ ok: false });
    await store.accounts.update("j", 1, { role: "owner" }, by());
    expect(await store.accounts.update("m", 1, { disabled: true }, by())).toMatchObject({
      ok: true,
      value: { version: 2, disabled: true },
    });
    expect(await store.accounts.update("m", 1, { name: "M" }, by())).toMatchObject({
      reason: "conflict",
      current: { version: 2 },
    });
    expect((await store.accounts.list()).map(({ name }) => name)).toEqual(["José", "Mara"]);
  });
});

describe("a link for a customer", () => {
  it("opens one design until it expires or is revoked, and goes with the job", async () => {
    const store = await freshStore();
    await store.jobs.create({ id: "job", name: "Job" }, by());
    await store.designs.create({ id: "d", jobId: "job", name: "D", document: {} }, by());
    const made = await store.links.create({ kind: "view", designId: "d", expiresAt: expiry }, by());
    const token = made.ok ? made.value.token : "";
    expect(token).toMatch(/^[\w-]{43}$/);
    expect(await store.links.find(token, early)).toMatchObject({ jobId: "job", designId: "d", revision: null });
    expect(await store.links.find(token, late)).toBeUndefined();
    expect(await store.links.find("", early)).toBeUndefined();
    const [link] = await store.links.list("job");
    expect(JSON.stringify(link)).not.toContain(token);
    expect(await store.links.revoke(link?.id ?? "", by())).toMatchObject({ ok: true, value: { revokedAt: by().at } });
    expect(await store.links.find(token, early)).toBeUndefined();
    expect(await store.links.create({ kind: "view", expiresAt: "soon" }, by())).toMatchObject({
      problems: [{ path: "/expiresAt" }, { path: "/designId" }],
    });
    expect(
      await store.links.create({ kind: "view", designId: "d", revision: 2, expiresAt: expiry }, by()),
    ).toMatchObject({ reason: "missing" });
    expect(await store.jobs.remove("job", 1, by())).toMatchObject({ ok: true });
    expect(await store.links.list("job")).toEqual([]);
  });
});

describe("an intake link", () => {
  it("is given to one draft of an answer, which finds it again when it is closed, until it expires", async () => {
    const store = await freshStore();
    const made = await store.links.create({ kind: "intake", expiresAt: expiry }, by());
    if (!made.ok) throw new Error("no link was made");
    const { link, token } = made.value;
    expect(await Promise.all(["a", "b", "a"].map((draft) => store.links.giveTo(link.id, draft)))).toEqual([
      "given",
      "refused",
      "given",
    ]);
    expect(await store.links.giveTo(link.id, null)).toBe("refused");
    // An open link is found by its token alone.
    expect(await store.links.findAnswered(token, "a", early)).toBeUndefined();
    await store.links.revoke(link.id, by());
    expect(await store.links.findAnswered(token, "a", early)).toMatchObject({ id: link.id, kind: "intake" });
    expect(await store.links.findAnswered(token, "b", early)).toBeUndefined();
    expect(await store.links.findAnswered("", "a", early)).toBeUndefined();
    expect(await store.links.findAnswered(token, "a", late)).toBeUndefined();
    expect(await store.links.giveTo(link.id, "a")).toBe("answered");
    expect(await store.links.giveTo(link.id, "b")).toBe("refused");
  });

  it("answered without an id of a draft is found again by nobody, nor is one whose customer was erased", async () => {
    const store = await freshStore();
    const make = async () => {
      const made = await store.links.create({ kind: "intake", expiresAt: expiry }, by());
      if (!made.ok) throw new Error("no link was made");
      return made.value;
    };
    const [bare, erased] = [await make(), await make()];
    expect(await store.links.giveTo(bare.link.id, null)).toBe("given");
    await store.links.revoke(bare.link.id, by());
    expect(await store.links.giveTo(bare.link.id, null)).toBe("refused");
    expect(await store.links.findAnswered(bare.token, "none", early)).toBeUndefined();
    const { id } = erased.link;
    await store.customers.create({ id, name: "Ottoline" }, by());
    await store.jobs.create({ id, name: "Ottoline", customerId: id }, by());
    await store.links.giveTo(id, "a");
    await store.links.revoke(id, by());
    await store.eraseCustomer(id, by());
    expect(await store.links.findAnswered(erased.token, "a", early)).toBeUndefined();
  });
});

describe("waits at the door", () => {
  it("are kept by their keys, changed, forgotten one by one or by their age", async () => {
    const store = await freshStore();
    const [early, late] = [by("", 1).at, by("", 5).at];
    await store.waits.keep(
      new Map([
        ["name a", { failures: 5, openAt: late, lastAt: late }],
        ["address 192.0.2.7", { failures: 1, openAt: early, lastAt: early }],
      ]),
    );
    await store.waits.keep(new Map([["name a", { failures: 6, openAt: late, lastAt: late }]]));
    expect(await store.waits.list()).toEqual([
      { key: "address 192.0.2.7", failures: 1, openAt: early, lastAt: early },
      { key: "name a", failures: 6, openAt: late, lastAt: late },
    ]);
    expect(await store.waits.removeBefore(by("", 3).at)).toBe(1);
    await store.waits.keep(new Map([["name a", undefined]]));
    expect(await store.waits.list()).toEqual([]);
  });
});
