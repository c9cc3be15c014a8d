import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { barriers } from "./barriers.ts";
import { type ServedBench, serveBench } from "./servedBench.ts";

const screens = [
  { name: "phone", viewport: { width: 390, height: 844 }, hasTouch: true },
  { name: "desk", viewport: { width: 1440, height: 900 }, hasTouch: false },
] as const;
const smallestTarget = 44;

describe.skipIf(maySkipBrowserTests())("the bench on paper and graphite, phone and desk", () => {
  let bench: ServedBench;
  beforeAll(async () => {
    bench = await serveBench();
  });
  afterAll(async () => {
    await bench?.stop();
  });

  for (const screen of screens)
    for (const colorScheme of ["light", "dark"] as const)
      it(`has no serious barrier on a ${screen.name}, ${colorScheme}`, async () => {
        const { page, complaints } = await bench.open({
          viewport: screen.viewport,
          hasTouch: screen.hasTouch,
          colorScheme,
        });
        expect(await barriers(page)).toEqual([]);
        await page.click(".section-index button:text-is('Loops')");
        for (const tab of ["pumps", "levers", "parts", "sheet", "safety"]) {
          await page.click(`#tab-${tab}`);
          await page.waitForTimeout(400);
          expect(await barriers(page), tab).toEqual([]);
        }
        await page.waitForSelector(".safety-table", { timeout: 60_000 });
        expect(await barriers(page), "the safety table").toEqual([]);
        await page.click(".tool:text-is('What if')");
        await page.waitForSelector(".film-chart");
        expect(await barriers(page), "the film").toEqual([]);
        await page.click(".tool:text-is('New')");
        await page.waitForSelector("#start-tank-length");
        expect(await barriers(page), "at the counter").toEqual([]);
        expect(complaints).toEqual([]);
        await page.context().close();
      });

  it("never scrolls sideways", async () => {
    for (const width of [360, 390, 768, 1100, 1440, 1920]) {
      const { page } = await bench.open({ viewport: { width, height: 850 } });
      await page.click(".section-index button:text-is('Overflow')");
      const over = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(over, `${width} px`).toBeLessThanOrEqual(0);
      await page.context().close();
    }
  });

  it("stays one sheet at a desk while the list of pumps is open, and never scrolls into blank", async () => {
    const { page } = await bench.open();
    await page.click("#tab-pumps");
    await page.waitForSelector(".ranking-table .pareto");
    const beyond = await page.evaluate(() => document.documentElement.scrollHeight - innerHeight);
    expect(beyond).toBeLessThanOrEqual(0);
    await page.context().close();
  });

  it("ends a name that is too long with dots and has the whole of it on hovering", async () => {
    const { page } = await bench.open({ viewport: { width: 390, height: 844 } });
    const name = page.locator(".job-name input");
    const long = "A reef of eighty letters ".repeat(4).slice(0, 80).trim();
    await name.fill(long);
    await name.press("Enter");
    expect(await name.evaluate((input) => input.scrollWidth > input.clientWidth)).toBe(true);
    expect(await name.evaluate((input) => getComputedStyle(input).textOverflow)).toBe("ellipsis");
    expect(await name.getAttribute("title")).toBe(long);
    await page.context().close();
  });

  it("keeps the drawing in sight on a phone while the findings pass under it", async () => {
    const { page } = await bench.open({ viewport: { width: 390, height: 844 }, hasTouch: true });
    await page.locator("#findings").scrollIntoViewIfNeeded();
    await page.mouse.wheel(0, 2000);
    await page.waitForTimeout(200);
    const top = await page.locator(".drawing").evaluate((element) => element.getBoundingClientRect().top);
    expect(top).toBeCloseTo(0, 0);
    await page.context().close();
  });

  it("gives fingers targets of 44 px", async () => {
    const { page } = await bench.open({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    await page.click(".section-index button:text-is('Sump')");
    const small = await page.evaluate((least) => {
      const targets = document.querySelectorAll<HTMLElement>(
        ".tool, .tabs button, .section-index button, .inspector .hand, .inspector input, .inspector select, .action, .icon-button",
      );
      return [...targets]
        .map((element) => ({
          text: element.getAttribute("aria-label") ?? element.textContent ?? "",
          box: element.getBoundingClientRect(),
        }))
        .filter(({ box }) => box.height > 0 && box.height < least - 0.5)
        .map(({ text, box }) => `${text} ${box.height}`);
    }, smallestTarget);
    expect(small).toEqual([]);
    await page.context().close();
  });

  it("reaches everything on the bar by keyboard and shows where the focus is", async () => {
    const { page } = await bench.open();
    const reached: string[] = [];
    for (let presses = 0; presses < 10; presses += 1) {
      await page.keyboard.press("Tab");
      const at = await page.evaluate(() => {
        const element = document.activeElement as HTMLElement;
        const { outlineStyle } = getComputedStyle(element);
        return { name: element.getAttribute("aria-label") ?? element.textContent ?? "", seen: outlineStyle !== "none" };
      });
      expect(at.seen, at.name).toBe(true);
      reached.push(at.name);
    }
    for (const name of ["Open", "New", "Save", "Units", "Sheet"]) expect(reached).toContain(name);
    await page.context().close();
  });

  it("stands still for those who ask for it", async () => {
    const { page } = await bench.open({ reducedMotion: "reduce" });
    const moving = await page.evaluate(() =>
      [...document.querySelectorAll("*")]
        .filter((element) => {
          const style = getComputedStyle(element);
          return style.animationName !== "none" || Number.parseFloat(style.transitionDuration) > 0.01;
        })
        .map((element) => element.className.toString()),
    );
    expect(moving).toEqual([]);
    await page.context().close();
  });
});
