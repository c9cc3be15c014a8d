import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { beginHeight, example, heightShown, keptWord, typeHeight } from "./keptBench.ts";
import { type ServedShop, serveShop } from "./servedShop.ts";

describe.skipIf(maySkipBrowserTests())("a tab that is closed at once", () => {
  let shop: ServedShop;
  beforeAll(async () => {
    shop = await serveShop();
  });
  afterAll(async () => {
    await shop?.stop();
  });

  for (const [how, edit] of [
    ["after Enter", typeHeight],
    ["while the text still stands in the field", beginHeight],
  ] as const)
    it(`has written the edit down, ${how}, and a new one sends it`, async () => {
      const { designId } = await shop.makeDesign(example);
      const { page, context } = await shop.open(`?design=${designId}`);
      await page.waitForSelector("[data-figure=flow]");
      await keptWord(page, "kept");
      // Nothing reaches the server, so that what is found afterwards was on this device.
      await context.route("**/revisions", (route) => route.abort());
      await edit(page, "905 mm");
      await page.close();
      expect(await shop.api("GET", `api/designs/${designId}`)).toMatchObject({ latest: { number: 1 } });
      await context.unroute("**/revisions");
      const { page: again } = await shop.open(`?design=${designId}`, context);
      await again.waitForSelector("[data-figure=flow]");
      expect(await heightShown(again)).toMatch(/^905\s?mm$/u);
      await keptWord(again, "kept");
      expect(await shop.api("GET", `api/designs/${designId}`)).toMatchObject({
        latest: { number: 2, document: { display: { standHeight: { value: 905, unit: "mm" } } } },
      });
      await context.close();
    });
});
