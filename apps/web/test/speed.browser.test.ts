import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { type ServedBench, serveBench } from "./servedBench.ts";
import { moving } from "./usualContext.ts";

describe.skipIf(maySkipBrowserTests())("an edit on screen", () => {
  let bench: ServedBench;
  beforeAll(async () => {
    bench = await serveBench();
  });
  afterAll(async () => {
    await bench?.stop();
  });

  it("is measured from the edit to its numbers and to their paint, and drops stale work", async () => {
    const { page } = await bench.open(moving);
    await page.click(".section-index button:text-is('Loops')");
    await page.click(".inspector .run-name");
    await page.locator(".inspector .run", { hasText: "Pumps" }).locator(".run-name").first().click();
    await page.locator(".inspector .slider").focus();
    // A pull of the slider by keyboard: forty edits, one after the other as fast as frames come.
    for (let step = 0; step < 40; step += 1) {
      await page.keyboard.press("ArrowLeft");
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(done)));
    }
    await page.waitForTimeout(200);
    const times = await page.evaluate(() => ({
      numbers: performance.getEntriesByName("edit-to-numbers").map(({ duration }) => duration),
      paint: performance.getEntriesByName("edit-to-paint").map(({ duration }) => duration),
    }));
    expect(times.numbers.length).toBeGreaterThan(0);
    expect(times.paint.length).toBeGreaterThan(0);
    // How long they took is for the measuring script (npm run speed); what is held here is that stale work was
    // dropped: an edit is never answered more often than it was made, and never painted before it was computed.
    expect(times.numbers.length).toBeLessThanOrEqual(40);
    expect(times.paint.length).toBeLessThanOrEqual(times.numbers.length);
    // The whole pull is one step of the history.
    await page.locator(".inspector .slider").blur();
    await page.click('button[aria-label^="Undo"]');
    expect(await page.getAttribute('button[aria-label^="Undo"]', "disabled")).not.toBeNull();
    await page.context().close();
  });
});
