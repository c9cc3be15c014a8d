/** What a first visit loads of script, file by file as it was sent, compressed: the bench on a kept design, its workers
 *  included, until nothing more is asked for. What the installed app fetches afterwards to work offline is told apart.
 *  Run with `npm run speed:script -w apps/web`; PAGES=desk,start,... measures other pages. */
import { countScript, type SentScript } from "./countScript.ts";
import { example } from "./keptBench.ts";
import { serveShop } from "./servedShop.ts";

const shop = await serveShop();
const { designId } = await shop.makeDesign(example);
const pages: Readonly<Record<string, string>> = {
  bench: `?design=${designId}`,
  try: "?try",
  desk: "",
  start: "#/start",
};
const sum = (list: readonly SentScript[]) => list.reduce((total, { bytes }) => total + bytes, 0);
const line = (bytes: number, text: string) => console.log(`${String(bytes).padStart(8)}  ${text}`);

for (const name of (process.env.PAGES ?? "bench,desk").split(",")) {
  const sent = await countScript(shop, pages[name] ?? name);
  const now = sent.filter(({ offline }) => !offline).sort((a, b) => b.bytes - a.bytes);
  const later = sent.filter(({ offline }) => offline);
  for (const { path, bytes } of now) line(bytes, path);
  line(sum(now), `${name}: script of the first visit, ${now.length} files, brotli`);
  line(sum(later), `fetched afterwards for work offline, ${later.length} files\n`);
}
await shop.stop();
