import { afterEach, describe, expect, it, vi } from "vitest";
import { chromiumPath, launchChromium, maySkipBrowserTests } from "./browser.ts";

afterEach(() => vi.unstubAllEnvs());

describe("the browser for tests", () => {
  it("is the one named by CHROMIUM_PATH when that is set", () => {
    vi.stubEnv("CHROMIUM_PATH", "somewhere/chromium");
    expect(chromiumPath()).toBe("somewhere/chromium");
  });
  it("is never skipped in CI", () => {
    vi.stubEnv("CI", "true");
    vi.stubEnv("PATH", "");
    expect(maySkipBrowserTests()).toBe(false);
  });
  it.skipIf(maySkipBrowserTests())("starts, shows a page and stops", async () => {
    const browser = await launchChromium();
    const page = await browser.newPage();
    await page.setContent("<p>3.7 m3/h</p>");
    expect(await page.textContent("p")).toBe("3.7 m3/h");
    await browser.close();
  });
});
