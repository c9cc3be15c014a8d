import type { CDPSession, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { canUndo, part, spotOf, touch, undo } from "./onDrawing.ts";
import { type ServedBench, serveBench } from "./servedBench.ts";
import { moving } from "./usualContext.ts";

/** The riser of the demonstration job, and the branch it stands in. */
const branch = "/loops/0/run/4/branches/0";
const riser = `${branch}/0`;

describe.skipIf(maySkipBrowserTests())("the drawing as the editor", () => {
  let bench: ServedBench;
  beforeAll(async () => {
    bench = await serveBench();
  });
  afterAll(async () => {
    await bench?.stop();
  });

  it("by mouse: cuts a pipe for an elbow, shows where it lands, and takes it back as one step", async () => {
    const { page, complaints } = await bench.open();
    await page.waitForSelector(part(riser));
    const before = await lengthOf(page, riser);
    await page.click(".tw-tool >> nth=0");
    await page.click("[data-choice=elbow]");
    const spot = await spotOf(page, riser);
    await page.mouse.move(spot.x, spot.y + 12);
    await page.waitForSelector(`[data-ghost="${riser}"]`);
    await page.mouse.down();
    await page.mouse.up();
    await page.waitForSelector(`${part(`${branch}/1`)}.tw-targetHeld`);
    const first = await lengthOf(page, riser);
    const second = await lengthOf(page, `${branch}/2`);
    expect(first + second).toBe(before);
    expect(first).toBeGreaterThan(0);
    expect(second).toBeGreaterThan(0);
    await undo(page);
    expect(await lengthOf(page, riser)).toBe(before);
    expect(await canUndo(page)).toBe(false);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("by mouse: draws a closed loop in one stroke, with the pump still to be chosen, and undoes it", async () => {
    const { page } = await bench.open();
    await page.waitForSelector(part("/display"));
    await page.click(".tw-tool >> nth=1");
    const from = await spotOf(page, "/display");
    await page.mouse.move(from.x, from.y + 30);
    await page.mouse.down();
    await page.mouse.move(from.x + 60, from.y + 60);
    await page.mouse.move(from.x + 110, from.y + 80);
    await page.waitForSelector('[data-route="display"]');
    await page.mouse.up();
    await page.waitForSelector(part("/loops/1/pumps/0"));
    expect(await page.textContent("#tab-pumps[aria-selected=true]")).toBeTruthy();
    await undo(page);
    await page.waitForSelector(part("/loops/1/pumps/0"), { state: "detached" });
    await page.context().close();
  });

  it("by mouse: adds a second pump at the first, removes it again, and says why the last one stays", async () => {
    const { page } = await bench.open();
    const spot = await spotOf(page, "/loops/0/pumps/0");
    await page.mouse.click(spot.x, spot.y);
    await page.click('.tw-bar [data-act="add.pumpBeside"]');
    await page.waitForSelector(`${part("/loops/0/pumps/1")}.tw-targetHeld`);
    await page.click(".tw-bar [data-act=remove]");
    await page.waitForSelector(part("/loops/0/pumps/1"), { state: "detached" });
    await page.click(".tw-bar [data-act=remove]");
    expect(await page.textContent(".tw-refused")).toMatch(/only pump/);
    await undo(page);
    await page.waitForSelector(part("/loops/0/pumps/1"));
    await undo(page);
    expect(await canUndo(page)).toBe(false);
    await page.context().close();
  });

  it("by mouse: types a length at its label in inches, and tells what is wrong with a volume", async () => {
    const { page } = await bench.open();
    const spot = await spotOf(page, riser);
    await page.mouse.dblclick(spot.x, spot.y);
    const field = page.locator(".tw-inPlace input");
    await field.fill("12 L");
    await field.press("Enter");
    expect(await page.textContent(".tw-inPlace .field-problem")).toMatch(/volume/);
    await field.fill("42 in");
    await field.press("Enter");
    await page.waitForSelector(".tw-inPlace", { state: "detached" });
    expect(await page.getAttribute(part(riser), "aria-valuetext")).toMatch(/42 in/);
    // The keyboard is back at the part.
    expect(await page.evaluate(() => document.activeElement?.getAttribute("data-path"))).toBe(riser);
    await page.context().close();
  });

  it("by mouse: zooms at the pointer, keeps the view over an edit, and shows the whole sheet again", async () => {
    const { page } = await bench.open();
    const spot = await spotOf(page, riser);
    const scale = () => page.textContent(".tw-sheetSmall");
    const whole = await scale();
    await page.mouse.move(spot.x, spot.y);
    for (let i = 0; i < 4; i += 1) await page.mouse.wheel(0, -120);
    await page.waitForFunction((old) => document.querySelector(".tw-sheetSmall")?.textContent !== old, whole);
    const near = await spotOf(page, riser);
    expect(Math.hypot(near.x - spot.x, near.y - spot.y)).toBeLessThan(3);
    const close = await scale();
    await page.mouse.click(near.x, near.y);
    await page.click(".tw-bar [data-act=duplicate]");
    await page.waitForSelector(`${part(`${branch}/1`)}.tw-targetHeld`);
    expect(await scale()).toBe(close);
    await page.click(".tw-toolsLook .tw-tool >> nth=1");
    await page.waitForFunction((old) => document.querySelector(".tw-sheetSmall")?.textContent !== old, close);
    await page.context().close();
  });

  it("by finger: puts a valve into a line, turns it, pinches the sheet, and undoes", async () => {
    const { page, finger } = await tablet(bench);
    await page.tap(".tw-tool >> nth=0");
    await page.tap("[data-choice=valve]");
    const spot = await spotOf(page, riser);
    await page.touchscreen.tap(spot.x, spot.y);
    await page.waitForSelector(`${part(`${branch}/1`)}.tw-targetHeld`);
    const grip = await page.locator(`[data-grip="${branch}/1"]`).boundingBox();
    await touch(finger, "touchStart", [{ x: grip!.x + grip!.width / 2, y: grip!.y + grip!.height / 2 }]);
    for (let i = 1; i <= 6; i += 1) await touch(finger, "touchMove", [{ x: grip!.x - i * 4, y: grip!.y - i * 8 }]);
    await touch(finger, "touchEnd", []);
    await page.waitForFunction(
      (path) => Number(document.querySelector(`.tw-target[data-path="${path}"]`)?.getAttribute("aria-valuenow")) < 1,
      `${branch}/1`,
    );
    const scale = await page.textContent(".tw-sheetSmall");
    const box = (await page.locator("svg.tw-picture").boundingBox())!;
    // In the display's water, where nothing can be taken hold of.
    const [x, y] = [box.x + box.width / 2, box.y + box.height * 0.3];
    await touch(finger, "touchStart", [{ x: x - 40, y }]);
    await touch(finger, "touchStart", [
      { x: x - 40, y },
      { x: x + 40, y },
    ]);
    for (let i = 1; i <= 6; i += 1)
      await touch(finger, "touchMove", [
        { x: x - 40 - i * 12, y },
        { x: x + 40 + i * 12, y },
      ]);
    await touch(finger, "touchEnd", []);
    await page.waitForFunction((old) => document.querySelector(".tw-sheetSmall")?.textContent !== old, scale);
    await page.tap(".tw-toolsLook .tw-tool >> nth=1");
    await undo(page);
    await undo(page);
    expect(await canUndo(page)).toBe(false);
    await page.context().close();
  });

  it("by keyboard alone: inserts, branches, draws, removes, each undone as one step", async () => {
    const { page, complaints } = await bench.open();
    await page.waitForSelector(part(riser));
    await page.focus(part(riser));
    await page.keyboard.press("i");
    await page.waitForSelector(".tw-palette");
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
    await page.waitForSelector(`${part(`${branch}/1`)}.tw-targetHeld`);
    await page.waitForFunction((path) => document.activeElement?.getAttribute("data-path") === path, `${branch}/1`);
    await page.keyboard.press("Delete");
    await page.waitForFunction(
      (path) => document.querySelector(`.tw-target[data-path="${path}"]`)?.getAttribute("role") === "slider",
      `${branch}/0`,
    );
    await undo(page);
    await undo(page);
    expect(await canUndo(page)).toBe(false);
    // A tee, and its branch taken away again.
    await page.focus(part(riser));
    await page.keyboard.press("b");
    await page.waitForSelector(part(`${branch}/1/branches/1/1`));
    await undo(page);
    // A side loop from the return chamber to the first one.
    await page.focus(part("/sump/chambers/2"));
    await page.keyboard.press("p");
    await page.waitForSelector('.tw-elevation[data-state="RoutingRun"]');
    await page.focus(part("/sump/chambers/0"));
    await page.keyboard.press("Enter");
    await page.waitForSelector(part("/loops/1/pumps/0"));
    await undo(page);
    // What cannot go says so and stays.
    await page.focus(part("/overflow/weir"));
    await page.keyboard.press("Delete");
    expect(await page.textContent(".tw-refused")).toMatch(/part of every design/);
    await page.keyboard.press("?");
    await page.waitForSelector(".sheet-keys[open]");
    await page.keyboard.press("Escape");
    await page.waitForSelector(".sheet-keys[open]", { state: "detached" });
    expect(await canUndo(page)).toBe(false);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("in the table alone: inserts, adds a drain, draws a line, removes, and says why not", async () => {
    const { page, complaints } = await bench.open();
    await page.click("#tab-parts");
    await page.waitForSelector(`.parts-table [data-part="${riser}"]`);
    await page.selectOption(`.parts-table [data-part="${riser}"] .part-more`, "insert union");
    await page.waitForSelector(`.parts-table [data-part="${branch}/1"][data-selected]`);
    expect(await page.textContent(`.parts-table [data-part="${branch}/1"] .part-name`)).toMatch(/Union/);
    await page.click(`.parts-table [data-part="${branch}/1"] button[aria-label^="Take out"]`);
    await page.selectOption(".design-add", "drain");
    await page.waitForSelector('.parts-table [data-part="/drains/3"]');
    await page.selectOption(".line-from", "display");
    await page.selectOption(".line-to", "sump.drain");
    await page.click(".design-tools button");
    expect(await page.textContent(".table-why")).toMatch(/weir/);
    await page.selectOption(".line-to", "display");
    await page.click(".design-tools button");
    await page.waitForSelector(part("/loops/1/pumps/0"));
    for (let i = 0; i < 4; i += 1) await undo(page);
    expect(await canUndo(page)).toBe(false);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("shows the flow by moving marks, stops them at a button, and keeps still where motion is unwelcome", async () => {
    const { page } = await bench.open(moving);
    const marks = page.locator("canvas.tw-flow");
    await marks.waitFor();
    expect(Number(await marks.getAttribute("data-lines"))).toBeGreaterThan(3);
    const picture = () =>
      page.evaluate(() => document.querySelector<HTMLCanvasElement>("canvas.tw-flow")!.toDataURL().length);
    const seen = new Set<number>();
    for (let i = 0; i < 6; i += 1) {
      seen.add(await picture());
      await page.waitForTimeout(120);
    }
    expect(seen.size).toBeGreaterThan(1);
    await page.click(".tw-toolQuiet");
    await marks.waitFor({ state: "detached" });
    await page.context().close();
    const still = await bench.open({ reducedMotion: "reduce" });
    await still.page.waitForSelector("svg.tw-picture");
    expect(await still.page.locator("canvas.tw-flow").count()).toBe(0);
    expect(await still.page.locator(".tw-toolQuiet").count()).toBe(0);
    await still.page.context().close();
  });
});

const lengthOf = async (page: Page, path: string): Promise<number> =>
  Number(await page.getAttribute(part(path), "aria-valuenow"));

async function tablet(bench: ServedBench): Promise<{ page: Page; finger: CDPSession }> {
  const { page } = await bench.open({ viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true });
  await page.waitForSelector(part(riser));
  return { page, finger: await page.context().newCDPSession(page) };
}
