/** How soon the bench shows something useful on a slow tablet that was never here before: the job's drawing with its numbers.
 *  Network and processor are throttled in Chromium: 1.6 Mbit/s down, 768 kbit/s up, 150 ms there and back ("3G Fast" of
 *  WebPageTest's connectivity profiles, from memory), processor four times slower. Prints, over several cold loads,
 *    drawing  from the navigation to the frame in which the drawing with numbers is painted
 *    hands    to the moment when the bench itself stands there and can be edited
 *  and the bytes of script that were sent, compressed, beside the bound in the same run: the bare time of the bytes that the
 *  drawing needs over this network. Run with `npm run speed:paint -w apps/web`. */
import { readFileSync } from "node:fs";
import type { CDPSession } from "playwright-core";
import { serveShop } from "./servedShop.ts";

const loads = Number(process.env.LOADS ?? 5);
const network = { latency: 150, downloadThroughput: 1_600_000 / 8, uploadThroughput: 768_000 / 8, offline: false };

/** Runs in the page before anything else; as text, since a compiler's own helpers are not there. */
const marks = `
  for (const [name, there] of [
    ["drawing", () => getComputedStyle(document.documentElement).getPropertyValue("--paper") !== ""
      && document.querySelector(".tw-labelFigure") !== null],
    ["hands", () => document.querySelector(".drawing .tw-target") !== null],
  ]) {
    const look = () => {
      if (!there()) return requestAnimationFrame(look);
      // The frame after the one in which it was found has painted it.
      requestAnimationFrame(() => performance.mark(name));
    };
    requestAnimationFrame(look);
  }
`;

const shop = await serveShop();
const reef: unknown = JSON.parse(
  readFileSync(new URL("../../../examples/waiting-room-reef.json", import.meta.url), "utf8"),
);
const { designId } = await shop.makeDesign(reef);
// The server's own first request of all is no matter of the page.
await fetch(`${shop.address}?design=${designId}`);
await new Promise((done) => setTimeout(done, 2000));

const rows: { drawing: number; hands: number; script: number; first: number }[] = [];
for (let i = 0; i < loads; i++) rows.push(await load());
await shop.stop();

const sorted = (key: keyof (typeof rows)[number]) => rows.map((row) => row[key]).sort((a, b) => a - b);
const tell = (key: keyof (typeof rows)[number]) => {
  const values = sorted(key);
  return `${Math.round(values[0]!)} least, ${Math.round(values[values.length >> 1]!)} median, ${Math.round(values.at(-1)!)} most`;
};
console.log(`first drawing with numbers  ${tell("drawing")} ms`);
console.log(`bench ready for a hand      ${tell("hands")} ms`);
console.log(`script sent                 ${tell("script")} bytes, compressed`);
const first = sorted("first")[0]!;
console.log(
  `bound: page and styles are ${Math.round(first)} bytes, ${Math.round(3 * network.latency + (first / network.downloadThroughput) * 1000)} ms on this network (connection, page, styles)`,
);

async function load() {
  const context = await shop.browser.newContext({ viewport: { width: 820, height: 1180 }, serviceWorkers: "block" });
  const page = await context.newPage();
  const session: CDPSession = await context.newCDPSession(page);
  await session.send("Network.enable");
  await session.send("Network.emulateNetworkConditions", network);
  await session.send("Emulation.setCPUThrottlingRate", { rate: 4 });
  let script = 0;
  let firstBytes = 0;
  const kinds = new Map<string, string>();
  session.on("Network.responseReceived", ({ requestId, type }) => kinds.set(requestId, type));
  session.on("Network.loadingFinished", ({ requestId, encodedDataLength }) => {
    const type = kinds.get(requestId);
    if (type === "Script") script += encodedDataLength;
    if (type === "Document" || type === "Stylesheet") firstBytes += encodedDataLength;
  });
  await page.addInitScript({ content: marks });
  await page.goto(`${shop.address}?design=${designId}`, { waitUntil: "commit" });
  const marked = (name: string) =>
    page
      .waitForFunction((mark) => performance.getEntriesByName(mark)[0]?.startTime, name, { timeout: 60_000 })
      .then((handle) => handle.jsonValue() as Promise<number>);
  const drawing = await marked("drawing");
  const hands = await marked("hands");
  await context.close();
  return { drawing, hands, script, first: firstBytes };
}
