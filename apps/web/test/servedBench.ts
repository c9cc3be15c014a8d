import { readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, normalize } from "node:path";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { launchChromium } from "../../../tools/browser.ts";
import { buildWeb } from "./builtWeb.ts";
import { usualContext } from "./usualContext.ts";

const types: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".woff2": "font/woff2",
  ".woff": "font/woff",
  ".webmanifest": "application/manifest+json",
  ".png": "image/png",
  ".svg": "image/svg+xml",
};

/** A page of the built bench, with everything that went wrong in it. */
export interface OpenBench {
  readonly page: Page;
  /** Errors on the console and requests to anywhere but the test's own server. */
  readonly complaints: string[];
}

/** The built bench behind a server on a loopback address, and a browser to look at it with. */
export interface ServedBench {
  open(options?: BrowserContextOptions): Promise<OpenBench>;
  stop(): Promise<void>;
}

/** Builds the bench as it will be shipped, into a folder of its own, and serves it. */
export async function serveBench(): Promise<ServedBench> {
  const web = await buildWeb();
  const server = await listen(web.folder);
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  const browser: Browser = await launchChromium();
  return {
    async open(options = {}) {
      const context = await browser.newContext({ ...usualContext, ...options });
      const page = await context.newPage();
      const complaints: string[] = [];
      page.on("console", (message) => {
        if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
      });
      page.on("pageerror", (error) => complaints.push(error.message));
      page.on("request", (request) => {
        const url = request.url();
        if (!url.startsWith(address) && !/^(blob|data):/.test(url)) complaints.push(`asked for ${url}`);
      });
      await page.goto(`${address}?try`);
      await page.waitForSelector("[data-figure=flow]");
      return { page, complaints };
    },
    async stop() {
      await browser.close();
      await new Promise((done) => server.close(done));
      await web.remove();
    },
  };
}

function listen(folder: string): Promise<Server> {
  const server = createServer((request, response) => {
    const path = normalize((request.url ?? "/").split("?")[0] ?? "/");
    const file = join(folder, path === "/" ? "index.html" : path);
    try {
      const body = readFileSync(file);
      response.writeHead(200, { "content-type": types[extname(file)] ?? "application/octet-stream" }).end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  return new Promise((ready) => server.listen(0, "127.0.0.1", () => ready(server)));
}

/** The text of one number of the answer. */
export async function figure(page: Page, name: string): Promise<string> {
  return (await page.textContent(`[data-figure=${name}] .sourced`)) ?? "";
}

/** Waits until a number of the answer is no longer what it was, and returns it. */
export async function changedFigure(page: Page, name: string, before: string): Promise<string> {
  await page.waitForFunction(
    ([selector, old]) => {
      const now = document.querySelector(selector)?.textContent;
      return now !== undefined && now !== null && now !== old;
    },
    [`[data-figure=${name}] .sourced`, before] as const,
  );
  return figure(page, name);
}

/** The leading number of a text such as "3142 L/h", thousands without separators and a true minus sign. */
export function numberIn(text: string): number {
  return Number.parseFloat(text.replace("−", "-"));
}
