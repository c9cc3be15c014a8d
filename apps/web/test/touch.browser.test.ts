import type { CDPSession, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { canUndo, type Spot, touch } from "./onDrawing.ts";
import { type ServedBench, serveBench } from "./servedBench.ts";

/** Smallest side of what a finger must hit [px]: WCAG 2.2, 2.5.5, target size (enhanced). */
const smallestTarget = 44;

describe.skipIf(maySkipBrowserTests())("a finger on the drawing", () => {
  let bench: ServedBench;
  beforeAll(async () => {
    bench = await serveBench();
  });
  afterAll(async () => {
    await bench?.stop();
  });

  const tablet = async () => {
    const { page } = await bench.open({ viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true });
    await page.waitForSelector('[data-grip="/overflow/weir"]');
    return { page, finger: await page.context().newCDPSession(page) };
  };

  it("lowers the weir's crest when its grip is pulled down, as one step of the history", async () => {
    const { page, finger } = await tablet();
    const before = await dialOf(page, "/overflow/weir");
    await pull(finger, [await spotOf(page, "/overflow/weir")], [{ x: 0, y: 24 }]);
    await page.waitForFunction(
      (old) => document.querySelector('[data-path="/overflow/weir"]')?.getAttribute("aria-valuenow") !== old,
      String(before),
    );
    expect(await dialOf(page, "/overflow/weir")).toBeLessThan(before);
    await page.click('button[aria-label^="Undo"]');
    expect(await dialOf(page, "/overflow/weir")).toBe(before);
    expect(await canUndo(page)).toBe(false);
    await page.context().close();
  });

  it("turns a pump down when the knob of its arc is pulled back", async () => {
    const { page, finger } = await tablet();
    const before = await dialOf(page, "/loops/0/pumps/0");
    await pull(finger, [await spotOf(page, "/loops/0/pumps/0")], [{ x: 14, y: -24 }]);
    await page.waitForTimeout(100);
    expect(await dialOf(page, "/loops/0/pumps/0")).toBeLessThan(before);
    await page.context().close();
  });

  it("only takes a part in hand on a tap, even where the fingertip rolls", async () => {
    const { page, finger } = await tablet();
    await pull(finger, [await spotOf(page, "/overflow/weir")], [{ x: 2, y: 5 }]);
    await page.waitForSelector('.inspector[data-part="/overflow"], .inspector[data-part="/overflow/weir"]');
    expect(await canUndo(page)).toBe(false);
    await page.context().close();
  });

  it("takes a pull back when a second finger makes a pinch of it", async () => {
    const { page, finger } = await tablet();
    const grip = await spotOf(page, "/overflow/weir");
    const before = await dialOf(page, "/overflow/weir");
    const other = { x: grip.x + 120, y: grip.y + 160 };
    await touch(finger, "touchStart", [grip]);
    for (let y = 4; y <= 20; y += 4) await touch(finger, "touchMove", [{ x: grip.x, y: grip.y + y }]);
    await page.waitForTimeout(60);
    expect(await canUndo(page)).toBe(true);
    const held = { x: grip.x, y: grip.y + 20 };
    await touch(finger, "touchStart", [held, other]);
    await touch(finger, "touchMove", [
      { x: held.x, y: held.y - 30 },
      { x: other.x, y: other.y + 30 },
    ]);
    await touch(finger, "touchEnd", []);
    await page.waitForTimeout(100);
    expect(await dialOf(page, "/overflow/weir")).toBe(before);
    expect(await canUndo(page)).toBe(false);
    await page.context().close();
  });

  it("changes nothing when the page is scrolled by a finger that began on the drawing", async () => {
    const { page, finger } = await tablet();
    const box = await page.locator(".drawing svg.tw-picture").boundingBox();
    const start = { x: box!.x + box!.width * 0.5, y: box!.y + box!.height * 0.33 };
    await pull(finger, [start], [{ x: 0, y: -160 }]);
    await page.waitForTimeout(100);
    expect(await canUndo(page)).toBe(false);
    await page.context().close();
  });

  it("finds every grip and every flag 44 px wide", async () => {
    const { page } = await tablet();
    const small = await page.evaluate(
      (least) =>
        // The body of a pump in the tank lies inside the arc of its speed and cannot be larger: WCAG's exception for what
        // an equivalent control does, looked at below.
        [...document.querySelectorAll(".drawing .tw-hit:not(.tw-drag-place)")]
          .map((element) => element.getBoundingClientRect())
          .filter(({ width, height }) => width < least - 0.5 || height < least - 0.5)
          .map(({ width, height }) => `${width} x ${height}`),
      smallestTarget,
    );
    expect(small).toEqual([]);
    expect(await page.locator(".drawing .tw-hit").count()).toBeGreaterThan(5);
    const pump = await page.locator(".drawing [data-path='/tankPumps/0']").boundingBox();
    await page.touchscreen.tap(pump!.x + pump!.width / 2, pump!.y + pump!.height / 2);
    await page.waitForSelector(".inspector[data-part='/tankPumps/0']");
    const fields = await page
      .locator(".inspector input")
      .evaluateAll((inputs) => inputs.map((input) => input.getBoundingClientRect().height));
    // Along, up and across, and the aim.
    expect(fields.filter((height) => height >= smallestTarget - 0.5).length).toBeGreaterThanOrEqual(3);
    await page.context().close();
  });
});

async function spotOf(page: Page, part: string): Promise<Spot> {
  const box = await page.locator(`[data-grip="${part}"]`).boundingBox();
  return { x: box!.x + box!.width / 2, y: box!.y + box!.height / 2 };
}

const dialOf = async (page: Page, part: string): Promise<number> =>
  Number(await page.locator(`.drawing [data-path="${part}"]`).getAttribute("aria-valuenow"));

/** Fingers that go down, move by the given ways in small steps, and lift. */
async function pull(finger: CDPSession, from: readonly Spot[], by: readonly Spot[]): Promise<void> {
  const steps = 8;
  await touch(finger, "touchStart", from);
  for (let step = 1; step <= steps; step += 1)
    await touch(
      finger,
      "touchMove",
      from.map(({ x, y }, i) => ({ x: x + (by[i]!.x * step) / steps, y: y + (by[i]!.y * step) / steps })),
    );
  await touch(finger, "touchEnd", []);
}
