import { afterEach, describe, expect, it } from "vitest";
import { buildApp } from "../buildApp.ts";
import { type FreshApp, freshApp, samplePassword } from "../testing/freshApp.ts";
import { freshDoors, removeFresh } from "../testing/freshDoors.ts";

afterEach(removeFresh);

const signIn = (fresh: FreshApp, cookie?: string, name = "One owner", password = samplePassword) =>
  fresh.ask("/api/session", { method: "POST", json: { name, password }, headers: { Cookie: cookie } });
const cookieOf = (response: Response) => response.headers.get("Set-Cookie")?.split(";")[0];

describe("a session over HTTP", () => {
  it("has a cookie for no script, no foreign page and, behind TLS, no plain connection", async () => {
    const plain = await signIn(await freshApp());
    expect(plain.headers.get("Set-Cookie")).toMatch(
      /^tidewright=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict; Max-Age=2592000$/,
    );
    const fresh = await freshApp({ behindTls: true });
    const tls = await signIn(fresh);
    expect(tls.headers.get("Set-Cookie")).toMatch(
      /^__Host-tidewright=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict; Secure; Max-Age=2592000$/,
    );
    // Domain would hand it to neighbours, and forbid the prefix.
    expect(tls.headers.get("Set-Cookie")).not.toMatch(/Domain/i);
    expect(await tls.text()).not.toContain(cookieOf(tls)!.split("=")[1]);
  });

  it("is never one that the browser brought along", async () => {
    const fresh = await freshApp();
    const planted = `tidewright=${"P".repeat(43)}`;
    const first = cookieOf(await signIn(fresh, planted))!;
    expect(first).not.toBe(planted);
    expect((await fresh.ask("/api/jobs", { headers: { Cookie: planted } })).status).toBe(401);
    const second = cookieOf(await signIn(fresh, first))!;
    expect((await fresh.ask("/api/jobs", { headers: { Cookie: first } })).status).toBe(401);
    expect((await fresh.ask("/api/jobs", { headers: { Cookie: second } })).status).toBe(200);
    // A cookie beside the true one, as a neighbour on a plain host can set, opens nothing.
    const both = await fresh.ask("/api/jobs", { headers: { Cookie: `${planted}; ${second}` } });
    expect(both.status).toBe(401);
  });

  it("ends on the server when it is signed out, and the cookie goes", async () => {
    const fresh = await freshApp();
    const cookie = cookieOf(await signIn(fresh))!;
    const out = await fresh.ask("/api/session", { method: "DELETE", headers: { Cookie: cookie } });
    expect(await out.json()).toMatchObject({ who: "nobody" });
    expect(out.headers.get("Set-Cookie")).toBe("tidewright=; Path=/; HttpOnly; SameSite=Strict; Max-Age=0");
    expect((await fresh.ask("/api/jobs", { headers: { Cookie: cookie } })).status).toBe(401);
  });

  it("does as much as the account may now, not as much as it might when it began", async () => {
    const fresh = await freshApp();
    const { id } = fresh.accounts.staff;
    const lower = (json: unknown, version: number) =>
      fresh.ask(`/api/accounts/${id}`, { method: "PATCH", as: "owner", json, version });
    expect((await fresh.ask("/api/customers", { method: "POST", as: "staff", json: { name: "A" } })).status).toBe(201);
    expect((await lower({ role: "readOnly" }, 1)).status).toBe(200);
    expect((await fresh.ask("/api/jobs", { as: "staff" })).status).toBe(401);
    const again = cookieOf(await signIn(fresh, undefined, "One staff"))!;
    expect((await fresh.ask("/api/jobs", { headers: { Cookie: again } })).status).toBe(200);
    const refused = await fresh.ask("/api/customers", {
      method: "POST",
      json: { name: "B" },
      headers: { Cookie: again },
    });
    expect(refused.status).toBe(403);
    expect((await lower({ disabled: true }, 2)).status).toBe(200);
    expect((await fresh.ask("/api/jobs", { headers: { Cookie: again } })).status).toBe(401);
    expect((await signIn(fresh, undefined, "One staff")).status).toBe(401);
  });

  it("never carries a hash or a secret in any answer, audit included", async () => {
    const fresh = await freshApp();
    const cookie = cookieOf(await signIn(fresh))!;
    await signIn(fresh, undefined, "One owner", "wrong wrong wrong");
    const texts: string[] = [];
    for (const path of ["/api/accounts", "/api/audit", "/api/links", "/api/session", "/api/settings"]) {
      texts.push(await (await fresh.ask(path, { headers: { Cookie: cookie } })).text());
    }
    const all = texts.join("\n");
    expect(all).toMatch(/signInFailed/);
    for (const secret of [...Object.values(fresh.secrets), cookie.split("=")[1]!, samplePassword, "wrong wrong"]) {
      if (secret !== "") expect(all).not.toContain(secret);
    }
    expect(all).not.toMatch(/argon2|passwordHash|tokenHash/);
  });
});

describe("guessing over HTTP", () => {
  it("is answered with 429 and the seconds to wait, from one address and from many", async () => {
    const fresh = await freshApp();
    const guess = (from: string, forwarded?: string) =>
      fresh.ask("/api/session", {
        method: "POST",
        json: { name: "One owner", password: "wrong wrong wrong" },
        from,
        headers: { "X-Forwarded-For": forwarded },
      });
    const statuses: number[] = [];
    for (let turn = 0; turn < 7; turn++) statuses.push((await guess(`192.168.1.${turn}`, `10.0.0.${turn}`)).status);
    expect(statuses).toEqual([401, 401, 401, 401, 401, 429, 429]);
    const waiting = await guess("192.168.1.99");
    expect(Number(waiting.headers.get("Retry-After"))).toBe(30);
    expect(await waiting.json()).toMatchObject({ status: 429, type: "urn:tidewright:problem:too-many" });
    expect(waiting.headers.get("Content-Type")).toBe("application/problem+json");
  });

  it("cannot hide behind a header, neither without a proxy nor before the last entry that it wrote", async () => {
    for (const behindTls of [false, true]) {
      const fresh = await freshApp({ behindTls });
      const statuses: number[] = [];
      for (let turn = 0; turn < 22; turn++) {
        const forwarded = behindTls ? `10.0.0.${turn}, 203.0.113.5` : `10.0.0.${turn}`;
        const response = await fresh.ask("/api/session", {
          method: "POST",
          json: { name: `name ${turn}`, password: "wrong wrong wrong" },
          headers: { "X-Forwarded-For": forwarded },
        });
        statuses.push(response.status);
      }
      expect({ behindTls, limited: statuses.filter((each) => each === 429).length }).toEqual({ behindTls, limited: 2 });
    }
  });
});

it("the first owner is made over HTTP once, and the session then says so", async () => {
  const { doors, store } = await freshDoors();
  const { hono } = buildApp({ store, host: "0.0.0.0", web: "/nowhere", doors });
  const ask = (path: string, method = "GET", json?: unknown, cookie = "") =>
    hono.request(`http://127.0.0.1${path}`, {
      method,
      headers: { "X-Tidewright": "1", "Content-Type": "application/json", Host: "127.0.0.1", Cookie: cookie },
      ...(json === undefined ? {} : { body: JSON.stringify(json) }),
    });
  expect(await (await ask("/api/session")).json()).toMatchObject({ who: "nobody", firstOwnerWanted: true });
  const owner = { token: doors.firstOwner.secret, name: "Mara", password: samplePassword };
  expect((await ask("/api/first-owner", "POST", { ...owner, token: "x" })).status).toBe(403);
  expect((await ask("/api/first-owner", "POST", { ...owner, password: "short" })).status).toBe(422);
  const made = await ask("/api/first-owner", "POST", owner);
  expect(made.status).toBe(201);
  const cookie = made.headers.get("Set-Cookie")!.split(";")[0]!;
  expect(await (await ask("/api/session", "GET", undefined, cookie)).json()).toMatchObject({
    role: "owner",
    name: "Mara",
  });
  expect((await ask("/api/first-owner", "POST", { ...owner, name: "Eve" })).status).toBe(403);
  expect(await (await ask("/api/session")).json()).toMatchObject({ who: "nobody", firstOwnerWanted: false });
});
