import { readFileSync } from "node:fs";
import type { BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { keptWord } from "./keptBench.ts";
import { type ServedShop, serveShop } from "./servedShop.ts";

const example = JSON.parse(readFileSync(new URL("../../../examples/waiting-room-reef.json", import.meta.url), "utf8"));

describe.skipIf(maySkipBrowserTests())("a design that is kept", () => {
  let shop: ServedShop;
  beforeAll(async () => {
    shop = await serveShop();
  });
  afterAll(async () => {
    await shop?.stop();
  });

  afterEach(async () => {
    // A test that failed half-way must not take the others with it.
    if (!shop.runs()) await shop.restart();
  });

  it("is still there after a reload, and the edit before it can be taken back", async () => {
    const { designId } = await shop.makeDesign(example);
    const { page, context, complaints } = await opened(shop, designId);
    const before = await value(page, "Display", "/display/standHeight");
    await type(page, "Display", "/display/standHeight", "910 mm");
    await keptWord(page, "kept");
    await page.reload();
    await page.waitForSelector("[data-figure=flow]");
    expect(await value(page, "Display", "/display/standHeight")).toMatch(/^910\s?mm$/u);
    await page.click('button[aria-label^="Undo:"]');
    expect(await value(page, "Display", "/display/standHeight")).toBe(before);
    await keptWord(page, "kept");
    const { latest } = await shop.api<Latest>("GET", `api/designs/${designId}`);
    expect(latest.document.display.standHeight).toEqual(example.display.standHeight);
    expect(latest.number).toBe(3);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("waits on this device while the server is gone, also over a reload, and is kept when it is back", async () => {
    const { designId } = await shop.makeDesign(example);
    const { page, context } = await opened(shop, designId);
    await type(page, "Display", "/display/standHeight", "905 mm");
    await keptWord(page, "kept");
    // With the server gone the page itself will come from this device, once it is there.
    await page.waitForFunction(() => navigator.serviceWorker?.controller !== null, undefined, { timeout: 45_000 });
    await shop.kill();
    await type(page, "Display", "/display/standHeight", "915 mm");
    await type(page, "Display", "/display/length", "1490 mm");
    await keptWord(page, "2 changes wait on this device");
    await page.reload();
    await page.waitForSelector("[data-figure=flow]");
    expect(await value(page, "Display", "/display/standHeight")).toMatch(/^915\s?mm$/u);
    await keptWord(page, "wait on this device");
    await shop.restart();
    await page.evaluate(() => dispatchEvent(new Event("online")));
    await keptWord(page, "kept");
    const { latest } = await shop.api<Latest>("GET", `api/designs/${designId}`);
    expect(latest.document.display.standHeight).toEqual({ value: 915, unit: "mm" });
    expect(latest.document.display.length).toEqual({ value: 1490, unit: "mm" });
    await context.close();
  });

  it("shows what a second window of the same browser changes within a second or so, and joins edits of different parts", async () => {
    const { designId } = await shop.makeDesign(example);
    const one = await opened(shop, designId);
    const two = await opened(shop, designId, one.context);
    await type(one.page, "Display", "/display/standHeight", "905 mm");
    await type(two.page, "Display", "/display/length", "1480 mm");
    for (const { page } of [one, two]) {
      await holds(page, "/display/standHeight", /^905\s?mm$/u);
      await holds(page, "/display/length", /^1480\s?mm$/u);
      await keptWord(page, "kept");
    }
    await type(one.page, "Display", "/display/standHeight", "895 mm");
    await holds(two.page, "/display/standHeight", /^895\s?mm$/u);
    // Undo takes back one's own step and leaves the other's.
    await two.page.click('button[aria-label^="Undo:"]');
    await holds(two.page, "/display/standHeight", /^895\s?mm$/u);
    expect(await value(two.page, "Display", "/display/length")).not.toMatch(/^1480\s?mm$/u);
    await one.context.close();
  });

  it("keeps the later work apart as a variant where both changed the same, and says so", async () => {
    const { jobId, designId } = await shop.makeDesign(example);
    const [one, two] = [await opened(shop, designId), await opened(shop, designId)];
    await two.context.setOffline(true);
    await type(two.page, "Display", "/display/standHeight", "880 mm");
    await keptWord(two.page, "1 change waits on this device");
    await type(one.page, "Display", "/display/standHeight", "920 mm");
    await keptWord(one.page, "kept");
    await two.context.setOffline(false);
    await two.page.waitForSelector(".sheet-apart[open]");
    expect(await two.page.textContent(".sheet-apart")).toMatch(/at the same time/);
    const { items } = await shop.api<{ items: { id: string; variantOf: unknown }[] }>(
      "GET",
      `api/jobs/${jobId}/designs`,
    );
    const variant = items.find(({ id }) => id !== designId)!;
    expect(variant.variantOf).toEqual({ designId, revision: 1 });
    const mine = await shop.api<Latest>("GET", `api/designs/${variant.id}`);
    const theirs = await shop.api<Latest>("GET", `api/designs/${designId}`);
    expect(mine.latest.document.display.standHeight.value).toBe(880);
    expect(theirs.latest.document.display.standHeight.value).toBe(920);
    expect(two.page.url()).toContain(`design=${variant.id}`);
    // The way to both, side by side.
    await two.page.click(".sheet-apart a[href*='#/compare/']");
    await two.page.waitForSelector(".compare-parts [data-difference='/display/standHeight']");
    await one.context.close();
    await two.context.close();
  });

  it("lists its versions, shows an older one and goes back to it as a step of its own", async () => {
    const { designId } = await shop.makeDesign(example);
    const { page, context } = await opened(shop, designId);
    await type(page, "Display", "/display/standHeight", "930 mm");
    await keptWord(page, "kept");
    await page.click(".tool:text-is('Versions')");
    const first = page.locator('.version[data-version="1"]');
    await first.locator("button:text-is('Name')").click();
    await first.locator("input").fill("As measured");
    await first.locator("input").press("Enter");
    await first.locator(".version-title:has-text('As measured')").waitFor();
    await first.locator("button:text-is('Look')").click();
    await page.waitForSelector(".version-drawing svg");
    await page.click(".version-banner button:text-is('Go back to this')");
    await page.waitForSelector('.version[data-version="3"]');
    const { latest } = await shop.api<Latest>("GET", `api/designs/${designId}`);
    expect(latest.document.display.standHeight).toEqual(example.display.standHeight);
    await context.close();
  });
});

interface Latest {
  readonly latest: { readonly number: number; readonly at: string; readonly document: typeof example };
}

async function opened(shop: ServedShop, designId: string, context?: BrowserContext) {
  const shown = await shop.open(`?design=${designId}`, context);
  await shown.page.waitForSelector("[data-figure=flow]");
  return shown;
}

async function section(page: Page, name: string): Promise<void> {
  const button = page.locator(".section-index button", { hasText: name }).first();
  if ((await button.getAttribute("aria-current")) === null) await button.click();
}

async function value(page: Page, name: string, path: string): Promise<string> {
  await section(page, name);
  return page.inputValue(`.inspector [data-path="${path}"]`);
}

async function type(page: Page, name: string, path: string, text: string): Promise<void> {
  await section(page, name);
  const field = page.locator(`.inspector [data-path="${path}"]`);
  await field.fill(text);
  await field.press("Enter");
}

/** Waits until a field of the part in hand says what is expected. */
async function holds(page: Page, path: string, wanted: RegExp): Promise<void> {
  await section(page, "Display");
  await page.waitForFunction(
    ([selector, source]) =>
      new RegExp(source, "u").test(document.querySelector<HTMLInputElement>(selector)?.value ?? ""),
    [`.inspector [data-path="${path}"]`, wanted.source] as const,
    { timeout: 10_000 },
  );
}
