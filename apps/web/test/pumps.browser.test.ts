import { readFileSync } from "node:fs";
import { demoCatalogue, findPump, type PumpRow, writePumpCsv } from "@tidewright/catalogue";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { barriers } from "./barriers.ts";
import { type ServedShop, serveShop } from "./servedShop.ts";

interface KeptRow {
  readonly id: string;
  readonly version: number;
  readonly data: PumpRow;
}

const named = (id: string, from = "ferrow-c40"): PumpRow => ({ ...(findPump(demoCatalogue, from) as PumpRow), id });
const field = (place: string) => `[data-place="${place}"]`;

describe.skipIf(maySkipBrowserTests())("the shop's own pumps", () => {
  let shop: ServedShop;
  const rows = async () => (await shop.api<{ items: KeptRow[] }>("GET", "api/catalogue/pump")).items;
  const kept = async (id: string) => (await rows()).find((row) => row.id === id);
  const put = (pump: PumpRow, version = 0) =>
    shop.api<KeptRow>("PUT", `api/catalogue/pump/${pump.id}`, { data: pump }, { "If-Match": `"${version}"` });
  beforeAll(async () => {
    shop = await serveShop();
  }, 120_000);
  afterAll(async () => {
    await shop?.stop();
  });

  it("adds a pump by keyboard, tells what is wrong at its field, and shows it first in the list", async () => {
    const { page, context, complaints } = await shop.open("#/pumps");
    const keys = page.keyboard;
    await page.waitForSelector(".pump-row[data-pump]");
    await page.focus("a:text-is('New pump')");
    await keys.press("Enter");
    await page.waitForSelector(field("maker"));
    await page.focus(field("maker"));
    await keys.type("Harbour House");
    await keys.press("Tab");
    await keys.type("12");
    // The short name follows maker and model.
    expect(await page.inputValue(field("id"))).toBe("harbour-house-12");
    // Nothing is called wrong before anybody tried to save.
    expect(await page.locator(".field-problem").count()).toBe(0);
    await keys.press("Enter");
    await page.waitForSelector(".pump-said[data-state=refused]");
    // The first that is to be mended has the focus: where the pump may stand.
    expect(await page.evaluate(() => (document.activeElement as HTMLElement).dataset["place"])).toBe("placements");
    await keys.press("Space");
    await page.focus(field("curves.0.0.flow"));
    for (const [flow, head] of [
      ["0", "4.1"],
      ["1000", "4.3"],
      ["2000", "0"],
    ]) {
      await keys.type(flow!);
      await keys.press("Tab");
      await keys.type(head!);
      await keys.press("Enter");
    }
    await page.waitForSelector(".curve-told:has-text('does not fall from the point before')");
    await page.focus(field("curves.0.1.head"));
    await keys.press("ControlOrMeta+a");
    await keys.type("3.3");
    await page.waitForFunction(() => document.querySelector(".curve-told") === null);
    // Three points from no flow make a power law (EPANET 2 Users Manual, 3.1): a line is drawn, and three points on it.
    expect(await page.getAttribute(".plot-full .plot-curve", "d")).toMatch(/^M/);
    expect(await page.locator(".plot-point").count()).toBe(3);
    await page.focus(field("ratedPower"));
    for (const text of ["48", "0.9", "230", "50", "20", "", "16", "", "70", "119"]) {
      await keys.type(text);
      await keys.press("Tab");
    }
    await page.waitForSelector(`${field("ratedPower")} >> xpath=.. >> .told >> nth=0`, { state: "detached" });
    await page.focus(field("powerFactor"));
    await keys.press("ControlOrMeta+a");
    await keys.type("9");
    await page.waitForSelector(".field:has([data-place=powerFactor]) .field-problem");
    await keys.press("ControlOrMeta+a");
    await keys.type("0.8");
    await page.focus(field("soundLevel"));
    await keys.press("ControlOrMeta+a");
    // A doubt may stay.
    await keys.type("95");
    await page.waitForSelector(".field:has([data-place=soundLevel]) .field-doubt");
    await page.focus(field("sourceTitle"));
    await keys.type("Data sheet");
    await keys.press("Enter");
    await page.waitForURL("**/#/pumps/harbour-house-12");
    await page.waitForSelector(".pump-note:has-text('Harbour House 12 is kept.')");
    expect((await kept("harbour-house-12"))?.data).toMatchObject({
      maker: "Harbour House",
      placements: ["inSump"],
      control: "constant",
      soundLevel: 95,
      inletBore: 0.02,
      // 1000 L/h (BIPM SI Brochure: a litre is 0.001 m3).
      curves: [{ speedRatio: 1, points: [{ head: 4.1 }, { flow: 0.001 / 3.6, head: 3.3 }, { head: 0 }] }],
    });
    await page.click(".sheet-path a");
    await page.waitForSelector(".rows > li:first-child .pump-row[data-own]:has-text('Harbour House 12')");
    await page.keyboard.press("/");
    await page.keyboard.type("harbour");
    await page.waitForFunction(() => document.querySelectorAll(".pump-row[data-pump]").length === 1);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("takes two columns pasted out of a sheet, and turns them into another unit and back", async () => {
    const { page, context } = await shop.open("#/newPump");
    await paste(page, "curves.0.0.flow", "Flow\tHead\n0\t4.0\n500\t3.6\n1000\t2.9\n1500\t1.8\n2000\t0.4");
    expect(await page.inputValue(field("curves.0.4.head"))).toBe("0.4");
    expect(await page.textContent(".curve-hands [role=status]")).toMatch(/^5 rows pasted, 1 line/);
    await page.selectOption(".curve-units select >> nth=1", "ft");
    // One foot is 0.3048 m (NIST SP 811).
    expect(Number(await page.inputValue(field("curves.0.0.head")))).toBeCloseTo(4 / 0.3048, 3);
    await page.selectOption(".curve-units select >> nth=1", "m");
    expect(await page.inputValue(field("curves.0.1.head"))).toBe("3.6");
    // What is typed outlives the page.
    await page.reload();
    await page.waitForSelector(field("curves.0.4.head"));
    expect(await page.inputValue(field("curves.0.4.head"))).toBe("0.4");
    await page.click("button:text-is('Throw away')");
    await page.click("dialog button:text-is('Throw it away')");
    await page.waitForFunction(() => document.querySelector(".pump-hands .tool") === null);
    expect(await page.inputValue(field("curves.0.0.flow"))).toBe("");
    await context.close();
  });

  it("keeps what was typed where the server cannot be reached, also over a reload", async () => {
    await put(named("shed-1"));
    const { page, context } = await shop.open("#/pumps/shed-1");
    await page.waitForSelector(field("price"));
    await page.route("**/api/catalogue/pump/shed-1", (route) => route.abort());
    await page.fill(field("price"), "205");
    await page.click(".pump-hands .action-strong");
    await page.waitForSelector(".pump-said:has-text('out of reach')");
    await page.reload();
    await page.waitForSelector(".pump-note:has-text('never saved')");
    expect(await page.inputValue(field("price"))).toBe("205");
    await page.unroute("**/api/catalogue/pump/shed-1");
    await page.click(".pump-hands .action-strong");
    await page.waitForSelector(".pump-said:has-text('Saved')");
    expect((await kept("shed-1"))?.data.price).toBe(205);
    await context.close();
  });

  it("shows both where somebody else was first, and keeps what is chosen", async () => {
    const pump = named("quay-1");
    const { version } = await put(pump);
    const { page, context } = await shop.open("#/pumps/quay-1");
    await page.route("**/api/events", (route) => route.abort());
    await page.waitForSelector(field("price"));
    await page.fill(field("price"), "111");
    const theirs = await put({ ...pump, price: 222, soundLevel: 33 }, version);
    await page.click(".pump-hands .action-strong");
    await page.waitForSelector(".clash-table");
    expect(await page.textContent(".clash-table")).toMatch(/Sound.*37.*33.*Price.*111\.00.*222\.00/s);
    expect(await page.inputValue(field("price"))).toBe("111");
    await page.click("button:text-is('Save mine over it')");
    await expect.poll(async () => (await kept("quay-1"))?.data).toMatchObject({ price: 111, soundLevel: 37 });
    const third = await put({ ...pump, price: 333 }, theirs.version + 1);
    await page.fill(field("price"), "444");
    await page.click(".pump-hands .action-strong");
    await page.click("button:text-is('Take theirs')");
    expect(await page.inputValue(field("price"))).toBe("333");
    expect((await kept("quay-1"))?.version).toBe(third.version);
    await context.close();
  });

  it("copies a pump of the program, removes the copy after one question, and puts it back", async () => {
    const { page, context } = await shop.open("#/pumps/tarnhelm-f75");
    await page.waitForSelector(".pump-note:has-text('comes with the program')");
    expect(await page.locator("form input:not([readonly]):not([disabled])").count()).toBe(0);
    await page.click("a:text-is('Copy as a new one')");
    await page.waitForSelector(field("maker"));
    await page.fill(field("model"), "F75 of ours");
    await page.fill(field("id"), "ours-75");
    await page.click(".pump-hands .action-strong");
    await page.waitForURL("**/#/pumps/ours-75");
    // Everything but what was changed is the very same pump.
    expect((await kept("ours-75"))?.data).toEqual({ ...named("ours-75", "tarnhelm-f75"), model: "F75 of ours" });
    // Whoever removes it is told which designs lose it, and can go and look; other places of the name do not count.
    await page.waitForSelector(".pump-use:has-text('It is in no design.')");
    const reef = JSON.parse(readFileSync(new URL("../../../examples/waiting-room-reef.json", import.meta.url), "utf8"));
    await shop.makeDesign({ ...reef, name: "ours-75" }, "Not named");
    reef.loops[0].pumps[0].ref = "ours-75";
    const { designId } = await shop.makeDesign(reef, "Named");
    await page.waitForSelector(".pump-use:has-text('It is in one design.')");
    expect(await page.getAttribute(".pump-use .design-open", "href")).toContain(designId);
    await page.click("button:text-is('Remove this pump')");
    await page.waitForSelector("dialog:has-text('It is in one design.')");
    await page.click("button:text-is('Remove it now')");
    await page.waitForSelector(".pump-news:has-text('was removed')");
    expect(await kept("ours-75")).toBeUndefined();
    await page.click("button:text-is('Put it back')");
    await page.waitForSelector(".pump-news:has-text('is back')");
    expect((await kept("ours-75"))?.data.model).toBe("F75 of ours");
    await context.close();
  });

  it("shows what a table would do before it keeps the good rows, and hands the same table out again", async () => {
    const known = named("table-1");
    await put(known);
    const { page, context } = await shop.open("#/pumpTable");
    const bad = { ...named("table-3"), model: "", powerFactor: 7 };
    const csv = writePumpCsv([{ ...known, price: 500 }, named("table-2", "ferrow-c80"), bad]);
    await page.setInputFiles("input[type=file]", {
      name: "spring.csv",
      mimeType: "text/csv",
      buffer: Buffer.from(csv.replace(",7,", ",seven,")),
    });
    await page.waitForSelector(".table-review");
    const review = await page.textContent(".table-review");
    expect(review).toMatch(/Wrong, left out \(2\).*Row 4 · power factor · table-3.*“seven” is not a number/s);
    expect(review).toMatch(/Row 4 · model · table-3.*New \(1\).*Ferrow C80.*Changed \(1\).*Price: 234\.00.*500\.00/s);
    expect(await kept("table-2")).toBeUndefined();
    await page.click("button:text-is('Keep 2 pumps')");
    await page.waitForSelector(".review-said:has-text('2 pumps are kept')");
    expect((await kept("table-1"))?.data.price).toBe(500);
    expect((await kept("table-2"))?.data).toEqual(named("table-2", "ferrow-c80"));
    expect(await kept("table-3")).toBeUndefined();
    // The same table has nothing new to say.
    await page.waitForSelector(".table-review:has-text('Unchanged (2)')");
    const [download] = await Promise.all([page.waitForEvent("download"), page.click("button:text-matches('as CSV')")]);
    expect(download.suggestedFilename()).toBe("pumps.csv");
    await context.close();
  });

  it("lets those who may only look see everything and change nothing", async () => {
    await put(named("look-1"));
    const context = await shop.browser.newContext();
    await context.route("**/api/session", (route) =>
      route.fulfill({
        json: { who: "account", accountId: "a1", name: "Ines", role: "readOnly", firstOwnerWanted: false },
      }),
    );
    const { page } = await shop.open("#/pumps", context);
    await page.waitForSelector(".pump-row[data-pump=look-1]");
    expect(await page.locator("a:text-is('New pump')").count()).toBe(0);
    await page.click(".pump-row[data-pump=look-1]");
    await page.waitForSelector(".pump-note:has-text('may look and not change')");
    expect(await page.inputValue(field("price"))).toBe("234");
    expect(await page.locator("form input:not([readonly]):not([disabled])").count()).toBe(0);
    expect(await page.locator(".pump-form button, .job-ends button").count()).toBe(0);
    await page.goto(`${shop.address}#/pumpTable`);
    await page.waitForSelector("button:text-matches('template')");
    expect(await page.locator("input[type=file]").count()).toBe(0);
    await context.close();
  });

  for (const colorScheme of ["light", "dark"] as const)
    for (const width of [390, 1440])
      it(`has no serious barrier, ${colorScheme}, ${width} px, and nothing is too wide or lower than a finger`, async () => {
        if ((await kept("house-1")) === undefined) await put(named("house-1", "ferrow-c80"));
        const context = await shop.browser.newContext({
          viewport: { width, height: 844 },
          colorScheme,
          hasTouch: width < 1000,
        });
        const { page } = await shop.open("#/pumps", context);
        for (const { path, ready, act } of screens) {
          await page.goto(shop.address + path);
          await page.waitForSelector(ready, { state: "attached" });
          await act?.(page);
          await page.waitForTimeout(150);
          expect(await barriers(page), path).toEqual([]);
          const over = await page.evaluate(
            () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
          );
          expect(over, path).toBeLessThanOrEqual(0);
          if (width < 1000) expect(await lowTargets(page), path).toEqual([]);
        }
        await context.close();
      }, 120_000);
});

interface Screen {
  readonly path: string;
  readonly ready: string;
  readonly act?: (page: Page) => Promise<void>;
}

/** Every screen, two of them with all that can be told on them. */
const screens: readonly Screen[] = [
  { path: "#/pumps", ready: ".pump-row[data-pump]" },
  { path: "#/pumps/house-1", ready: ".plot-curve" },
  {
    path: "#/newPump",
    ready: ".pump-form",
    act: async (page) => {
      await page.click(".pump-hands .action-strong");
      await page.waitForSelector(".field-problem");
    },
  },
  {
    path: "#/pumpTable",
    ready: ".drop",
    act: async (page) => {
      await page.click("summary");
      const csv = writePumpCsv([named("far-1"), { ...named("far-2"), soundLevel: 5, powerFactor: 3 }]);
      await page.setInputFiles("input[type=file]", { name: "a.csv", mimeType: "text/csv", buffer: Buffer.from(csv) });
      await page.waitForSelector(".table-review");
    },
  },
];

/** What a finger would miss, lower than 44 px. */
const lowTargets = (page: Page) =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        "main a, main button, main input:not([type=file], [type=checkbox]), main select, main summary, main textarea",
      ),
    ]
      .map((element) => ({ name: element.textContent || element.className, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.height > 0 && box.height < 43.5)
      .map(({ name, box }) => `${name} ${box.height}`),
  );

/** Pastes a text into a cell, as out of a sheet program. */
async function paste(page: Page, place: string, text: string): Promise<void> {
  await page.waitForSelector(field(place));
  await page.evaluate(
    ([selector, data]) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData("text/plain", data!);
      document
        .querySelector(selector!)!
        .dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
    },
    [field(place), text],
  );
}
