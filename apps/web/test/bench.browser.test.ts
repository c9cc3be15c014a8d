import { readFile } from "node:fs/promises";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { changedFigure, figure, numberIn, type ServedBench, serveBench } from "./servedBench.ts";

const jobs = ["waiting-room-reef", "school-corridor", "hotel-lobby", "first-tank"];

describe.skipIf(maySkipBrowserTests())("the bench in a browser", () => {
  let bench: ServedBench;
  beforeAll(async () => {
    bench = await serveBench();
  });
  afterAll(async () => {
    await bench?.stop();
  });

  it("opens each of the four jobs and answers with finite numbers", async () => {
    const { page, complaints } = await bench.open();
    for (const job of jobs) {
      await openJob(page, job);
      await page.waitForSelector(".drawing svg");
      expect(numberIn(await figure(page, "flow")), job).toBeGreaterThan(0);
      expect(numberIn(await figure(page, "watts")), job).toBeGreaterThan(0);
      expect(await page.textContent("main"), job).not.toMatch(/NaN|undefined|Infinity/);
    }
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("lowers the flow when a riser is made longer by keyboard, and undo brings it back", async () => {
    const { page } = await bench.open();
    const before = await figure(page, "flow");
    await page.focus("#tab-pumps");
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowRight");
    const riser = page.locator('[data-part="/loops/0/run/0"] [data-path="/loops/0/run/0/length"]');
    await riser.focus();
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type("9 m");
    await page.keyboard.press("Enter");
    const longer = await changedFigure(page, "flow", before);
    // A longer pipe never raises the flow: monotone by the energy equation, analytic.
    expect(numberIn(longer)).toBeLessThan(numberIn(before));
    await page.keyboard.press("Tab");
    await page.keyboard.press("ControlOrMeta+Z");
    expect(await changedFigure(page, "flow", longer)).toBe(before);
    await page.keyboard.press("ControlOrMeta+Shift+Z");
    expect(await changedFigure(page, "flow", before)).toBe(longer);
    await page.context().close();
  });

  it("takes feet and inches into a metric field and keeps them as they were typed", async () => {
    const { page } = await bench.open();
    await section(page, "Display");
    const height = page.locator('.inspector [data-path="/display/standHeight"]');
    await height.fill(`3' 4 1/2"`);
    await height.press("Enter");
    expect(await height.inputValue()).toBe(`3' 4 1/2"`);
    // 40.5 in = 1028.7 mm exactly (NIST SP 811).
    expect(await page.textContent('.field:has([data-path="/display/standHeight"]) .field-also')).toMatch(/1029\smm/u);
    await page.context().close();
  });

  it("says what is wrong with a length, loses no letter of it, and leaves the document alone", async () => {
    const { page } = await bench.open();
    const before = await figure(page, "flow");
    await section(page, "Display");
    const length = page.locator('.inspector [data-path="/display/length"]');
    await length.fill("25 L");
    await length.press("Enter");
    expect(await page.textContent(".inspector .field-problem")).toMatch(/volume/);
    expect(await length.inputValue()).toBe("25 L");
    await length.fill("-3 mm");
    await length.press("Enter");
    expect(await page.textContent(".inspector .field-problem")).toMatch(/greater than zero|above zero|zero/);
    expect(await figure(page, "flow")).toBe(before);
    expect(await page.getAttribute('button[aria-label^="Undo"]', "disabled")).not.toBeNull();
    await page.context().close();
  });

  it("shows every problem of a bad file at once and keeps the job on the table", async () => {
    const { page } = await bench.open();
    const broken = JSON.stringify({
      tidewright: 1,
      name: "Broken",
      water: { salinity: { value: 35, unit: "ppt" }, temperature: { value: 25, unit: "furlongs" } },
      display: { length: { value: -5, unit: "mm" } },
      colour: "blue",
    });
    await drop(page, "broken.json", broken);
    await page.waitForSelector(".sheet-problems[open] .problem-list li");
    const paths = await page.locator(".problem-path").allTextContents();
    for (const path of ["/water/temperature/unit", "/display/length", "/display/width", "/colour", "/drains", "/loops"])
      expect(paths).toContain(path);
    expect(await page.textContent(".sheet-problems")).toMatch(/furlongs/);
    await page.keyboard.press("Escape");
    expect(await page.inputValue('[data-path="/name"]')).toBe("Waiting-room reef");
    await page.context().close();
  });

  it("opens a good file that is dropped on it", async () => {
    const { page } = await bench.open();
    const text = await readFile(new URL("../../../examples/first-tank-110.json", import.meta.url), "utf8");
    await drop(page, "mine.json", JSON.stringify({ ...JSON.parse(text), name: "Dropped in" }));
    await page.waitForFunction(
      () => document.querySelector<HTMLInputElement>('[data-path="/name"]')?.value === "Dropped in",
    );
    await page.context().close();
  });

  it("turns all numbers to US units at once and back, and remembers one unit of one's own", async () => {
    const { page } = await bench.open();
    const metric = numberIn(await figure(page, "flow"));
    await page.click(".tool:text-is('Units')");
    await page.click("[data-system=us]");
    const us = await figure(page, "flow");
    expect(us).toMatch(/gal\/h/);
    // 1 US gal = 3.785411784 L exactly (NIST SP 811).
    expect(numberIn(us)).toBeCloseTo(metric / 3.785411784, -1);
    await page.click(".tool:text-is('Units')");
    await page.click("text=Choose each");
    await page.selectOption("#unit-flow", "m3/h");
    await page.keyboard.press("Escape");
    expect(await figure(page, "flow")).toMatch(/m³\/h/);
    await page.reload();
    await page.waitForSelector("[data-figure=flow]");
    expect(await figure(page, "flow")).toMatch(/m³\/h/);
    await page.context().close();
  });

  it("ranks the pumps and puts another one into the loop, and undo takes it out again", async () => {
    const { page } = await bench.open();
    await openJob(page, "first-tank");
    const before = await figure(page, "pump");
    await page.click("#tab-pumps");
    await page.waitForSelector(".ranking:not([data-stale]) .ranking-table tr[data-pump]");
    const other = page.locator(".ranking-table tr[data-pump]:not([data-in-use])").first();
    const name = (await other.locator(".pump-cell").textContent()) ?? "";
    await other.locator("button").click();
    const after = await changedFigure(page, "pump", before);
    expect(name).toContain(after.replace(/^\d+ × /, ""));
    await page.click('button[aria-label^="Undo"]');
    expect(await changedFigure(page, "pump", after)).toBe(before);
    await page.context().close();
  });

  it("sorts the ranking by price", async () => {
    const { page } = await bench.open();
    await openJob(page, "first-tank");
    await page.click("#tab-pumps");
    await page.waitForSelector(".ranking:not([data-stale]) .ranking-table tr[data-pump]");
    await page.click(".ranking-table th:has-text('Price') button");
    const prices = (await page.locator(".ranking-table tr[data-pump] td:nth-child(8)").allTextContents()).map(numberIn);
    expect(prices.length).toBeGreaterThan(1);
    expect(prices).toEqual([...prices].sort((a, b) => a - b));
    await page.context().close();
  });

  it("saves the design as it was typed, and opens again what it saved", async () => {
    const { page } = await bench.open();
    await section(page, "Display");
    await page.fill('.inspector [data-path="/display/length"]', "59 in");
    await page.press('.inspector [data-path="/display/length"]', "Enter");
    const [download] = await Promise.all([page.waitForEvent("download"), page.click(".tool:text-is('Save')")]);
    expect(download.suggestedFilename()).toBe("waiting-room-reef.json");
    const text = await readFile(await download.path(), "utf8");
    expect(JSON.parse(text).display.length).toEqual({ value: 59, unit: "in" });
    await openJob(page, "first-tank");
    await drop(page, "again.json", text);
    await page.waitForFunction(
      () => document.querySelector<HTMLInputElement>('[data-path="/name"]')?.value === "Waiting-room reef",
    );
    await page.context().close();
  });

  it("leads from the counter to pumps that fit", async () => {
    const { page, complaints } = await bench.open();
    await page.click(".tool:text-is('New')");
    await page.fill("#start-tank-length", `4' 0"`);
    await page.fill("#start-tank-width", "20 in");
    await page.fill("#start-tank-height", "nonsense");
    await page.click("text=Show the pumps that fit");
    expect(await page.textContent("#start-tank-height-problem")).toMatch(/nonsense/);
    await page.fill("#start-tank-height", "22 in");
    await page.waitForSelector(".start-preview .start-figures");
    await page.click("text=Show the pumps that fit");
    await page.waitForSelector(".ranking:not([data-stale]) .ranking-table tr[data-pump]");
    expect(await page.locator(".ranking-table tr[data-pump]").count()).toBeGreaterThanOrEqual(3);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("tells where a number comes from", async () => {
    const { page } = await bench.open();
    await page.click("[data-figure=flow] .sourced");
    const sheet = await page.textContent(".source-sheet[open]");
    expect(sheet).toMatch(/Static head/);
    expect(sheet).toMatch(/Source: .*Todini/);
    await page.keyboard.press("Escape");
    expect(await page.locator(".source-sheet[open]").count()).toBe(0);
    await page.context().close();
  });

  it("adds, moves and takes out a fitting on a line", async () => {
    const { page } = await bench.open();
    await page.click(".tool:text-is('Open')");
    await page.click("[data-job^=first-tank]");
    await section(page, "Loops");
    await page.click(".inspector .run-name");
    const line = page.locator(".inspector .run", { hasText: "Pressure side" });
    const before = await line.locator(".run-part").count();
    const flow = await figure(page, "flow");
    await line.locator(".adder select").selectOption("elbow");
    expect(numberIn(await changedFigure(page, "flow", flow))).toBeLessThan(numberIn(flow));
    const around = page.locator(".inspector .run", { hasText: "The line it stands in" });
    expect(await around.locator(".run-part").count()).toBe(before + 1);
    await around.locator('.run-part[data-selected] button[aria-label^="Move up"]').click();
    await page.click('button[aria-label^="Undo"]');
    await page.click('button[aria-label^="Undo"]');
    await page.waitForFunction(
      (old) => document.querySelector("[data-figure=flow] .sourced")?.textContent === old,
      flow,
    );
    await page.context().close();
  });

  it("offers for a finding the lever that helps, shows before and after, and takes it over", async () => {
    const { page } = await bench.open();
    await openJob(page, "first-tank");
    const finding = page.locator(".finding-danger").first();
    await finding.locator(".action").first().click();
    expect(await finding.locator(".effect-table tbody tr").count()).toBeGreaterThan(5);
    const before = await figure(page, "dangers");
    await finding.locator(".action-strong").click();
    expect(numberIn(`${await changedFigure(page, "dangers", before)}`) || 0).toBeLessThan(numberIn(before));
    await page.context().close();
  });
});

async function openJob(page: Page, job: string): Promise<void> {
  const before = await page.inputValue('[data-path="/name"]');
  await page.click(".tool:text-is('Open')");
  const entry = page.locator(`[data-job^=${job}]`);
  const name = (await entry.textContent()) ?? "";
  await entry.click();
  if (name !== before)
    await page.waitForFunction(
      (text) => document.querySelector<HTMLInputElement>('[data-path="/name"]')?.value === text,
      name,
    );
  await page.waitForSelector('.answer[aria-busy="false"]');
}

async function section(page: Page, name: string): Promise<void> {
  await page.click(`.section-index button:text-is('${name}')`);
  await page.waitForSelector(".inspector");
}

async function drop(page: Page, name: string, text: string): Promise<void> {
  const data = await page.evaluateHandle(
    ([fileName, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content], fileName, { type: "application/json" }));
      return transfer;
    },
    [name, text] as const,
  );
  await page.dispatchEvent("body", "dragover", { dataTransfer: data });
  await page.dispatchEvent("body", "drop", { dataTransfer: data });
}
