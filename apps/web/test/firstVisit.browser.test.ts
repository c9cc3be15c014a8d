import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { countScript } from "./countScript.ts";
import { example } from "./keptBench.ts";
import { type ServedShop, serveShop } from "./servedShop.ts";

/** Most script that a first visit to the bench may fetch, workers included [bytes as sent]. */
const most = 350_000;

describe.skipIf(maySkipBrowserTests())("a first visit", () => {
  let shop: ServedShop;
  beforeAll(async () => {
    shop = await serveShop();
  }, 120_000);
  afterAll(async () => {
    await shop?.stop();
  });

  it("to the bench fetches no script twice, and no more than its bound with its workers", async () => {
    const { designId } = await shop.makeDesign(example);
    const sent = (await countScript(shop, `?design=${designId}`)).filter(({ offline }) => !offline);
    const paths = sent.map(({ path }) => path);
    expect([...new Set(paths)].sort()).toEqual([...paths].sort());
    expect(paths.some((path) => path.includes("engine.worker"))).toBe(true);
    expect(paths.some((path) => path.includes("film.worker"))).toBe(true);
    expect(sent.reduce((sum, { bytes }) => sum + bytes, 0)).toBeLessThan(most);
  }, 60_000);
});
