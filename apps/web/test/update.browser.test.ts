import { randomUUID } from "node:crypto";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { example, heightShown, keptWord, typeHeight } from "./keptBench.ts";
import { type ServedShop, serveShop } from "./servedShop.ts";

describe.skipIf(maySkipBrowserTests())("a newer build of the pages", () => {
  let shop: ServedShop;
  const folder = mkdtempSync(join(tmpdir(), "tidewright-newer-"));
  beforeAll(async () => {
    shop = await serveShop();
    cpSync(shop.web, folder, { recursive: true });
    await shop.restart("--web", folder);
  });
  afterAll(async () => {
    await shop?.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  /** The next build: a page that can be told from the one before, and a service worker that knows it. */
  function buildAnew(mark: string): void {
    const page = join(folder, "index.html");
    writeFileSync(page, readFileSync(page, "utf8").replace("<title>", `<meta name="build" content="${mark}"><title>`));
    const worker = join(folder, "sw.js");
    const before = readFileSync(worker, "utf8");
    const after = before.replace(/(url:"index\.html",revision:"|revision:"(?=[^"]*",url:"index\.html"))/u, "$1next");
    expect(after).not.toBe(before);
    writeFileSync(worker, after);
  }

  it("is offered, waits for what is not kept yet, is taken by hand, and every edit is still there", {
    timeout: 100_000,
    retry: 3,
  }, async () => {
    const { designId } = await shop.makeDesign(example);
    const { page, context } = await shop.open(`?design=${designId}`);
    await page.waitForSelector("[data-figure=flow]");
    await typeHeight(page, "905 mm");
    await keptWord(page, "kept");
    await page.waitForFunction(() => navigator.serviceWorker?.controller !== null, undefined, { timeout: 45_000 });
    expect(await page.locator(".update-line").count()).toBe(0);
    // Another mark where the test is tried once more: the folder keeps the one before.
    const mark = `next-${randomUUID()}`;
    buildAnew(mark);
    await shop.restart();
    await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
    await page.waitForSelector(".update-line");
    await context.setOffline(true);
    await typeHeight(page, "915 mm");
    await keptWord(page, "waits on this device");
    expect(await page.textContent(".update-line")).toContain("once every change is kept");
    expect(await page.isDisabled(".update-line .action-strong")).toBe(true);
    expect(await page.locator(`meta[content="${mark}"]`).count()).toBe(0);
    await context.setOffline(false);
    await keptWord(page, "kept");
    await page.click(".update-line .action-strong");
    await page.waitForSelector(`meta[content="${mark}"]`, { state: "attached", timeout: 20_000 });
    await page.waitForSelector("[data-figure=flow]");
    expect(await heightShown(page)).toMatch(/^915\s?mm$/u);
    expect(await page.locator(".update-line").count()).toBe(0);
    expect(await shop.api("GET", `api/designs/${designId}`)).toMatchObject({
      latest: { number: 3, document: { display: { standHeight: { value: 915, unit: "mm" } } } },
    });
    await context.close();
  });
});
