import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";
import { launchChromium } from "../../../tools/browser.ts";
import { startServer } from "../../../tools/startServer.ts";
import { buildWeb } from "./builtWeb.ts";
import { usualContext } from "./usualContext.ts";

/** A page with everything that went wrong in it. */
export interface ShopPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors of the page's own scripts and requests to anywhere but the test's own server. */
  readonly complaints: string[];
}

/** The real server with the built screens and a data folder of its own, and a browser to look at it with. */
export interface ServedShop {
  /** Address with a slash at its end; the same after a restart. */
  readonly address: string;
  /** Folder of the built screens. */
  readonly web: string;
  /** Data folder. */
  readonly data: string;
  readonly browser: Browser;
  /** Asks the server over HTTP as the pages do; throws where it refuses. */
  api<Value>(method: string, path: string, body?: unknown, headers?: Readonly<Record<string, string>>): Promise<Value>;
  /** Makes a job with one design; the document is an example's where none is given. */
  makeDesign(document: unknown, name?: string): Promise<{ readonly jobId: string; readonly designId: string }>;
  /** Opens a path such as "?design=..." in a new profile, or in one that is there. */
  open(path: string, options?: BrowserContextOptions | BrowserContext): Promise<ShopPage>;
  /** Ends the server without warning, as a power cut would. */
  kill(): Promise<void>;
  /** Whether the server runs. */
  runs(): boolean;
  /** Starts it anew over the same folder, from then on with other options where some are given. */
  restart(...options: readonly string[]): Promise<void>;
  stop(): Promise<void>;
}

/** Builds the web app and starts the real server over an empty data folder.
 *  arguments more options of the server, such as those for another address   -> ServedShop */
export async function serveShop(...options: readonly string[]): Promise<ServedShop> {
  const web = await buildWeb();
  const data = await mkdtemp(join(tmpdir(), "tidewright-shop-"));
  let given = options;
  const start = (port: number) => startServer({ data, port, options: ["--web", web.folder, ...given] });
  let server = await start(0);
  const browser = await launchChromium();
  const kill = () => server.kill();
  const api: ServedShop["api"] = async (method, path, body, headers = {}) => {
    const response = await fetch(new URL(path, server.address), {
      method,
      headers: {
        "X-Tidewright": "1",
        ...(body === undefined ? {} : { "Content-Type": "application/json" }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    const text = await response.text();
    if (!response.ok) throw new Error(`${method} ${path}: ${response.status} ${text}`);
    return JSON.parse(text);
  };
  return {
    get address() {
      return server.address;
    },
    web: web.folder,
    data,
    browser,
    api,
    async makeDesign(document, name = "As drawn") {
      const job = await api<{ id: string }>("POST", "api/jobs", { name: "Waiting room" });
      const design = await api<{ id: string }>("POST", `api/jobs/${job.id}/designs`, { name, document });
      return { jobId: job.id, designId: design.id };
    },
    async open(path, within = {}) {
      const context = "newPage" in within ? within : await browser.newContext({ ...usualContext, ...within });
      const page = await context.newPage();
      const complaints: string[] = [];
      page.on("pageerror", (error) => complaints.push(error.message));
      page.on("request", (request) => {
        const url = request.url();
        if (!url.startsWith(server.address) && !/^(blob|data):/.test(url)) complaints.push(`asked for ${url}`);
      });
      await page.goto(server.address + path);
      return { page, context, complaints };
    },
    kill,
    runs: () => server.child.exitCode === null && server.child.signalCode === null,
    async restart(...others) {
      if (others.length > 0) given = others;
      await kill();
      server = await start(Number(new URL(server.address).port));
    },
    async stop() {
      await browser.close();
      await kill();
      await Promise.all([web.remove(), rm(data, { recursive: true, force: true })]);
    },
  };
}
