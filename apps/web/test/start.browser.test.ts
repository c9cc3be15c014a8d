import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { barriers } from "./barriers.ts";
import { type ServedShop, serveShop } from "./servedShop.ts";

describe.skipIf(maySkipBrowserTests())("the guided start", () => {
  let shop: ServedShop;
  beforeAll(async () => {
    shop = await serveShop();
  });
  afterAll(async () => {
    await shop?.stop();
  });

  it("leads by keyboard alone from a tank's size to the pumps that fit, kept as a job", async () => {
    const { page, context, complaints } = await shop.open("#/start");
    await page.waitForSelector("#start-tank-length");
    await page.focus("#start-tank-length");
    for (const side of ["1300", "600", "650"]) {
      await page.keyboard.type(side);
      await page.keyboard.press("Tab");
    }
    await page.waitForSelector(".start-preview .start-figures");
    // On to the animals: past the volume, then soft corals, the third of them.
    for (let i = 0; i < 3; i++) await page.keyboard.press("Tab");
    await page.keyboard.press("Space");
    expect(await page.isChecked(".start-options .start-option:nth-child(3) input")).toBe(true);
    await page.waitForFunction(() => document.querySelectorAll(".assumed").length > 30);
    await page.keyboard.press("Enter");
    await page.waitForSelector(".drawer tbody tr");
    expect(page.url()).toMatch(/\?design=/);
    const { items } = await shop.api<{ items: { id: string; name: string; stage: string }[] }>("GET", "api/jobs");
    expect(items).toHaveLength(1);
    expect(items[0]?.name).toMatch(/^Soft corals, /);
    const designs = await shop.api<{ items: { id: string }[] }>("GET", `api/jobs/${items[0]?.id}/designs`);
    expect(page.url()).toContain(designs.items[0]?.id);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("is answered by touch on a phone, and every default is there with its reason", async () => {
    const { page, context } = await shop.open("#/start", { viewport: { width: 390, height: 844 }, hasTouch: true });
    await page.tap("#start-tank-volume");
    await page.fill("#start-tank-volume", "75 gal");
    await page.tap('label:has(input[name="drains"][value="one"])');
    await page.waitForSelector('.start-note[data-weight="unmet"]');
    expect(await page.textContent(".start-notes")).toMatch(/snail/);
    expect(await page.textContent(".start-assumed")).toMatch(/Common practice, no source/);
    // What was assumed is edited in place.
    await page.tap('.assumed:has-text("usual stand") button');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("start-standHeight");
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(wide).toBeLessThanOrEqual(0);
    await page.tap(".start-finish .action-strong");
    await page.waitForSelector(".drawer tbody tr");
    await context.close();
  });

  it("goes on without a server and keeps what was said over a reload", async () => {
    const { page, context } = await shop.open("#/start");
    await page.fill("#start-tank-volume", "300");
    await page.reload();
    expect(await page.inputValue("#start-tank-volume")).toBe("300");
    await page.waitForSelector(".start-preview .start-figures");
    await page.route("**/api/**", (route) => route.abort());
    await page.click(".start-finish .action-strong");
    await page.click('.start-finish [role="alert"] button');
    await page.waitForSelector(".drawer tbody tr");
    await context.close();
  });

  it("has no serious violation in either theme", async () => {
    for (const colorScheme of ["light", "dark"] as const) {
      const { page, context } = await shop.open("#/start", { colorScheme, bypassCSP: true });
      await page.fill("#start-tank-volume", "450");
      await page.waitForSelector(".start-preview .start-figures");
      expect(await barriers(page)).toEqual([]);
      await context.close();
    }
  });

  it("reaches the shop as a job to review when a customer fills in the form, which loses nothing on the way", async () => {
    const { token } = await shop.api<{ token: string }>("POST", "api/links", { kind: "intake", days: 7 });
    const { page, context } = await shop.open(`intake.html#${token}`, {
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      locale: "de-DE",
      bypassCSP: true,
    });
    await page.waitForSelector("#customer-name");
    await page.tap(".customer-send");
    await page.waitForSelector("#customer-name-problem");
    expect(await barriers(page)).toEqual([]);
    await page.fill("#customer-name", "Ada Muster");
    await page.fill("#customer-contact", "ada@example.org");
    await page.fill("#customer-length", "120,5");
    await page.fill("#customer-width", "50");
    await page.reload();
    expect(await page.inputValue("#customer-length")).toBe("120,5");
    await page.fill("#customer-height", "55");
    await page.route("**/api/intake", (route) => route.abort());
    await page.tap(".customer-send");
    await page.waitForSelector('form [role="alert"]');
    await page.unroute("**/api/intake");
    await page.tap(".customer-send");
    await page.waitForSelector(".customer-word h1");
    expect(await page.evaluate(() => JSON.stringify(localStorage))).not.toMatch(/Ada|example[.]org|120,5/);
    const { items } = await shop.api<{ items: { name: string; stage: string }[] }>("GET", "api/jobs");
    expect(items.some(({ name, stage }) => stage === "intake" && name.includes("Ada Muster"))).toBe(true);
    // Who sent it is told so, also later, and is shown nothing of it.
    await page.reload();
    await page.waitForSelector(".customer-word h1");
    expect(await page.textContent("main")).not.toContain("Ada");
    await context.close();
    // For anybody else the link is spent.
    const elsewhere = await shop.open(`intake.html#${token}`, { locale: "en-GB" });
    await elsewhere.page.waitForFunction(() => document.querySelector("main")?.textContent?.includes("no longer open"));
    expect(await elsewhere.page.textContent("main")).not.toMatch(/Ada|Thank/);
    await elsewhere.context.close();
  });

  it("that has reached the shop though its answer was lost is sent again or opened again, and the customer is thanked", async () => {
    for (const again of ["send", "reload"] as const) {
      const { token } = await shop.api<{ token: string }>("POST", "api/links", { kind: "intake", days: 7 });
      const { page, context } = await shop.open(`intake.html#${token}`, { locale: "en-GB" });
      const name = `Lost on the way, ${again}`;
      await page.fill("#customer-name", name);
      await page.fill("#customer-contact", "555 0100");
      await page.fill("#customer-volume", "300");
      await page.route("**/api/intake", async (route) => {
        if (route.request().method() !== "POST") return route.continue();
        await route.fetch();
        await route.abort();
      });
      await page.click(".customer-send");
      await page.waitForSelector('form [role="alert"]');
      await page.unroute("**/api/intake");
      if (again === "send") await page.click(".customer-send");
      else await page.reload();
      await page.waitForSelector(".customer-word h1");
      expect(await page.textContent("main")).toMatch(/Thank you!.*has your answers/);
      const { items } = await shop.api<{ items: { name: string }[] }>("GET", "api/jobs");
      expect(items.filter((job) => job.name === name)).toHaveLength(1);
      await context.close();
    }
  });

  it("shows under one link nothing of what was typed under another, nor of a closed one", async () => {
    const makeLink = () =>
      shop.api<{ token: string; link: { id: string } }>("POST", "api/links", { kind: "intake", days: 7 });
    const [first, second] = [await makeLink(), await makeLink()];
    const { page, context } = await shop.open(`intake.html#${first.token}`, { locale: "en-GB" });
    await page.fill("#customer-name", "Somebody before");
    // The same page, as when a link is tapped in a message while it is open.
    await page.evaluate((token) => {
      location.hash = token;
    }, second.token);
    await page.waitForFunction(() => document.querySelector<HTMLInputElement>("#customer-name")?.value === "");
    await page.fill("#customer-name", "Somebody after");
    await page.goto(`${shop.address}intake.html?again#${first.token}`);
    await page.waitForSelector("#customer-name");
    expect(await page.inputValue("#customer-name")).toBe("Somebody before");
    const kept = await page.evaluate(() => JSON.stringify(localStorage));
    expect(kept).not.toContain(first.token);
    await shop.api("DELETE", `api/links/${first.link.id}`);
    await page.reload();
    await page.waitForFunction(() => document.querySelector("main")?.textContent?.includes("no longer open"));
    expect(await page.evaluate(() => JSON.stringify(localStorage))).not.toContain("Somebody before");
    await context.close();
  });

  it("has one kind sentence for a wrong link", async () => {
    const { page, context } = await shop.open("intake.html#nonsense", { locale: "en-GB" });
    await page.waitForFunction(() => document.querySelector("main")?.textContent?.includes("no longer open"));
    await context.close();
  });
});
