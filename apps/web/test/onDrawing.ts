import type { CDPSession, Page } from "playwright-core";

/** A place on the page [px]. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** What stands for a part on the drawing. */
export const part = (path: string): string => `.drawing .tw-target[data-path="${path}"]`;

/** The middle of a part on the drawing, once it is there. */
export async function spotOf(page: Page, path: string): Promise<Spot> {
  await page.waitForSelector(part(path));
  const box = (await page.locator(part(path)).boundingBox())!;
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

export const canUndo = async (page: Page): Promise<boolean> =>
  (await page.getAttribute('button[aria-label^="Undo"]', "disabled")) === null;

export async function undo(page: Page): Promise<void> {
  await page.click('button[aria-label^="Undo"]');
  await page.waitForSelector('.answer[aria-busy="false"]');
  await page.waitForTimeout(60);
}

/** Fingers as a touch screen tells of them. */
export async function touch(
  finger: CDPSession,
  type: "touchStart" | "touchMove" | "touchEnd",
  points: readonly Spot[],
): Promise<void> {
  await finger.send("Input.dispatchTouchEvent", { type, touchPoints: points.map(({ x, y }, id) => ({ x, y, id })) });
}
