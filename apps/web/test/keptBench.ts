import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";

/** A design to work on; where its display stands and how long it is are edited in tests. */
export const example = JSON.parse(
  readFileSync(new URL("../../../examples/waiting-room-reef.json", import.meta.url), "utf8"),
);

const height = '.inspector [data-path="/display/standHeight"]';

async function atDisplay(page: Page): Promise<void> {
  const button = page.locator(".section-index button", { hasText: "Display" }).first();
  if ((await button.getAttribute("aria-current")) === null) await button.click();
}

/** Waits for the word on what is kept: "kept" and nothing else, or a part of what it says. */
export async function keptWord(page: Page, text: string): Promise<void> {
  await page.waitForFunction(
    (wanted) => {
      const said = document.querySelector(".keeping [role=status], .keeping[role=status]")?.textContent ?? "";
      return wanted === "kept" ? said === wanted : said.includes(wanted);
    },
    text,
    { timeout: 20_000 },
  );
}

/** Types how high the display stands, and confirms it. */
export async function typeHeight(page: Page, text: string): Promise<void> {
  await atDisplay(page);
  await page.fill(height, text);
  await page.press(height, "Enter");
}

/** Types how high the display stands without confirming it. */
export async function beginHeight(page: Page, text: string): Promise<void> {
  await atDisplay(page);
  await page.fill(height, text);
}

/** What the field for the height of the stand shows. */
export async function heightShown(page: Page): Promise<string> {
  await atDisplay(page);
  return page.inputValue(height);
}
