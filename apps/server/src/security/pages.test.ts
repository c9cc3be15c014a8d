import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type As, type FreshApp, freshApp } from "../testing/freshApp.ts";
import { removeFresh } from "../testing/freshDoors.ts";

let folder = "";
const page = '<!doctype html><title>Bench</title><div id="bench"></div>';

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tidewright-pages-"));
  const web = join(folder, "web");
  mkdirSync(join(web, ".server"), { recursive: true });
  writeFileSync(join(web, "index.html"), page);
  writeFileSync(join(web, "share.html"), page);
  writeFileSync(
    join(web, ".server", "renderFirstPicture.js"),
    "exports.renderFirstPicture = ({ name }) => '<svg>tank of ' + name + '</svg>';",
  );
  writeFileSync(join(folder, "outside.txt"), "outside");
});
afterEach(async () => {
  await removeFresh();
  rmSync(folder, { recursive: true, force: true });
});

const served = async (): Promise<FreshApp & { readonly end: () => Promise<void> }> => {
  const fresh = await freshApp({ web: join(folder, "web") });
  return { ...fresh, end: fresh.app.closeThreads };
};

describe("a page", () => {
  it("holds the picture of a design for those alone who may look, and for no cache", async () => {
    const fresh = await served();
    const [design] = await fresh.store.designs.ofJob(fresh.sharedJob.id);
    const address = `/?design=${design!.id}`;
    for (const as of ["nobody", "share", "intake"] as As[]) {
      const response = await fresh.ask(address, { as });
      expect({ as, status: response.status }).toEqual({ as, status: 200 });
      expect(await response.text()).toBe(page);
    }
    for (const as of ["readOnly", "staff", "owner"] as As[]) {
      const response = await fresh.ask(address, { as });
      expect(await response.text()).toContain("<svg>tank of ");
      expect(response.headers.get("Cache-Control")).toBe("no-store");
      expect(response.headers.get("Content-Security-Policy")).toMatch(/script-src 'self'(;|$)/);
      expect(response.headers.get("Content-Security-Policy")).not.toMatch(/unsafe/);
    }
    const other = await fresh.ask(`/share.html?design=${design!.id}`, { as: "owner" });
    expect(await other.text()).toBe(page);
    await fresh.end();
  });

  it("repeats nothing of its address, its query or a header", async () => {
    const fresh = await served();
    const marks = ["<script>alert(1)</script>", '"><img src=x onerror=alert(1)>', "$&$`", "../../outside.txt"];
    for (const mark of marks) {
      for (const path of [`/?design=${encodeURIComponent(mark)}`, `/?try=${encodeURIComponent(mark)}`]) {
        const response = await fresh.ask(path, { as: "owner", headers: { Referer: mark, "User-Agent": mark } });
        expect(await response.text()).toBe(page);
      }
    }
    await fresh.end();
  });

  it("is one of the built ones: no path leads out of their folder or into its hidden part", async () => {
    const fresh = await served();
    for (const path of [
      "/../outside.txt",
      "/..%2foutside.txt",
      "/%2e%2e/outside.txt",
      "/%2e%2e%2foutside.txt",
      "/..%5coutside.txt",
      "/....//outside.txt",
      "//etc/passwd",
      "/%00",
      "/index.html%00.png",
      "/.server/renderFirstPicture.js",
      "/%2eserver/renderFirstPicture.js",
      "/.%73erver/renderFirstPicture.js",
      "/x/../.server/renderFirstPicture.js",
      `/${encodeURIComponent(join(folder, "outside.txt"))}`,
    ]) {
      const response = await fresh.ask(path, { as: "owner" });
      const text = await response.text();
      expect({ path, found: /^outside$|renderFirstPicture =|root:/.test(text) }).toEqual({ path, found: false });
      expect({ path, status: response.status }).toEqual({ path, status: 404 });
      expect(response.headers.get("X-Content-Type-Options")).toBe("nosniff");
    }
    await fresh.end();
  });
});
