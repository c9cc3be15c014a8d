import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { example, heightShown, keptWord, typeHeight } from "./keptBench.ts";
import { servePeopledShop, signInAs } from "./peopledShop.ts";
import type { ServedShop } from "./servedShop.ts";

describe.skipIf(maySkipBrowserTests())("an account that may only look", () => {
  let shop: ServedShop;
  let made: { readonly jobId: string; readonly designId: string };
  beforeAll(async () => {
    const served = await servePeopledShop((fresh) => fresh.makeDesign(example));
    shop = served.shop;
    made = served.made;
  }, 120_000);
  afterAll(async () => {
    await shop?.stop();
  });

  it("sees the desk, a job and the bench, changes nothing, and finds no button that would", async () => {
    const { page, context, complaints } = await shop.open("#/jobs");
    await signInAs(page, "Uwe");
    await page.waitForSelector("text=Waiting room");
    expect(await buttons(page)).not.toContain("New job");
    await page.goto(`${shop.address}#/jobs/${made.jobId}`);
    await page.waitForSelector(".design-open");
    expect(await page.inputValue(".title-name input")).toBe("Waiting room");
    expect(await page.isEditable(".title-name input")).toBe(false);
    expect(await page.locator("main :is(input, textarea, select):enabled:not([readonly])").count()).toBe(0);
    const offered = await buttons(page);
    for (const word of ["New design", "Make a link", "Remove", "Delete", "Upload", "Import"])
      expect(offered.filter((text) => text.startsWith(word))).toEqual([]);
    await page.click(".design-open");
    await page.waitForSelector("[data-figure=flow]");
    await keptWord(page, "to look at only");
    const before = await heightShown(page);
    await typeHeight(page, "905 mm");
    expect(await page.textContent(".inspector .field-problem")).toContain("look and change nothing");
    await page.press('.inspector [data-path="/display/standHeight"]', "Escape");
    expect(await heightShown(page)).toBe(before);
    expect(await buttons(page)).not.toContain("New variant…");
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("is refused by the server, whatever a page of it asks", async () => {
    const { page, context } = await shop.open("#/jobs");
    await signInAs(page, "Uwe");
    const asks = [
      ["POST", "api/jobs", { name: "Mine" }],
      ["PATCH", `api/jobs/${made.jobId}`, { name: "Mine" }],
      ["POST", `api/designs/${made.designId}/revisions`, { document: example, editId: crypto.randomUUID() }],
      ["POST", `api/designs/${made.designId}/variants`, { name: "Mine" }],
      ["POST", "api/links", { kind: "view", designId: made.designId, days: 1 }],
    ] as const;
    for (const [method, path, body] of asks)
      expect([path, await statusOf(page, method, path, body)]).toEqual([path, 403]);
    const design = await page.evaluate(
      async (at) => (await fetch(at, { headers: { "X-Tidewright": "1" } })).json(),
      `api/designs/${made.designId}`,
    );
    expect(design.latest).toMatchObject({
      number: 1,
      document: { display: { standHeight: example.display.standHeight } },
    });
    await context.close();
  });
});

/** The words on every button that can be pressed. */
const buttons = (page: Page) => page.locator("button:enabled:visible").allTextContents();

/** Status of a request that the page's own buttons would never send. */
function statusOf(page: Page, method: string, path: string, body: unknown): Promise<number> {
  return page.evaluate(
    async ([how, at, sent]) => {
      const headers = { "X-Tidewright": "1", "Content-Type": "application/json", "If-Match": '"1"' };
      return (await fetch(at, { method: how, headers, body: sent })).status;
    },
    [method, path, JSON.stringify(body)] as const,
  );
}
