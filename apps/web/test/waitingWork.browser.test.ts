import { readFileSync } from "node:fs";
import type { BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { example, heightShown, keptWord, typeHeight } from "./keptBench.ts";
import { servePeopledShop, signInAs } from "./peopledShop.ts";
import type { ServedShop } from "./servedShop.ts";

interface Opened {
  readonly latest: { readonly number: number; readonly author: string; readonly document: typeof example };
}

describe.skipIf(maySkipBrowserTests())("work that waits on a device which two people use", () => {
  let shop: ServedShop;
  let designs: readonly { readonly jobId: string; readonly designId: string }[];
  beforeAll(async () => {
    const served = await servePeopledShop(async (made) => [
      await made.makeDesign(example),
      await made.makeDesign(example),
      await made.makeDesign(example),
    ]);
    shop = served.shop;
    designs = served.made;
  }, 120_000);
  afterAll(async () => {
    await shop?.stop();
  });

  /** A device on which Ina's edit of a design waits, and her session is over. */
  async function withWorkOfIna({ designId }: { readonly designId: string }) {
    const { page, context } = await shop.open(`?design=${designId}`);
    await signInAs(page, "Ina");
    await page.waitForSelector("[data-figure=flow]");
    await keptWord(page, "kept");
    await context.setOffline(true);
    await typeHeight(page, "905 mm");
    await keptWord(page, "1 change waits on this device");
    return { page, context };
  }

  it("stays Ina's when Jo signs in at the desk, and goes out under Jo's name once Jo says so", async () => {
    const design = designs[0]!;
    const { page, context } = await withWorkOfIna(design);
    await page.close();
    await context.clearCookies();
    await context.setOffline(false);
    const { page: desk } = await shop.open("#/jobs", context);
    await signInAs(desk, "Jo");
    await desk.waitForSelector(".anothers-line");
    expect(await desk.textContent(".anothers-line span")).toBe("Work of Ina waits on this device: Waiting room.");
    expect(await opened(desk, design.designId)).toMatchObject({ latest: { number: 1 } });
    await desk.click(".anothers-line button:text-is('What becomes of it…')");
    expect(await desk.textContent(".anothers-item")).toContain("As drawn: 1 change by Ina");
    const [file] = await Promise.all([
      desk.waitForEvent("download"),
      desk.click(".anothers-item button:text-is('Save to a file')"),
    ]);
    expect(JSON.parse(readFileSync(await file.path(), "utf8")).display.standHeight).toEqual({ value: 905, unit: "mm" });
    await desk.click(".anothers-item button:text-is('Send it as Jo')");
    await desk.waitForSelector(".sheet-anothers", { state: "detached" });
    await expect.poll(() => opened(desk, design.designId)).toMatchObject({ latest: { number: 2, author: "Jo" } });
    expect((await opened(desk, design.designId)).latest.document.display.standHeight.value).toBe(905);
    expect(await desk.locator(".anothers-line").count()).toBe(0);
    await context.close();
  });

  it("is told of where Jo signs in over Ina's bench, waits for her, and goes out as hers when she is back", async () => {
    const design = designs[1]!;
    const { page, context } = await withWorkOfIna(design);
    await context.clearCookies();
    await context.setOffline(false);
    await keptWord(page, "signed out");
    await page.click(".keeping-help");
    await signInAs(page, "Jo");
    await page.waitForSelector(".sheet-anothers[open]");
    await page.click("button:text-is('Keep it waiting for Ina')");
    // Jo goes on with what the server has.
    await keptWord(page, "kept");
    expect(await heightShown(page)).not.toMatch(/^905/);
    expect(await opened(page, design.designId)).toMatchObject({ latest: { number: 1 } });
    await page.close();
    await context.clearCookies();
    const { page: again } = await shop.open(`?design=${design.designId}`, context);
    await again.waitForSelector("[data-figure=flow]");
    await keptWord(again, "signed out");
    await again.click(".keeping-help");
    await signInAs(again, "Ina");
    await expect
      .poll(() => opened(again, design.designId), { timeout: 15_000 })
      .toMatchObject({
        latest: { number: 2, author: "Ina" },
      });
    await context.close();
  });

  it("can be looked at and saved by an account that may only look, and set apart by one that works", async () => {
    const design = designs[2]!;
    const { page, context } = await withWorkOfIna(design);
    await page.close();
    await context.clearCookies();
    await context.setOffline(false);
    const { page: desk } = await shop.open("#/jobs", context);
    await signInAs(desk, "Uwe");
    await desk.click(".anothers-line button:text-is('What becomes of it…')");
    await desk.waitForSelector(".anothers-item button");
    expect(await desk.locator(".anothers-item button").allTextContents()).toEqual(["Save to a file"]);
    await desk.click("button:text-is('Keep it waiting for Ina')");
    await signInAgain(desk, context, "Jo");
    await desk.click(".anothers-line button:text-is('What becomes of it…')");
    await desk.click("button:text-is('Set apart as my variant')");
    await desk.waitForSelector(".sheet-anothers", { state: "detached" });
    const { items } = await asked<{ items: { id: string; createdBy: string; variantOf: object }[] }>(
      desk,
      `api/jobs/${design.jobId}/designs`,
    );
    const variant = items.find(({ id }) => id !== design.designId)!;
    expect(variant).toMatchObject({ createdBy: "Jo", variantOf: { designId: design.designId, revision: 1 } });
    expect((await opened(desk, variant.id)).latest.document.display.standHeight.value).toBe(905);
    expect(await opened(desk, design.designId)).toMatchObject({ latest: { number: 1 } });
    await context.close();
  });

  async function signInAgain(page: Page, context: BrowserContext, name: "Jo"): Promise<void> {
    await context.clearCookies();
    await page.reload();
    await signInAs(page, name);
  }
});

/** Asks the server as the page may. */
function asked<Value>(page: Page, path: string): Promise<Value> {
  return page.evaluate(async (at) => (await fetch(at, { headers: { "X-Tidewright": "1" } })).json(), path);
}

const opened = (page: Page, designId: string) => asked<Opened>(page, `api/designs/${designId}`);
