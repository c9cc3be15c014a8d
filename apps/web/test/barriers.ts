import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Returns the serious and critical violations that axe-core finds on a page, each with the first places it stands in. */
export async function barriers(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  const { violations } = await page.evaluate(() =>
    (window as unknown as { axe: { run(): Promise<AxeResults> } }).axe.run(),
  );
  return violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .map(({ id, nodes }) => {
      const places = nodes.map(({ target, failureSummary }) => `${target.join(" ")} ${failureSummary ?? ""}`);
      return `${id}: ${places.slice(0, 4).join(" | ")}`;
    });
}
