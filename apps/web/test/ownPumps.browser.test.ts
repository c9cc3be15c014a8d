import { readFileSync } from "node:fs";
import { assess, rank } from "@tidewright/advice";
import { demoCatalogue, findPump, type PumpRow, withOwnPumps } from "@tidewright/catalogue";
import { checkDesign, type Design } from "@tidewright/design";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { screenFormat } from "../src/format/screenFormat.ts";
import { type ServedShop, serveShop } from "./servedShop.ts";

const text = readFileSync(new URL("../../../examples/waiting-room-reef.json", import.meta.url), "utf8");
const format = screenFormat({ system: "metric", own: {} });

/** A pump of the shop's own: a good one, so that the ranking has it near its top. */
const house: PumpRow = { ...findPump(demoCatalogue, "ferrow-c40")!, maker: "Ourhouse", model: "One", price: 93.7 };
/** The same with the heads of its curves brought down. */
const weaker: PumpRow = {
  ...house,
  curves: house.curves.map((curve) => ({
    ...curve,
    points: curve.points.map(({ flow, head }) => ({ flow, head: 0.85 * head })),
  })),
};

/** The example with another pump in its return. */
const designWith = (ref: string): unknown => JSON.parse(text.replace('"ref": "ferrow-c40"', `"ref": "${ref}"`));

/** What Node says of a design whose return has this pump. */
function reckoned(id: string, row: PumpRow) {
  const catalogue = withOwnPumps(demoCatalogue, [{ ...row, id }]);
  const reading = checkDesign(designWith(id), catalogue);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const design: Design = reading.design;
  const assessment = assess(design, catalogue);
  const main = assessment.loops.findIndex(({ purpose }) => purpose === "return");
  return {
    flow: format(assessment.loops[main]!.flow, "flow"),
    toDisplay: format(assessment.loops[main]!.flowToDisplay, "flow"),
    power: format(assessment.power.watts, "power"),
    candidates: rank(design, catalogue, { loop: main }).candidates.map(({ pumpIds }) => pumpIds.join("+")),
  };
}

// Everything is seen within a second or two on a quiet machine; other tests share this one.
describe.skipIf(maySkipBrowserTests())("a shop's own pump", { timeout: 180_000 }, () => {
  let shop: ServedShop;
  let count = 0;
  beforeAll(async () => {
    shop = await serveShop();
  });
  afterAll(async () => {
    await shop?.stop();
  });
  afterEach(async () => {
    for (const context of shop.browser.contexts()) await context.close();
    if (!shop.runs()) await shop.restart();
    // Every test has the catalogue to itself.
    const { items } = await shop.api<{ items: { id: string; version: number }[] }>("GET", "api/catalogue/pump");
    for (const { id, version } of items) await remove(id, version);
  });

  const put = (id: string, data: PumpRow, version = 0) =>
    shop.api("PUT", `api/catalogue/pump/${id}`, { data }, { "If-Match": `"${version}"` });
  const remove = (id: string, version: number) =>
    shop.api("DELETE", `api/catalogue/pump/${id}`, undefined, { "If-Match": `"${version}"` });
  /** A pump and a design that names it. */
  async function ownPump() {
    count += 1;
    const id = `house-${count}`;
    await put(id, house);
    return { id, ...(await shop.makeDesign(designWith(id))) };
  }
  async function opened(designId: string) {
    const shown = await shop.open(`?design=${designId}`);
    await shown.page.waitForSelector("[data-figure=flow]");
    return shown;
  }

  it("is reckoned with on the bench and in the ranking as Node reckons with it", async () => {
    const { id, designId } = await ownPump();
    const { page, complaints } = await opened(designId);
    const expected = reckoned(id, house);
    await shows(page, "flow", expected.flow);
    expect(await figure(page, "watts")).toBe(expected.power);
    expect(await figure(page, "pump")).toBe("Ourhouse One");
    await page.click("#tab-pumps");
    await page.waitForSelector(`.ranking:not([data-stale]) .ranking-table tr[data-pump="${id}"][data-in-use]`);
    const listed = await ranked(page);
    expect(listed).toEqual(expected.candidates.slice(0, listed.length));
    expect(complaints).toEqual([]);
  });

  it("changes the numbers on an open bench when somebody changes it, and they are right again", async () => {
    const { id, designId } = await ownPump();
    const { page } = await opened(designId);
    const [before, after] = [reckoned(id, house), reckoned(id, weaker)];
    expect(after.flow).not.toBe(before.flow);
    await shows(page, "flow", before.flow);
    await put(id, weaker, 1);
    await shows(page, "flow", after.flow);
    // What comes from the workers later must not bring the old numbers back.
    await page.click("#tab-pumps");
    await page.waitForSelector(".ranking:not([data-stale]) .ranking-table tr[data-pump]");
    await page.waitForTimeout(2500);
    const listed = await ranked(page);
    expect(listed).toEqual(after.candidates.slice(0, listed.length));
    expect(await figure(page, "flow")).toBe(after.flow);
  });

  it("is shown by a link to somebody who may not read the shop's catalogue, and without its price", async () => {
    const { id, designId } = await ownPump();
    await put("house-secret", { ...house, model: "Unseen" });
    const { token } = await shop.api<{ token: string }>("POST", "api/links", { kind: "view", designId, days: 7 });
    const { page, complaints } = await shop.open("share.html#nothing", {
      viewport: { width: 390, height: 844 },
    });
    const answers: string[] = [];
    page.on("response", async (response) => {
      if (response.url().includes("/api/")) answers.push(`${response.url()} ${await response.text().catch(() => "")}`);
    });
    await page.evaluate((hash) => {
      location.hash = hash;
    }, token);
    await page.waitForSelector("[data-plain=mishaps]", { timeout: 90_000 });
    expect(await page.textContent("[data-plain=flow] .share-figure")).toBe(reckoned(id, house).toDisplay);
    expect(await page.textContent("[data-plain=flow]")).toContain("Ourhouse One");
    expect(answers.join("\n")).toContain(id);
    expect(answers.join("\n")).not.toMatch(/Unseen|house-secret|93[.]7/);
    expect(answers.filter((each) => each.includes("/api/catalogue"))).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it("is there on this device while the server is gone", async () => {
    const { id, designId } = await ownPump();
    const { page } = await opened(designId);
    await page.waitForFunction(() => navigator.serviceWorker?.controller !== null, undefined, { timeout: 45_000 });
    await shop.kill();
    await page.reload();
    await page.waitForSelector("[data-figure=flow]");
    await shows(page, "flow", reckoned(id, house).flow);
    expect(await figure(page, "pump")).toBe("Ourhouse One");
  });

  it("is compared and shown in an older version", async () => {
    const { id, designId } = await ownPump();
    const { page } = await shop.open(`#/compare/${designId}@1..${designId}@latest`);
    await page.waitForSelector("[data-number]");
    const numbers = await page.textContent("main");
    expect(numbers).toContain(reckoned(id, house).power);
    expect(numbers).not.toContain("catalogue");
  });

  it("may be taken away: the designs that name it open, say so, lose nothing, and take another pump", async () => {
    const { id, designId } = await ownPump();
    const { page, complaints } = await opened(designId);
    await remove(id, 1);
    const finding = page.locator('.finding[data-code="pump/missing"]');
    await finding.waitFor();
    expect(await finding.textContent()).toMatch(new RegExp(`${id} \\(loop Return\\).*Choose another pump`, "i"));
    await page.reload();
    await finding.waitFor();
    expect(await page.textContent(".answer-sentence")).toContain(`${id} is not in the catalogue`);
    // Other work goes on and is kept, though the pump is gone.
    await page.click(".section-index button:has-text('Display')");
    const field = page.locator('.inspector [data-path="/display/standHeight"]');
    await field.fill("905 mm");
    await field.press("Enter");
    await kept(page);
    const { latest } = await shop.api<{ latest: { document: Design } }>("GET", `api/designs/${designId}`);
    expect(latest.document.display.standHeight).toEqual({ value: 905, unit: "mm" });
    expect(latest.document.loops[0]?.pumps[0]?.ref).toBe(id);
    await page.click("#tab-pumps");
    await page.waitForSelector(".ranking:not([data-stale]) .ranking-table tr[data-pump]");
    await page.locator(".ranking-table tr[data-pump] .use-cell button").first().click();
    await finding.waitFor({ state: "detached" });
    await kept(page);
    expect(complaints).toEqual([]);
  });
});

/** The pumps of the ranking as it is shown, best first. */
const ranked = (page: Page): Promise<(string | null)[]> =>
  page.$$eval(".ranking-table tr[data-pump]", (rows) => rows.map((each) => each.getAttribute("data-pump")));

/** The number of a figure on the bench. */
const figure = async (page: Page, of: string): Promise<string> =>
  (await page.locator(`[data-figure=${of}] dd > :first-child`).first().textContent()) ?? "";

/** Waits until a figure says what is expected. */
async function shows(page: Page, of: string, wanted: string): Promise<void> {
  await page.waitForFunction(
    ([selector, value]) => document.querySelector(selector)?.textContent === value,
    [`[data-figure=${of}] dd > :first-child`, wanted] as const,
    { timeout: 20_000 },
  );
}

async function kept(page: Page): Promise<void> {
  await page.waitForFunction(
    () => document.querySelector(".keeping [role=status]")?.textContent === "kept",
    undefined,
    {
      timeout: 20_000,
    },
  );
}
