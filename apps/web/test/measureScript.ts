/** What a first visit loads of script, file by file as it was sent, compressed: the bench on a kept design, its workers
 *  included, until nothing more is asked for. What the installed app fetches afterwards to work offline is told apart.
 *  Run with `npm run speed:script -w apps/web`; PATHS=desk,start,... measures other addresses. */

import { readFileSync } from "node:fs";
import { createServer, request } from "node:http";
import { serveShop } from "./servedShop.ts";

/** Quiet for this long is taken as the end of a first visit [ms]. */
const quiet = 3000;

const shop = await serveShop();
const { designId } = await shop.makeDesign(
  JSON.parse(readFileSync(new URL("../../../examples/waiting-room-reef.json", import.meta.url), "utf8")),
);
const pages: Readonly<Record<string, string>> = {
  bench: `?design=${designId}`,
  try: "?try",
  desk: "",
  start: "#/start",
};
for (const name of (process.env.PATHS ?? "bench,desk").split(",")) await visit(name, pages[name] ?? name);
await shop.stop();

interface Sent {
  readonly path: string;
  readonly bytes: number;
  readonly offline: boolean;
}

async function visit(name: string, path: string): Promise<void> {
  const sent: Sent[] = [];
  const listener = await listen(sent);
  const context = await shop.browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  await page.goto(listener.address + path);
  for (let before = -1; before !== sent.length; ) {
    before = sent.length;
    await page.waitForTimeout(quiet);
  }
  await context.close();
  listener.close();
  const now = sent.filter(({ offline }) => !offline).sort((a, b) => b.bytes - a.bytes);
  const later = sent.filter(({ offline }) => offline);
  const sum = (list: readonly Sent[]) => list.reduce((total, { bytes }) => total + bytes, 0);
  for (const { path: file, bytes } of now.slice(0, Number(process.env.FILES ?? 30)))
    console.log(`${String(bytes).padStart(8)}  ${file}`);
  console.log(`${String(sum(now)).padStart(8)}  ${name}: script of the first visit, ${now.length} files, brotli`);
  console.log(`${String(sum(later)).padStart(8)}  fetched afterwards for work offline, ${later.length} scripts\n`);
}

/** A listener between browser and server that notes what passes; it asks in the server's own name. */
async function listen(sent: Sent[]): Promise<{ readonly address: string; close(): void }> {
  const target = new URL(shop.address);
  let offline = false;
  const server = createServer((asked, answer) => {
    const passed = request(
      {
        host: target.hostname,
        port: target.port,
        path: asked.url,
        method: asked.method,
        // Over loopback a browser takes brotli only where the address counts as safe, which it does.
        headers: { ...asked.headers, host: target.host },
      },
      (got) => {
        let bytes = 0;
        got.on("data", (chunk: Buffer) => {
          bytes += chunk.length;
        });
        got.on("end", () => {
          const file = asked.url ?? "";
          // From the service worker's own start on, files are asked for without a place to put them.
          if (file.endsWith("/sw.js")) offline = true;
          else if (/\.js$/.test(file))
            sent.push({ path: file, bytes, offline: offline && asked.headers["sec-fetch-dest"] === "empty" });
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
