import { readFileSync } from "node:fs";
import { demoCatalogue, findPump } from "@tidewright/catalogue";
import type { ShopSettings } from "@tidewright/protocol";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { type ServedShop, serveShop } from "./servedShop.ts";

const reef = JSON.parse(readFileSync(new URL("../../../examples/waiting-room-reef.json", import.meta.url), "utf8")) as {
  power: { tariff: object };
};
const listed = findPump(demoCatalogue, "ferrow-c40")!.price;

// Everything is seen within a second or two on a quiet machine; other tests share this one.
describe.skipIf(maySkipBrowserTests())("what a shop says once for all its jobs", { timeout: 180_000 }, () => {
  let shop: ServedShop;
  beforeAll(async () => {
    shop = await serveShop();
  });
  afterAll(async () => {
    await shop?.stop();
  });
  afterEach(async () => {
    for (const context of shop.browser.contexts()) await context.close();
    await say({ currency: "EUR", tariff: null, units: {}, priceMultipliers: {} });
  });

  /** Opens a section of the drawer, unless it is open. */
  async function tab(page: Page, id: string): Promise<void> {
    await page.waitForSelector(`#tab-${id}`);
    if ((await page.locator(`.drawer[data-open] #tab-${id}[aria-selected="true"]`).count()) === 0)
      await page.click(`#tab-${id}`);
  }

  async function say(said: Partial<ShopSettings>): Promise<void> {
    const { settings, version } = await shop.api<{ settings: ShopSettings; version: number }>("GET", "api/settings");
    await shop.api("PUT", "api/settings", { ...settings, ...said }, { "If-Match": `"${version}"` });
  }

  it("its price of electricity is the default of a new design, with where it is from", async () => {
    await say({ tariff: { value: 0.27, unit: "EUR/kWh" } });
    const { page } = await shop.open("#/start");
    await page.fill("#start-tank-volume", "75 gal");
    await page.waitForSelector('.assumed:has-text("0.27")');
    expect(await page.getAttribute("#start-power-tariff", "placeholder")).toMatch(/^0\.27\sEUR\/kWh$/);
    expect(await page.textContent('.assumed:has-text("0.27")')).toContain("your shop’s price · your shop’s settings");
    expect(await page.isChecked('input[name="mains"][value="230 V, 50 Hz"]')).toBe(true);
    await page.click(".start-finish .action-strong");
    await page.waitForSelector(".drawer tbody tr");
    const designId = new URL(page.url()).searchParams.get("design");
    const kept = await shop.api<unknown>("GET", `api/designs/${designId}`);
    expect(JSON.stringify(kept)).toMatch(/"voltage":\{"value":230,.*"tariff":\{"value":0.27,"unit":"EUR\/kWh"\}/);
  });

  it("its factors price the pumps on the bench and in the list, and a change is there without a reload", async () => {
    await say({ priceMultipliers: { Ferrow: 0.5 } });
    const { designId } = await shop.makeDesign(reef);
    const { page } = await shop.open(`?design=${designId}`);
    const price = page.locator('.ranking-table tr[data-pump="ferrow-c40"] td').nth(7);
    await tab(page, "pumps");
    await price.waitFor();
    expect(await price.textContent()).toBe(String(listed / 2));
    await say({ priceMultipliers: { pump: 2 } });
    await page.waitForFunction(
      (text) =>
        document.querySelectorAll('.ranking-table tr[data-pump="ferrow-c40"] td')[7]?.textContent?.startsWith(text),
      String(listed * 2),
    );
    const list = await shop.open("#/pumps");
    await list.page.fill('input[type="search"]', "Ferrow C40");
    await list.page.waitForFunction(
      (text) => document.querySelector(".pump-price")?.textContent?.startsWith(text),
      (listed * 2).toFixed(2),
    );
  });

  it("a factor that nothing bears is kept and told, and a kind is read in the reader's language", async () => {
    const { page } = await shop.open("#/shop", { locale: "de-DE" });
    for (const [name, factor] of [
      ["Niemand & Co", "1,2"],
      ["Pumpe", "1,15"],
      ["ferrow", "0,9"],
    ] as const) {
      await page.fill(".factor-form input >> nth=0", name);
      await page.fill(".factor-form input >> nth=1", factor);
      await page.click(".factor-form button");
    }
    await page.waitForFunction(() => document.querySelectorAll(".factor").length === 3);
    expect(await page.locator(".factor span:first-child").allInnerTexts()).toEqual([
      "Niemand & Co keine Pumpe dieses Herstellers",
      "Pumpe",
      "Ferrow",
    ]);
    await expect
      .poll(async () => (await shop.api<{ settings: ShopSettings }>("GET", "api/settings")).settings.priceMultipliers)
      .toEqual({ "Niemand & Co": 1.2, pump: 1.15, Ferrow: 0.9 });
  });

  it("a job paid in dollars adds nothing to its euros, and says so in ranking and costs", async () => {
    const { designId } = await shop.makeDesign({
      ...reef,
      power: { ...reef.power, tariff: { value: 0.17, unit: "USD/kWh" } },
    });
    const { page } = await shop.open(`?design=${designId}`);
    await tab(page, "pumps");
    await page.waitForSelector(".ranking-table tbody tr");
    const heads = (await page.locator(".ranking-table th").allInnerTexts()).map((text) => text.replace(/\s+/g, " "));
    expect(heads).toEqual(
      expect.arrayContaining([expect.stringMatching(/A year USD/), expect.stringMatching(/Price EUR/)]),
    );
    expect(await page.textContent(".ranking-head")).toContain("Prices are in EUR, running costs in USD");
    expect(await page.textContent(".ranking-table tbody tr td:nth-child(9)")).toBe("–");
    await tab(page, "sheet");
    await page.waitForSelector('.pairs div:has-text("not added: EUR and USD")');
  });
});
