import { createServer, request } from "node:http";
import type { ServedShop } from "./servedShop.ts";

/** One script as it was sent, compressed. */
export interface SentScript {
  readonly path: string;
  readonly bytes: number;
  /** Fetched by the installed app, to work offline later. */
  readonly offline: boolean;
}

/** Quiet for this long is taken as the end of a first visit [ms]. */
const quiet = 3000;

/** Opens a page of the shop in a new profile and counts every script that passes between browser and server, those of
 *  workers included, until nothing more is asked for.
 *  shop   path such as "?design=..."   -> scripts, in the order of their coming */
export async function countScript(shop: ServedShop, path: string): Promise<readonly SentScript[]> {
  const sent: SentScript[] = [];
  const listener = await listen(new URL(shop.address), sent);
  const context = await shop.browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  await page.goto(listener.address + path);
  for (let before = -1; before !== sent.length; ) {
    before = sent.length;
    await page.waitForTimeout(quiet);
  }
  await context.close();
  listener.close();
  return sent;
}

/** A listener between browser and server that notes what passes. */
async function listen(target: URL, sent: SentScript[]): Promise<{ readonly address: string; close(): void }> {
  let offline = false;
  const server = createServer((asked, answer) => {
    const { url = "", method, headers } = asked;
    // The server answers to its own name alone.
    const passed = request(
      { host: target.hostname, port: target.port, path: url, method, headers: { ...headers, host: target.host } },
      (got) => {
        let bytes = 0;
        got.on("data", (chunk: Buffer) => {
          bytes += chunk.length;
        });
        got.on("end", () => {
          // From the service worker's own start on, files that nothing is said of go into its store.
          if (url.endsWith("/sw.js")) offline = true;
          else if (url.endsWith(".js"))
            sent.push({ path: url, bytes, offline: offline && headers["sec-fetch-dest"] === "empty" });
        });
        answer.writeHead(got.statusCode ?? 502, got.headers);
        got.pipe(answer);
      },
    );
    passed.on("error", () => answer.destroy());
    asked.pipe(passed);
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const { port } = server.address() as { port: number };
  return {
    address: `http://127.0.0.1:${port}/`,
    close: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}
