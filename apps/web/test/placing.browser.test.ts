import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { part, spotOf, touch, undo } from "./onDrawing.ts";
import { type ServedBench, serveBench } from "./servedBench.ts";

/** A pump in the display of the demonstration job, at 60 mm along and 430 mm up. */
const pump = "/tankPumps/0";

describe.skipIf(maySkipBrowserTests())("what has a place, moved by hand on the side view", () => {
  let bench: ServedBench;
  beforeAll(async () => {
    bench = await serveBench();
  });
  afterAll(async () => {
    await bench?.stop();
  });

  it("by mouse: drags a pump along and up, then its aim, each one step", async () => {
    const { page, complaints } = await bench.open();
    const before = await placeOf(page);
    const spot = await spotOf(page, pump);
    await drag(page, spot, { x: spot.x + 90, y: spot.y - 45 });
    const after = await placeOf(page);
    expect(after.along).toBeGreaterThan(before.along + 100);
    expect(after.up).toBeGreaterThan(before.up + 50);
    // Twice as far along as up, to the step of 5 mm.
    expect(Math.abs(after.along - before.along - 2 * (after.up - before.up))).toBeLessThanOrEqual(10);
    const grip = (await page.locator(`[data-grip-aim="${pump}"]`).boundingBox())!;
    const tip = { x: grip.x + grip.width / 2, y: grip.y + grip.height / 2 };
    await drag(page, tip, { x: tip.x, y: tip.y - 30 });
    expect((await placeOf(page)).pitch).toBeGreaterThan(before.pitch);
    await undo(page);
    expect((await placeOf(page)).pitch).toBe(before.pitch);
    await undo(page);
    expect(await placeOf(page)).toEqual(before);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("by finger: drags a pump in hand on a phone, where one not in hand lets the page scroll", async () => {
    const { page } = await bench.open({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    const finger = await page.context().newCDPSession(page);
    const spot = await spotOf(page, pump);
    await page.touchscreen.tap(spot.x, spot.y);
    await page.waitForSelector(`${part(pump)}.tw-targetHeld`);
    await page.waitForSelector(`[data-grip-place="${pump}"]`);
    const before = await placeOf(page);
    const held = await spotOf(page, pump);
    await touch(finger, "touchStart", [held]);
    for (let i = 1; i <= 5; i += 1) await touch(finger, "touchMove", [{ x: held.x + i * 8, y: held.y + i * 3 }]);
    await touch(finger, "touchEnd", []);
    await page.waitForTimeout(150);
    const after = await placeOf(page);
    expect(after.along).toBeGreaterThan(before.along + 50);
    expect(after.up).toBeLessThan(before.up);
    await page.context().close();
  });

  it("by keyboard: M and arrows move it, A and arrows turn it, and what is going on is told", async () => {
    const { page, complaints } = await bench.open();
    const before = await placeOf(page);
    await page.focus(part(pump));
    await page.keyboard.press("m");
    await page.waitForSelector('.tw-elevation[data-state="SteeringPart"]');
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Shift+ArrowDown");
    await page.keyboard.press("a");
    await page.keyboard.press("ArrowUp");
    await page.waitForFunction(() =>
      /^Aim .+ up/.test(document.querySelector(".tw-prompt [role=status]")?.textContent ?? ""),
    );
    await page.keyboard.press("Enter");
    expect(await placeOf(page)).toEqual({
      along: before.along + 10,
      up: before.up - 50,
      pitch: before.pitch + 5,
    });
    for (let i = 0; i < 3; i += 1) await undo(page);
    expect(await placeOf(page)).toEqual(before);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("in the table alone: hangs the box on the right wall, and the side view shows it there", async () => {
    const { page, complaints } = await bench.open();
    await page.click("#tab-parts");
    const wall = page.locator('.parts-table [data-part="/overflow"] select').filter({ hasText: "The right wall" });
    const [left] = [await spotOf(page, "/overflow/weir")];
    await wall.selectOption("right");
    await page.waitForFunction(
      ([selector, x]) => document.querySelector(selector as string)!.getBoundingClientRect().x > (x as number) + 40,
      [part("/overflow/weir"), left.x] as const,
    );
    // The flow runs the other way: the return chamber is now the leftmost.
    expect((await spotOf(page, "/sump/chambers/2")).x).toBeLessThan((await spotOf(page, "/sump/chambers/0")).x);
    const field = page.locator(`.parts-table [data-part="${pump}"] .figure-input >> nth=2`);
    await field.fill("250 mm");
    await field.press("Enter");
    await page.waitForTimeout(150);
    const numbers = await page
      .locator(`.parts-table [data-part="${pump}"] .figure-input`)
      .evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value));
    expect(numbers).toContain("250 mm");
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it.each([1440, 820, 390])("keeps every number of the table of parts in sight at %i px", async (width) => {
    const { page } = await bench.open({ viewport: { width, height: 900 } });
    await page.click("#tab-parts");
    await page.waitForSelector(".parts-table tbody tr");
    const hidden = await page.evaluate(() => {
      const frame = document.querySelector(".parts-table")!.closest(".table-scroll")!.getBoundingClientRect();
      return [...document.querySelectorAll<HTMLElement>(".parts-table td.number")].flatMap((cell) => {
        if (cell.textContent === "") return [];
        const box = cell.getBoundingClientRect();
        const tools = cell.parentElement!.querySelector(".tools-cell")!.getBoundingClientRect();
        const level = tools.top < box.bottom && tools.bottom > box.top;
        const under = level && tools.left < box.right - 1 && tools.right > box.left + 1;
        const row = cell.closest("tr")!.dataset["part"];
        return under || box.right > frame.right + 1 ? [`${row}: ${cell.textContent}`] : [];
      });
    });
    expect(hidden).toEqual([]);
    await page.context().close();
  });

  it("leaves the part in hand and its label in sight beside its actions", async () => {
    const { page } = await bench.open();
    for (const path of ["/loops/0/pumps/0", "/drains/0", pump]) {
      await page.focus(part(path));
      await page.keyboard.press("Space");
      await page.waitForSelector(`${part(path)}.tw-targetHeld`);
      await page.waitForSelector(".tw-bar");
      await page.waitForTimeout(60);
      const [bar, label, anchor] = [
        (await page.locator(".tw-bar").boundingBox())!,
        await page.locator(".tw-labelHeld").boundingBox(),
        await spotOf(page, path),
      ];
      const sheet = (await page.locator("svg.tw-picture").boundingBox())!;
      expect(bar.x, path).toBeGreaterThanOrEqual(sheet.x);
      expect(bar.x + bar.width, path).toBeLessThanOrEqual(sheet.x + sheet.width);
      if (label !== null)
        expect(
          bar.x < label.x + label.width &&
            bar.x + bar.width > label.x &&
            bar.y < label.y + label.height &&
            bar.y + bar.height > label.y,
          path,
        ).toBe(false);
      expect(
        anchor.x > bar.x && anchor.x < bar.x + bar.width && anchor.y > bar.y && anchor.y < bar.y + bar.height,
        path,
      ).toBe(false);
    }
    await page.context().close();
  });
});

/** What the sheet beside the drawing says of the pump in hand [mm, degrees]. */
async function placeOf(page: Page): Promise<{ along: number; up: number; pitch: number }> {
  await page.focus(part(pump));
  await page.waitForTimeout(60);
  const [along, up, pitch] = await page.evaluate(() =>
    ["Place along the tank", "Place above the tank floor", "Aim, up"].map((name) => {
      const label = [...document.querySelectorAll("label")].find(
        (one) => one.textContent?.includes(name) && one.closest(".parts-table") === null,
      );
      const id = label?.getAttribute("for");
      const input = (id ? document.getElementById(id) : label?.querySelector("input")) as HTMLInputElement | null;
      return Number.parseFloat((input?.value ?? "").replace("−", "-"));
    }),
  );
  return { along: along!, up: up!, pitch: pitch! };
}

async function drag(page: Page, from: { x: number; y: number }, to: { x: number; y: number }): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (let i = 1; i <= 6; i += 1)
    await page.mouse.move(from.x + ((to.x - from.x) * i) / 6, from.y + ((to.y - from.y) * i) / 6);
  await page.mouse.up();
  await page.waitForTimeout(100);
}
