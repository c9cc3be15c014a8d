import { createServer } from "node:http";
import { type AddressInfo, connect } from "node:net";
import { getRequestListener } from "@hono/node-server";
import { type Routes, routes } from "@tidewright/protocol";
import { afterEach, describe, expect, it } from "vitest";
import { buildApp } from "../buildApp.ts";
import { type FreshApp, freshApp, host } from "../testing/freshApp.ts";
import { freshStore, removeFresh } from "../testing/freshDoors.ts";
import { sampleRequest } from "../testing/sampleRequests.ts";

afterEach(removeFresh);

/** Devices and senses that a page could ask for, by the names that every browser with a policy knows.
 *  Source: W3C Permissions Policy, list of policy-controlled features (features.md), standardized features. */
const standardized = new Set(
  "accelerometer ambient-light-sensor camera display-capture geolocation gyroscope hid idle-detection magnetometer microphone midi payment screen-wake-lock serial usb".split(
    " ",
  ),
);

/** The headers of a closed house. Source: OWASP Secure Headers Project, recommended set; CSP3. */
function expectClosed(response: Response, what: string): void {
  const headers = Object.fromEntries(response.headers);
  const policy = headers["content-security-policy"] ?? "";
  expect({ what, nosniff: headers["x-content-type-options"] }).toEqual({ what, nosniff: "nosniff" });
  expect({ what, frame: headers["x-frame-options"] }).toEqual({ what, frame: "DENY" });
  expect({ what, referrer: headers["referrer-policy"] }).toEqual({ what, referrer: "no-referrer" });
  expect({ what, corp: headers["cross-origin-resource-policy"] }).toEqual({ what, corp: "same-origin" });
  expect({ what, opener: headers["cross-origin-opener-policy"] }).toEqual({ what, opener: "same-origin" });
  expect({ what, robots: headers["x-robots-tag"] }).toMatchObject({ what, robots: expect.stringContaining("noindex") });
  const denied = (headers["permissions-policy"] ?? "").split(", ").map((one) => one.replace(/=\(\)$/, ""));
  expect(denied).toEqual(expect.arrayContaining(["camera", "geolocation", "microphone", "usb"]));
  // A name that a browser does not know denies nothing and fills the console of every page.
  expect(denied.filter((name) => !standardized.has(name))).toEqual([]);
  expect(policy).toMatch(/(^|; )default-src '(self|none)'/);
  expect(policy).not.toMatch(/unsafe|\*|http:/);
  for (const name of ["server", "x-powered-by"]) expect(headers[name]).toBeUndefined();
}

describe("a server that listens on this machine alone", () => {
  it("lets nobody in without an account where it goes by a name of the network: a proxy's requests all come from here", async () => {
    const store = await freshStore();
    const wanted = (...names: string[]) =>
      buildApp({ store, host: "127.0.0.1", names, web: "/nowhere" }).doors.accountsWanted;
    expect([wanted(), wanted("localhost"), wanted("localhost", "shop.lan")]).toEqual([false, false, true]);
  });
});

describe("every answer", () => {
  it("bears the headers of a closed house, be it good, refused, missing or broken", async () => {
    for (const id of Object.keys(routes) as (keyof Routes)[]) {
      const fresh = await freshApp();
      const { access } = routes[id];
      const as = access === "share" || access === "intake" ? access : "owner";
      for (const who of ["nobody", as] as const) {
        const request = await sampleRequest(fresh, id);
        const response = await fresh.ask(request.path, { ...request, as: who });
        if (who === as && id !== "firstOwner") expect({ id, good: response.status < 300 }).toEqual({ id, good: true });
        await response.body?.cancel();
        expectClosed(response, `${id} ${response.status}`);
        expect(response.headers.get("Cache-Control")).toMatch(/no-store|private, no-cache/);
      }
    }
    const fresh = await freshApp();
    for (const path of [
      "/",
      "/share.html",
      "/nothing/here",
      "/api/nothing",
      "/healthz",
      "/robots.txt",
      "/api/jobs/x",
    ]) {
      expectClosed(await fresh.ask(path, { as: "owner" }), path);
    }
    const bad = await fresh.ask("/api/customers", {
      method: "POST",
      as: "owner",
      headers: { "Content-Type": "application/json" },
    });
    expect(bad.status).toBe(422);
    expectClosed(bad, "bad body");
  });

  it("promises HTTPS behind TLS alone, and tells nothing of the program's inside when it fails", async () => {
    const plain = await (await freshApp()).ask("/healthz");
    expect(plain.headers.get("Strict-Transport-Security")).toBeNull();
    const fresh = await freshApp({ behindTls: true });
    expect((await fresh.ask("/healthz")).headers.get("Strict-Transport-Security")).toMatch(/max-age=\d{8}/);
    Object.assign(fresh.store.jobs, {
      search: () => {
        throw new Error("SELECT secret FROM inside at /srv/tidewright/data");
      },
    });
    const broken = await fresh.ask("/api/jobs", { as: "owner" });
    expect(broken.status).toBe(500);
    expect(await broken.text()).not.toMatch(/SELECT|srv|secret|\.ts/);
    expectClosed(broken, "broken");
  });

  it("of a customer's door asks search engines and archives to stay away", async () => {
    const fresh = await freshApp();
    const robots = await fresh.ask("/robots.txt");
    expect(await robots.text()).toMatch(/Disallow: \/\s/);
    const shared = await fresh.ask("/api/shared", { as: "share" });
    expect(shared.headers.get("X-Robots-Tag")).toMatch(/noindex.*noarchive/);
    expect(shared.headers.get("Referrer-Policy")).toBe("no-referrer");
  });
});

/** Sends bytes as they are and answers what came back. */
async function raw(fresh: FreshApp, lines: readonly string[]): Promise<string> {
  const server = createServer(getRequestListener(fresh.app.hono.fetch));
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  try {
    return await new Promise<string>((resolve, reject) => {
      const socket = connect((server.address() as AddressInfo).port, "127.0.0.1");
      let text = "";
      socket.on("data", (data) => {
        text += data.toString("latin1");
      });
      socket.on("end", () => resolve(text));
      socket.on("close", () => resolve(text));
      socket.on("error", reject);
      socket.setTimeout(3000, () => socket.destroy());
      socket.write(`${[...lines, "Connection: close", "", ""].join("\r\n")}`, "latin1");
    });
  } finally {
    server.closeAllConnections();
    server.close();
  }
}

describe("a request under another name", () => {
  it("gets nothing, so that a name pointed at this address reads nothing", async () => {
    const fresh = await freshApp();
    for (const name of ["evil.example", "192.168.1.20.evil.example", "192.168.1.21", "evil.example:4870"]) {
      const response = await fresh.ask("/api/jobs", { as: "owner", host: name });
      expect({ name, status: response.status }).toEqual({ name, status: 421 });
      expectClosed(response, name);
      expect(await response.text()).not.toContain("evil");
    }
    expect((await fresh.ask("/api/jobs", { as: "owner", host })).status).toBe(200);
  });

  it("is not let in by forwarding headers, and no answer repeats the name it was asked by", async () => {
    const fresh = await freshApp();
    const headers = {
      "X-Forwarded-Host": "evil.example",
      Forwarded: "host=evil.example;proto=https;for=127.0.0.1",
      "X-Original-URL": "/api/accounts",
      "X-Rewrite-URL": "/api/accounts",
      "X-HTTP-Method-Override": "DELETE",
      "X-Forwarded-For": "127.0.0.1",
      "X-Real-IP": "127.0.0.1",
    };
    expect((await fresh.ask("/api/accounts", { headers })).status).toBe(401);
    for (const id of ["createLink", "session", "shared", "settings"] as const) {
      const request = await sampleRequest(fresh, id);
      const as = id === "shared" ? "share" : "owner";
      const response = await fresh.ask(request.path, { ...request, as, headers });
      expect(response.status).toBeLessThan(300);
      expect(await response.text()).not.toContain("evil");
      expect(response.headers.get("Location")).toBeNull();
    }
  });

  it("twice, missing, spelt oddly or in the request line is refused at the door", async () => {
    const fresh = await freshApp({ listensOn: "127.0.0.1" });
    const first = async (lines: readonly string[]) => (await raw(fresh, lines)).split("\r\n")[0];
    expect(await first(["GET /api/jobs HTTP/1.1", "Host: 127.0.0.1"])).toMatch(/ 200 /);
    const refused: readonly (readonly string[])[] = [
      ["GET /api/jobs HTTP/1.1"],
      ["GET /api/jobs HTTP/1.1", "Host: evil.example"],
      ["GET /api/jobs HTTP/1.1", "Host: evil.example@127.0.0.1"],
      ["GET /api/jobs HTTP/1.1", "Host: 127.0.0.1@evil.example"],
      ["GET /api/jobs HTTP/1.1", "Host: 127.0.0.1#.evil.example"],
      ["GET /api/jobs HTTP/1.1", "Host: evil.example/127.0.0.1"],
      ["GET /api/jobs HTTP/1.1", "Host: "],
      ["GET http://evil.example/api/jobs HTTP/1.1", "Host: evil.example"],
      ["GET /api/jobs HTTP/1.1", "Host: evil.example", "Host: 127.0.0.1"],
    ];
    for (const lines of refused) {
      const status = await first(lines);
      expect({ lines, status }).toEqual({ lines, status: expect.stringMatching(/ 4\d\d /) });
    }
    // A request line with a foreign address and our name in Host: whatever is answered, the foreign name is not.
    const absolute = await raw(fresh, ["GET http://evil.example/api/session HTTP/1.1", "Host: 127.0.0.1"]);
    expect(absolute).not.toContain("evil");
  });

  it("with its head split by line ends or two lengths is no second request", async () => {
    const fresh = await freshApp({ listensOn: "127.0.0.1" });
    const split = await raw(fresh, [
      "POST /api/session HTTP/1.1",
      "Host: 127.0.0.1",
      "X-Tidewright: 1",
      "Content-Length: 5",
      "Transfer-Encoding: chunked",
      "",
      "0",
      "",
      "GET /api/accounts HTTP/1.1",
      "Host: 127.0.0.1",
    ]);
    expect(split).toMatch(/^HTTP\/1\.1 400 /);
    expect(split.match(/HTTP\/1\.1 /g)).toHaveLength(1);
  });
});
