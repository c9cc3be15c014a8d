import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { servePeopledShop, signInAs } from "./peopledShop.ts";
import type { ServedShop } from "./servedShop.ts";

describe.skipIf(maySkipBrowserTests())("a page whose session ends", () => {
  let shop: ServedShop;
  let jobId: string;
  const owner = { name: "Ada", password: "five words in one row" };
  beforeAll(async () => {
    const served = await servePeopledShop(async (made) => {
      await made.api("POST", "api/accounts", { ...owner, role: "owner" });
      return made.api<{ id: string }>("POST", "api/jobs", { name: "Reef by the window" });
    });
    shop = served.shop;
    jobId = served.made.id;
  }, 120_000);
  afterAll(async () => {
    await shop?.stop();
  });

  it("shows the door by itself, and nothing of the shop, once the owner shuts its reader out", async () => {
    const { page, context } = await shop.open(`#/jobs/${jobId}`);
    await signInAs(page, "Ina");
    await page.waitForSelector(".title-name input");
    await page.waitForTimeout(1000);
    const door = await fetch(new URL("api/session", shop.address), {
      method: "POST",
      headers: { "X-Tidewright": "1", "Content-Type": "application/json" },
      body: JSON.stringify(owner),
    });
    const Cookie = door.headers.get("Set-Cookie")!.split(";")[0]!;
    const accounts = await fetch(new URL("api/accounts", shop.address), { headers: { Cookie } });
    const { items } = (await accounts.json()) as { items: { id: string; name: string; version: number }[] };
    const ina = items.find(({ name }) => name === "Ina")!;
    const shut = await shop.api<{ disabled: boolean }>(
      "PATCH",
      `api/accounts/${ina.id}`,
      { disabled: true },
      { Cookie, "If-Match": `"${ina.version}"` },
    );
    expect(shut.disabled).toBe(true);
    // Nobody touches the page: that its line to the server is refused, at its next sign of life, is word enough.
    await page.waitForSelector(".door", { timeout: 90_000 });
    expect(await page.locator(".title-name").count()).toBe(0);
    await context.close();
  }, 180_000);
});
