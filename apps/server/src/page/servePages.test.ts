import { writeFileSync } from "node:fs";
import { createServer, request } from "node:http";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import { brotliDecompressSync } from "node:zlib";
import { afterEach, describe, expect, it } from "vitest";
import { listen } from "../commands/listen.ts";
import { endServed, servedShop } from "../testing/servedShop.ts";
import { encodingFor } from "./servePages.ts";

afterEach(endServed);

/** Asks with a path and headers as they stand, which `fetch` would tidy up. */
function rawGet(address: string, path: string, headers: Record<string, string> = {}) {
  return new Promise<{ status: number; headers: NodeJS.Dict<string | string[]>; body: Buffer }>((done, failed) => {
    const { hostname, port } = new URL(address);
    request({ hostname, port, path, headers }, (response) => {
      const parts: Buffer[] = [];
      response.on("data", (part: Buffer) => parts.push(part));
      response.on("end", () =>
        done({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(parts) }),
      );
    })
      .on("error", failed)
      .end();
  });
}

describe("the built screens", () => {
  it("are served under a policy that lets in nothing foreign, and are for no search engine", async () => {
    const { ask } = await servedShop();
    const response = await ask("GET", "");
    expect(await response.text()).toContain("<title>bench</title>");
    const policy = response.headers.get("Content-Security-Policy") ?? "";
    for (const part of ["default-src 'self'", "script-src 'self'", "frame-ancestors 'none'", "base-uri 'none'"]) {
      expect(policy).toContain(part);
    }
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
    expect(response.headers.get("X-Robots-Tag")).toContain("noindex");
    expect(await (await ask("GET", "robots.txt")).text()).toBe("User-agent: *\nDisallow: /\n");
  });

  it("are compressed once, kept by browsers as long as their names hold, and asked for anew otherwise", async () => {
    const { address, folder } = await servedShop();
    const asset = await rawGet(address, "/assets/index-CVidKz9P.js", { "Accept-Encoding": "gzip, br" });
    expect(asset.headers["content-encoding"]).toBe("br");
    expect(asset.headers["cache-control"]).toContain("immutable");
    expect(asset.body.byteLength).toBeLessThan(500);
    expect(brotliDecompressSync(asset.body).toString()).toContain("water water");
    const page = await rawGet(address, "/");
    expect(page.headers["cache-control"]).toBe("no-cache");
    const tag = String(page.headers["etag"]);
    const again = await rawGet(address, "/", { "If-None-Match": tag });
    expect([again.status, again.body.byteLength]).toEqual([304, 0]);
    writeFileSync(join(folder, "web", "index.html"), "<title>built anew</title>");
    expect((await rawGet(address, "/", { "If-None-Match": tag })).status).toBe(200);
  });

  it.each([
    "/../secret.txt",
    "/%2e%2e/secret.txt",
    "/..%2fsecret.txt",
    "/%2e%2e%2fsecret.txt",
    "/assets/..%5c..%5c..%5csecret.txt",
    "/.hidden",
    "/%00",
    "/%",
  ])("keep what lies beside them to themselves: %s", async (path) => {
    const { address } = await servedShop();
    const response = await rawGet(address, path);
    expect(response.status).toBeGreaterThanOrEqual(400);
    expect(response.body.toString()).not.toBe("secret");
  });

  it.each([
    ["br, gzip", "br"],
    ["gzip;q=0.5, br;q=0", "gzip"],
    ["identity", undefined],
    [null, undefined],
  ])("take the better compression of %s", (header, best) => {
    expect(encodingFor(header)).toBe(best);
  });
});

describe("a server on loopback", () => {
  it("answers to this machine's own names only", async () => {
    const { address } = await servedShop();
    const port = new URL(address).port;
    const status = async (Host: string) => (await rawGet(address, "/healthz", { Host })).status;
    expect(await status("tank.example")).toBe(421);
    expect(await status(`192.168.1.20:${port}`)).toBe(421);
    expect(await status(`localhost:${port}`)).toBe(200);
    expect(await status(`[::1]:${port}`)).toBe(200);
  });

  it("takes the next free port where the wished one is taken, and listens to this machine only", async () => {
    const { app } = await servedShop();
    const taken = createServer();
    await new Promise<void>((resolve) => taken.listen(0, "127.0.0.1", resolve));
    const { port } = taken.address() as AddressInfo;
    const { server, port: bound } = await listen(app.hono, "127.0.0.1", port);
    try {
      expect(bound).toBeGreaterThan(port);
      expect((server.address() as AddressInfo).address).toBe("127.0.0.1");
    } finally {
      server.close();
      taken.close();
    }
  });
});
