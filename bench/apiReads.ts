/** How soon the server answers readers: 50 clients at once, each asking again as soon as it has its answer, over loopback.
 *  Prints the median, the 99th percentile and the most of the time of an answer [ms], for a list of jobs, one job, and a
 *  design with its document, beside the same bytes from a bare Node HTTP server in the same run (the bound).
 *  Then how soon another screen is told of an edit, from the moment the edit is sent [ms].
 *  The aims: 99 % of answers within 30 ms; a second screen told within a second. Run with `npm run api -w bench` after `npm run build:code`. */
import { randomUUID } from "node:crypto";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import autocannon from "autocannon";
import { startServer } from "../tools/startServer.ts";

const clients = 50;
const seconds = Number(process.env.SECONDS ?? 8);
const jobs = 1000;

const data = await mkdtemp(join(tmpdir(), "tidewright-api-"));
const server = await startServer({ data, built: true });
const { address } = server;

const send = async (path: string, body: unknown, more: Readonly<Record<string, string>> = {}) => {
  const response = await fetch(address + path, {
    method: "POST",
    headers: { "X-Tidewright": "1", "Content-Type": "application/json", ...more },
    body: JSON.stringify(body),
  });
  if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
  return (await response.json()) as { id: string };
};
const document: unknown = JSON.parse(
  await readFile(new URL("../examples/waiting-room-reef.json", import.meta.url), "utf8"),
);
let job = { id: "" };
for (let i = 0; i < jobs; i++) job = await send("api/jobs", { name: `Job ${i}`, notes: "As measured on site." });
const design = await send(`api/jobs/${job.id}/designs`, { name: "As drawn", document });

const paths = {
  "list of 50 jobs": "api/jobs?limit=50",
  "search in 1,000 jobs": "api/jobs?text=job%2077&limit=50",
  "one job": `api/jobs/${job.id}`,
  "design with document": `api/designs/${design.id}`,
};
console.log(`${clients} clients, ${seconds} s each; ms`);
for (const [name, path] of Object.entries(paths)) {
  const own = await load(address + path);
  const bytes = Buffer.from(await (await fetch(address + path)).arrayBuffer());
  const bare = createServer((_, response) => {
    response.writeHead(200, { "Content-Type": "application/json", "Content-Length": bytes.byteLength }).end(bytes);
  });
  await new Promise<void>((ready) => bare.listen(0, "127.0.0.1", ready));
  const bound = await load(`http://127.0.0.1:${(bare.address() as AddressInfo).port}/`);
  await new Promise((closed) => bare.close(closed));
  const tell = ({ latency, requests }: autocannon.Result) =>
    `median ${latency.p50}, p99 ${latency.p99}, most ${latency.max}, ${Math.round(requests.average)} a second`;
  console.log(`${name} (${bytes.byteLength} bytes)\n  server  ${tell(own)}\n  bare    ${tell(bound)}`);
  if (own.non2xx > 0 || own.errors > 0) throw new Error(`${own.non2xx} refusals, ${own.errors} errors at ${path}`);
}
const told = await secondScreen(100);
const at = (part: number) => told[Math.floor(part * (told.length - 1))]!.toFixed(1);
console.log(
  `a second screen is told of an edit, ${told.length} edits\n  median ${at(0.5)}, p99 ${at(0.99)}, most ${at(1)}`,
);
await server.kill();
await rm(data, { recursive: true, force: true });

function load(url: string): Promise<autocannon.Result> {
  // A worker of its own would take the second core from the server; the generator's share is in both rows alike.
  return autocannon({ url, connections: clients, duration: seconds });
}

/** Times from sending an edit to its event on another connection, sorted [ms]. */
async function secondScreen(edits: number): Promise<number[]> {
  const stop = new AbortController();
  const stream = await fetch(`${address}api/events`, { signal: stop.signal });
  const reader = stream.body!.pipeThrough(new TextDecoderStream()).getReader();
  const took: number[] = [];
  for (let revision = 1; revision <= edits; revision++) {
    const begun = performance.now();
    const path = `api/designs/${design.id}/revisions`;
    const sent = send(path, { document, editId: randomUUID() }, { "If-Match": `"${revision}"` });
    for (let text = ""; !text.includes(`"revision":${revision + 1}`); ) text += (await reader.read()).value ?? "";
    took.push(performance.now() - begun);
    await sent;
  }
  stop.abort();
  return took.sort((a, b) => a - b);
}
