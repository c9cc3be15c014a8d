import { loadWords, messageKeys } from "@tidewright/words";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { type ServedBench, serveBench } from "./servedBench.ts";

/** Everything that can be read or heard on the page at this moment. */
const textsOf = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode())
      if (node.parentElement?.closest("script, style, noscript, code, [lang=en]") === null)
        found.push(node.textContent?.trim() ?? "");
    for (const name of ["aria-label", "aria-valuetext", "title", "placeholder"])
      for (const element of document.querySelectorAll(`[${name}]`))
        found.push(element.getAttribute(name)?.trim() ?? "");
    return found;
  });

/** English texts that are whole sentences or labels by themselves, where German has another. */
async function englishTexts(): Promise<Set<string>> {
  const [english, german] = await Promise.all([loadWords("en"), loadWords("de")]);
  // A design's own names may be English words: "return", "display", "emergency".
  const plain = messageKeys.filter((key) => !/^(elevation|scenario\.place|catalogue|sources)\./.test(key));
  const unfilled = (words: typeof german, key: (typeof messageKeys)[number]) => {
    try {
      return words.say(key);
    } catch {
      // It asks for values: such a text never stands alone.
      return "";
    }
  };
  return new Set(
    plain
      .map((key) => [unfilled(english, key), unfilled(german, key)] as const)
      .flatMap(([one, other]) => (one !== other && /^\p{Lu}.{3}/u.test(one) ? [one] : [])),
  );
}

const drawers = ["pumps", "levers", "parts", "sheet", "safety"] as const;

describe.skipIf(maySkipBrowserTests())("the bench for a reader of German", () => {
  let bench: ServedBench;
  beforeAll(async () => {
    bench = await serveBench();
  }, 120_000);
  afterAll(async () => {
    await bench?.stop();
  });

  it("is told from the English one by its texts", async () => {
    const english = await englishTexts();
    const { page } = await bench.open({ locale: "en-GB" });
    const found = (await textsOf(page)).filter((text) => english.has(text));
    expect(new Set(found).size).toBeGreaterThan(15);
    await page.context().close();
  });

  it("is chosen in the dialog of units, at once and for the next visit", async () => {
    const { page, complaints } = await bench.open({ locale: "en-GB" });
    await page.getByRole("button", { name: "Units", exact: true }).click();
    await page.getByRole("button", { name: "Choose each…" }).click();
    await page.selectOption("#language", "de");
    await page.waitForFunction(() => document.documentElement.lang === "de");
    expect(await page.textContent(".answer-sentence")).toMatch(/fördert/);
    expect(await page.textContent("#sheet-units")).toBe("Einheiten und Sprache");
    await page.reload();
    await page.waitForSelector("[data-figure=flow]");
    expect(await page.textContent(".answer-sentence")).toMatch(/fördert/);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it.each([390, 820, 1440])(
    "speaks German everywhere, writes a decimal comma and does not scroll sideways at %i px",
    async (width) => {
      const english = await englishTexts();
      expect(english.size).toBeGreaterThan(300);
      const { page, complaints } = await bench.open({ locale: "de-DE", viewport: { width, height: 900 } });
      expect(await page.getAttribute("html", "lang")).toBe("de");
      expect(await page.textContent(".answer-sentence")).toMatch(/fördert .* gegen \d,\d+\sm: /);
      const left = new Set<string>();
      const look = async () => {
        for (const text of await textsOf(page)) if (english.has(text)) left.add(text);
      };
      await look();
      for (const drawer of drawers) {
        await page.click(`#tab-${drawer}`);
        if (!(await page.isVisible("#drawer-panel"))) await page.click(`#tab-${drawer}`);
        if (drawer === "safety") await page.waitForSelector(".safety-table", { timeout: 60_000 });
        if (drawer === "levers") await page.waitForSelector(".lever-list", { timeout: 60_000 });
        await look();
      }
      await page.locator(".sourced").first().click();
      await page.waitForSelector(".source-body");
      await look();
      expect([...left]).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(
        0,
      );
      expect(complaints).toEqual([]);
      await page.context().close();
    },
    120_000,
  );
});
