import { type ChildProcess, spawn } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";
import { launchChromium } from "../../../tools/browser.ts";
import { buildWeb } from "./builtWeb.ts";

const main = fileURLToPath(new URL("../../server/src/main.ts", import.meta.url));
/** How long a server may take to say where it is [ms]. */
const patience = 60_000;

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
  restart(): Promise<void>;
  stop(): Promise<void>;
}

/** Builds the web app and starts the real server over an empty data folder.
 *  arguments more options of the server, such as those for another address   -> ServedShop */
export async function serveShop(...options: readonly string[]): Promise<ServedShop> {
  const web = await buildWeb();
  const data = await mkdtemp(join(tmpdir(), "tidewright-shop-"));
  let { child, address } = await start(data, web.folder, 0, options);
  const browser = await launchChromium();
  const kill = async () => {
    const ended = new Promise((done) => child.once("exit", done));
    if (child.exitCode !== null || child.signalCode !== null) return;
    child.kill("SIGKILL");
    await ended;
  };
  const api: ServedShop["api"] = async (method, path, body, headers = {}) => {
    const response = await fetch(new URL(path, address), {
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
      return address;
    },
    data,
    browser,
    api,
    async makeDesign(document, name = "As drawn") {
      const job = await api<{ id: string }>("POST", "api/jobs", { name: "Waiting room" });
      const design = await api<{ id: string }>("POST", `api/jobs/${job.id}/designs`, { name, document });
      return { jobId: job.id, designId: design.id };
    },
    async open(path, given = {}) {
      const context =
        "newPage" in given ? given : await browser.newContext({ viewport: { width: 1440, height: 900 }, ...given });
      const page = await context.newPage();
      const complaints: string[] = [];
      page.on("pageerror", (error) => complaints.push(error.message));
      page.on("request", (request) => {
        const url = request.url();
        if (!url.startsWith(address) && !/^(blob|data):/.test(url)) complaints.push(`asked for ${url}`);
      });
      await page.goto(address + path);
      return { page, context, complaints };
    },
    kill,
    runs: () => child.exitCode === null && child.signalCode === null,
    async restart() {
      await kill();
      ({ child, address } = await start(data, web.folder, Number(new URL(address).port), options));
    },
    async stop() {
      await browser.close();
      await kill();
      await Promise.all([web.remove(), rm(data, { recursive: true, force: true })]);
    },
  };
}

function start(data: string, web: string, port: number, options: readonly string[]) {
  const child: ChildProcess = spawn(
    process.execPath,
    ["--conditions=source", "--import", "tsx", main, "--data", data, "--port", String(port), "--web", web, ...options],
    { stdio: ["ignore", "pipe", "pipe"] },
  );
  return new Promise<{ child: ChildProcess; address: string }>((ready, failed) => {
    let told = "";
    const timer = setTimeout(() => {
      child.kill("SIGKILL");
      failed(new Error(`the server did not say where it is: ${told}`));
    }, patience);
    const hear = (chunk: Buffer) => {
      told += chunk.toString();
      const address = /is at (http:\/\/\S+\/)\n/.exec(told)?.[1];
      if (address === undefined) return;
      clearTimeout(timer);
      ready({ child, address });
    };
    child.stdout?.on("data", hear);
    child.stderr?.on("data", hear);
    child.once("exit", (code) => {
      clearTimeout(timer);
      failed(new Error(`the server ended with ${code}: ${told}`));
    });
  });
}
