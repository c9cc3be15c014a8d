import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { type ServedShop, serveShop } from "./servedShop.ts";

describe.skipIf(maySkipBrowserTests())("what was done", () => {
  let shop: ServedShop;
  beforeAll(async () => {
    shop = await serveShop();
  });
  afterAll(() => shop?.stop());

  it("says on whom and what, and is there without being asked for again, in the reader's language", async () => {
    const { page, context, complaints } = await shop.open("#/people", { locale: "en-GB" });
    await page.waitForSelector("table.audit");
    const topLine = (text: string) =>
      page.waitForFunction((wanted) => document.querySelector(".audit tbody tr")?.textContent?.includes(wanted), text);
    const account = await shop.api<{ id: string }>("POST", "api/accounts", {
      name: "Jo",
      role: "staff",
      password: "four words in a row",
    });
    await topLine("madeAccount Jo · Staff");
    const { id } = await shop.api<{ id: string }>("POST", "api/jobs", { name: "Reef by the window" });
    await topLine("madeJob Reef by the window");
    await shop.api("POST", "api/links", { kind: "intake", days: 7 });
    await topLine("madeLink to an intake");
    await shop.api("DELETE", `api/jobs/${id}`, undefined, { "If-Match": '"1"' });
    await topLine("removedJob Reef by the window");
    expect(await page.textContent(".audit")).not.toContain(account.id);
    expect(complaints).toEqual([]);
    await context.close();
    const german = await shop.open("#/people", { locale: "de-DE" });
    await german.page.waitForFunction(() =>
      document.querySelector(".audit tbody")?.textContent?.includes("angelegtKonto Jo · Mitarbeiter"),
    );
    await german.context.close();
  });
});
