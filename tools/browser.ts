import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { type Browser, chromium } from "playwright-core";

/** Where Chromium is: CHROMIUM_PATH, else on PATH, else where playwright-core keeps its own; undefined when nowhere. */
export function chromiumPath(): string | undefined {
  const told = process.env.CHROMIUM_PATH;
  if (told) return told;
  const folders = (process.env.PATH ?? "").split(delimiter);
  for (const name of ["chromium", "chromium-browser", "google-chrome"]) {
    const found = folders.map((folder) => join(folder, name)).find((path) => existsSync(path));
    if (found) return found;
  }
  const own = chromium.executablePath();
  return own !== "" && existsSync(own) ? own : undefined;
}

/** Starts a headless Chromium that talks to nobody by itself, with more options where some are given; throws, naming the
 *  remedy, when there is none. */
export async function launchChromium(...options: readonly string[]): Promise<Browser> {
  const executablePath = chromiumPath();
  if (!executablePath) throw new Error("Chromium was not found: install it, set CHROMIUM_PATH, or run npm test once");
  const quiet = [
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    ...options,
  ];
  // Chromium's sandbox refuses to start as root, which is what containers and CI are.
  const isRoot = process.getuid?.() === 0;
  return chromium.launch({
    executablePath,
    headless: true,
    chromiumSandbox: !isRoot,
    args: isRoot ? ["--no-sandbox", ...quiet] : quiet,
  });
}

/** Whether browser tests may be skipped: only on a person's machine without Chromium, never in CI. */
export function maySkipBrowserTests(): boolean {
  return chromiumPath() === undefined && process.env.CI === undefined;
}
