import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium, maySkipBrowserTests } from "../../../tools/browser.ts";
import { example, heightShown, keptWord, typeHeight } from "./keptBench.ts";
import { servePeopledShop, signInAs } from "./peopledShop.ts";
import type { ServedShop } from "./servedShop.ts";

const name = "counter.test";
/** Eight points square. */
const picture = Buffer.from(
  "iVBORw0KGgoAAAANSUhEUgAAAAgAAAAICAIAAABLbSncAAAAEklEQVR4nGP4z8CAFWEXHbQSACj/P8Fu7N9hAAAAAElFTkSuQmCC",
  "base64",
);

describe.skipIf(maySkipBrowserTests())("a shop without TLS, seen from another machine", () => {
  let shop: ServedShop;
  let designId: string;
  let jobId: string;
  let browser: Browser;
  beforeAll(async () => {
    const served = await servePeopledShop((made) => made.makeDesign(example), "--name", name);
    shop = served.shop;
    ({ designId, jobId } = served.made);
    // A name that is no loopback one: browsers trust it as little as any other machine of the house.
    browser = await launchChromium(`--host-resolver-rules=MAP ${name} 127.0.0.1`);
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.stop();
  });

  it("opens, keeps, and has on the device what waits, without a service worker and without locks", async () => {
    const address = shop.address.replace("127.0.0.1", name);
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await context.newPage();
    const complaints: string[] = [];
    page.on("pageerror", (error) => complaints.push(error.message));
    await page.goto(`${address}?design=${designId}`);
    await signInAs(page, "Ina");
    await page.waitForSelector("[data-figure=flow]");
    const has = await page.evaluate(() => ({
      trusted: isSecureContext,
      worker: "serviceWorker" in navigator,
      locks: "locks" in navigator,
    }));
    expect(has).toEqual({ trusted: false, worker: false, locks: false });
    await typeHeight(page, "905 mm");
    await keptWord(page, "kept");
    // Photos go up too, from a page that the browser does not trust.
    const desk = await context.newPage();
    desk.on("pageerror", (error) => complaints.push(error.message));
    await desk.goto(`${address}#/jobs/${jobId}`);
    const files = [{ name: "sump.png", mimeType: "image/png", buffer: picture }];
    await desk.setInputFiles(".job-files input[type=file]", files);
    await desk.waitForSelector(".job-files img");
    await desk.close();
    await context.setOffline(true);
    await typeHeight(page, "915 mm");
    // The page itself is not on the device, and whoever works on it should know.
    await keptWord(page, "leave this page open");
    await page.close();
    await context.setOffline(false);
    const again = await context.newPage();
    again.on("pageerror", (error) => complaints.push(error.message));
    await again.goto(`${address}?design=${designId}`);
    await again.waitForSelector("[data-figure=flow]");
    expect(await heightShown(again)).toMatch(/^915\s?mm$/u);
    await keptWord(again, "kept");
    expect(complaints).toEqual([]);
    await context.close();
  });
});
