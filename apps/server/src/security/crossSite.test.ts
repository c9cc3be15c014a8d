import { type Routes, routes } from "@tidewright/protocol";
import { afterEach, describe, expect, it } from "vitest";
import { freshApp, host, samplePassword } from "../testing/freshApp.ts";
import { removeFresh } from "../testing/freshDoors.ts";
import { sampleRequest } from "../testing/sampleRequests.ts";

afterEach(removeFresh);

const own = `http://${host}`;
const changing = (Object.keys(routes) as (keyof Routes)[]).filter((id) => routes[id].method !== "GET");

describe("a page of another site, with an owner's cookie on the way", () => {
  it("changes nothing by any route, be it by form, fetch or a page without origin", async () => {
    const fresh = await freshApp();
    const before = JSON.stringify(await everything(fresh.store));
    const foreign: Readonly<Record<string, string | undefined>>[] = [
      { "X-Tidewright": undefined },
      { "X-Tidewright": undefined, "Content-Type": "text/plain" },
      { "X-Tidewright": undefined, "Content-Type": "application/x-www-form-urlencoded" },
      { Origin: "http://evil.example" },
      { Origin: "null" },
      { Origin: "http://192.168.1.20:4871" },
      { Origin: `${own}.evil.example` },
      { "Sec-Fetch-Site": "cross-site" },
      { "Sec-Fetch-Site": "same-site" },
    ];
    expect(changing.length).toBeGreaterThan(20);
    for (const id of changing) {
      const as = routes[id].access === "intake" ? "intake" : "owner";
      for (const headers of foreign) {
        // An address of nothing: a request that got past the door would be answered otherwise than with 403.
        const path = routes[id].path.replace(/\{\w+\}/g, "1");
        const { status } = await fresh.ask(path, { method: routes[id].method, as, json: {}, headers });
        expect({ id, headers, status }).toEqual({ id, headers, status: 403 });
      }
    }
    expect(JSON.stringify(await everything(fresh.store))).toBe(before);
  });

  it("reads nothing either, and no answer invites another origin", async () => {
    const fresh = await freshApp();
    for (const site of ["cross-site", "same-site"]) {
      const { status } = await fresh.ask("/api/customers", { as: "owner", headers: { "Sec-Fetch-Site": site } });
      expect(status).toBe(403);
    }
    for (const sent of [
      { as: "owner" as const, headers: { Origin: "http://evil.example" } },
      { method: "OPTIONS", headers: { Origin: "http://evil.example", "Access-Control-Request-Method": "PUT" } },
      { as: "owner" as const },
    ]) {
      const response = await fresh.ask("/api/customers", sent);
      const names = [...response.headers.keys()];
      expect(names.filter((name) => name.startsWith("access-control-"))).toEqual([]);
    }
  });

  it("cannot sign a visitor in under another name", async () => {
    const fresh = await freshApp();
    const json = { name: "One staff", password: samplePassword };
    for (const headers of [{ Origin: "http://evil.example" }, { "X-Tidewright": undefined }]) {
      const response = await fresh.ask("/api/session", { method: "POST", json, headers });
      expect(response.status).toBe(403);
      expect(response.headers.get("Set-Cookie")).toBeNull();
    }
  });

  it("is told from our own pages, which get through with the same cookie", async () => {
    const fresh = await freshApp();
    const headers = { Origin: own, "Sec-Fetch-Site": "same-origin" };
    for (const id of ["createCustomer", "putFileOfShop", "createLink"] as const) {
      const request = await sampleRequest(fresh, id);
      expect((await fresh.ask(request.path, { ...request, as: "owner", headers })).status).toBe(201);
    }
    const tls = await freshApp({ behindTls: true, listensOn: "127.0.0.1" });
    const request = await sampleRequest(tls, "createCustomer");
    const statusFor = async (origin: string) =>
      (await tls.ask(request.path, { ...request, as: "owner", host: "127.0.0.1:4870", headers: { Origin: origin } }))
        .status;
    expect(await statusFor("http://127.0.0.1:4870")).toBe(403);
    expect(await statusFor("https://127.0.0.1:4870")).toBe(201);
  });

  it("gets nothing from a server on this machine, where no cookie is wanted at all", async () => {
    const fresh = await freshApp({ listensOn: "127.0.0.1" });
    const here = { from: "127.0.0.1", host: "127.0.0.1:4870" };
    const request = await sampleRequest(fresh, "createCustomer");
    expect((await fresh.ask(request.path, { ...request, ...here })).status).toBe(201);
    for (const headers of [
      { Origin: "http://localhost:3000" },
      { "Sec-Fetch-Site": "cross-site" },
      { "X-Tidewright": undefined },
    ]) {
      expect((await fresh.ask(request.path, { ...request, ...here, headers })).status).toBe(403);
    }
    // A name of the attacker's that points at this machine is the attacker's own origin.
    const rebound = { from: "127.0.0.1", host: "evil.example:4870", headers: { Origin: "http://evil.example:4870" } };
    expect((await fresh.ask(request.path, { ...request, ...rebound })).status).toBe(421);
    expect((await fresh.ask("/api/customers", rebound)).status).toBe(421);
  });
});

type Store = Awaited<ReturnType<typeof freshApp>>["store"];
const everything = async (store: Store) => [
  await store.customers.search(),
  await store.jobs.search(),
  await store.accounts.list(),
  await store.links.list(null),
  await store.settings.read(),
  await store.files.list(null),
];
