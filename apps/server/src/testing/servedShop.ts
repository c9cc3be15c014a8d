import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openStore, type Store, type StoreOptions } from "@tidewright/store";
import { type AppOptions, type BuiltApp, buildApp } from "../buildApp.ts";
import { listen } from "../commands/listen.ts";

/** A server on loopback with a store of its own, asked over real connections. */
export interface ServedShop {
  readonly app: BuiltApp;
  readonly store: Store;
  readonly folder: string;
  /** With a slash at its end. */
  readonly address: string;
  /** Asks as a screen of ours does. */
  ask(method: string, path: string, body?: unknown, headers?: Readonly<Record<string, string>>): Promise<Response>;
}

const endings: (() => Promise<void>)[] = [];

/** Starts a server with built screens of one page, in a folder that is gone after the test; what it keeps is there too, unless
 *  another place is named. */
export async function servedShop(
  options: Partial<AppOptions> & { readonly storeOptions?: StoreOptions; readonly place?: string } = {},
): Promise<ServedShop> {
  const folder = mkdtempSync(join(tmpdir(), "tidewright-served-"));
  const web = join(folder, "web");
  mkdirSync(join(web, "assets"), { recursive: true });
  writeFileSync(join(web, "index.html"), `<!doctype html><title>bench</title>${"<p>water</p>".repeat(200)}`);
  writeFileSync(join(web, "assets", "index-CVidKz9P.js"), `console.log(${JSON.stringify("water ".repeat(500))});`);
  writeFileSync(join(folder, "secret.txt"), "secret");
  const store = await openStore(options.place ?? join(folder, "data"), options.storeOptions);
  const app = buildApp({ store, host: "127.0.0.1", web, spare: folder, remembers: true, ...options });
  const { server, port } = await listen(app.hono, "127.0.0.1", 0);
  endings.push(async () => {
    app.closeStreams();
    server.closeAllConnections();
    await new Promise((closed) => server.close(closed));
    await app.closeThreads();
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  });
  const address = `http://127.0.0.1:${port}/`;
  const ask: ServedShop["ask"] = (method, path, body, headers = {}) =>
    fetch(new URL(path, address), {
      method,
      headers: {
        "X-Tidewright": "1",
        ...(body === undefined ? {} : { "Content-Type": "application/json" }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: typeof body === "string" ? body : JSON.stringify(body) }),
    });
  return { app, store, folder, address, ask };
}

/** Ends every server of a test; to be called after each. */
export async function endServed(): Promise<void> {
  while (endings.length > 0) await endings.pop()?.();
}

/** Returns an example of the repository as text. */
export function exampleText(name: string): string {
  return readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), "utf8");
}

/** The header that names a version. */
export const ifMatch = (version: number): Record<string, string> => ({ "If-Match": `"${version}"` });
